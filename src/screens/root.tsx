import { Box, useApp, useInput, usePaste, useStdout, useWindowSize } from 'ink';
import { useCallback, useEffect, useSyncExternalStore } from 'react';
import { bindingsWith, hints, keyName } from '../app/keys/keymap.ts';
import type { Message } from '../app/message.ts';
import type { Drawn, State } from '../app/state.ts';
import { noticeNow, type Notice } from '../app/notice.ts';
import { tokens } from '../app/keys/tokens.ts';
import { clockTime } from '../core/session/clock.ts';
import { headLeft, headRight, headWord } from '../app/walk/head.ts';
import { HomeBody } from './home.tsx';
import type { Contents } from './contents.tsx';
import { Ends, Frame, Line, ThemeContext } from './parts.tsx';
import { themes } from './theme.ts';

type Size = { readonly rows: number; readonly columns: number };

type Hands = {
  /** Draws everything again, over whatever else was written to the terminal. */
  readonly redraw: () => void;
  /** Rings the bell: it moves nothing on the screen. */
  readonly ring: () => void;
  /** Hands the terminal back to the shell, and draws everything anew when the shell gives it again. */
  readonly stop: () => void;
};

type RootProps = {
  readonly state: () => State;
  readonly subscribe: (listener: () => void) => () => void;
  readonly dispatch: (message: Message) => void;
  /** Hands out what only the terminal's holder can do. */
  readonly lend: (hands: Hands) => void;
  /** Stops the program as the shell's own key would; done when it goes on. */
  readonly halt: () => Promise<void>;
  /** What is inside the frame of every screen but Home, once it is loaded. */
  readonly contents: Contents | undefined;
};

/** The one place where keys come in: mounted for the life of the program, so that no key is lost. */
export function Root({ state: read, subscribe, dispatch, lend, halt, contents }: RootProps) {
  const state = useSyncExternalStore(subscribe, read);
  const { rows, columns } = useWindowSize();
  const { suspendTerminal } = useApp();
  const { stdout } = useStdout();
  const stop = useCallback(() => void suspendTerminal(halt), [suspendTerminal, halt]);
  useEffect(() => {
    // The alternate screen comes back wherever the cursor was: column 0 keeps its first line straight.
    const redraw = () => void suspendTerminal(() => void stdout.write('\r'));
    const ring = () => void stdout.write('\u0007');
    lend({ redraw, ring, stop });
  }, [lend, suspendTerminal, stdout, stop]);
  useInput((input, key) => {
    const all = tokens(input, key);
    // Struck while the program loaded it comes with other keys: those behind it were for the shell.
    const stops = all.indexOf('C-z');
    const [first, ...more] = stops < 0 ? all : all.slice(0, stops);
    if (first !== undefined)
      dispatch(
        more.length === 0
          ? { kind: 'key', token: first }
          : { kind: 'struck-together', tokens: [first, ...more] },
      );
    if (stops >= 0) stop();
  });
  useEffect(() => {
    if (contents === undefined) return;
    const drawn = drawnNow(state, { rows, columns }, contents);
    if (!sameDrawn(state.drawn, drawn)) dispatch({ kind: 'drawn', drawn });
  }, [dispatch, contents, state, rows, columns]);
  usePaste((text) => dispatch({ kind: 'pasted', text }));
  return <ScreenFrame state={state} rows={rows} columns={columns} contents={contents} />;
}

/** Whether the foot takes no room from a page that asks for a claim: that is shown whole first. */
function hasRoom(
  state: State,
  { rows, columns }: Size,
  contents: Contents | undefined,
  foot: readonly string[],
): boolean {
  const [page = [], ...more] = contents?.pages(state, { rows: rows - frameRows, columns }) ?? [];
  return more.length === 0 && page.length <= rows - frameRows - foot.length;
}

/** The lines of the foot for which the body leaves room. */
function footOf(state: State, size: Size, contents: Contents | undefined): readonly string[] {
  const { session } = state;
  if (session === undefined || contents === undefined) return [];
  const room = size.rows - frameRows - contents.needs(state, size.columns).wanted;
  const lines = contents.footLines(state, session, {
    rows: Math.max(0, room),
    // A column is free at each side of the frame.
    columns: size.columns - 2,
  });
  return hasRoom(state, size, contents, lines) ? lines : [];
}

type FrameProps = {
  readonly state: State;
  readonly rows: number;
  readonly columns: number;
  readonly contents: Contents | undefined;
};

/** Whether the screen cannot be answered in this window: too small for any, or for what this one asks. */
const isTooSmall = (state: State, { rows, columns }: Size, contents: Contents | undefined) =>
  rows < 10 ||
  columns < 40 ||
  (contents !== undefined && contents.needs(state, columns).least > rows - frameRows);

/** What is on the screen when a state has been drawn. */
function drawnNow(state: State, { rows, columns }: Size, contents: Contents): Drawn {
  if (isTooSmall(state, { rows, columns }, contents)) return { kind: 'too-small' };
  const { question, screen } = state;
  const pages = contents.pages(state, { rows: rows - frameRows, columns });
  const page = screen.kind === 'walk' || screen.kind === 'close' ? (screen.page ?? 0) : 0;
  return {
    kind: 'page',
    question,
    whole: pages === undefined || page >= pages.length - 1,
    cautions: contents.cautions(state, { rows: rows - frameRows, columns }),
    size: `${columns}x${rows}`,
  };
}

const sameDrawn = (one: Drawn | undefined, other: Drawn): boolean =>
  one?.kind === 'page' && other.kind === 'page'
    ? one.question === other.question && one.whole === other.whole && one.size === other.size
    : one?.kind === other.kind;

/** Rows that the frame itself needs: head, three rules, notice, keys. The foot comes on top. */
const frameRows = 6;

/** The whole screen as a function of the state. */
export function ScreenFrame({ state, rows, columns, contents }: FrameProps) {
  if (isTooSmall(state, { rows, columns }, contents))
    return (
      <Line wrap="fold">
        The window is too small, and takes no key but Ctrl+C. Your session is safe.
      </Line>
    );
  const { session, screen } = state;
  if (screen.kind === 'phone' && contents !== undefined)
    return (
      <ThemeContext value={themes[state.settings.theme]}>
        <Box height={rows} {...ground(state)}>
          <contents.Body state={state} rows={rows} columns={columns} />
        </Box>
      </ThemeContext>
    );
  const onWalk = session !== undefined && screen.kind !== 'home' && screen.kind !== 'settings';
  const bindings = contents?.bindings ?? bindingsWith([]);
  const notice = noticeNow(state);
  const more = noticeExtra(state, notice, { rows: rows - frameRows, columns }, contents);
  const foot = onWalk ? footOf(state, { rows: rows - more, columns }, contents) : [];
  const right = onWalk ? headRight(state, session) : clockTime(state.now.at);
  return (
    <ThemeContext value={themes[state.settings.theme]}>
      <Box flexDirection="column" height={rows} {...ground(state)}>
        <Frame
          ruled={contents !== undefined}
          left={onWalk ? headLeft(state, session, columns - 4 - right.length) : headWord(session)}
          right={right}
          foot={foot}
          notice={<Ends {...notice} wrap={more > 0 ? 'fold' : 'cut'} />}
          keys={keysLine(hints(bindings, state.question.mode), columns)}
        >
          <Inside
            state={state}
            rows={rows - frameRows - more - foot.length}
            columns={columns}
            contents={contents}
          />
        </Frame>
      </Box>
    </ThemeContext>
  );
}

/** What is painted under everything, where the theme has one. */
function ground({ settings: { theme } }: State): { readonly backgroundColor?: string } {
  const { background } = themes[theme];
  return background === undefined ? {} : { backgroundColor: background };
}

/** Home at once; any other screen as soon as it is loaded. */
function Inside({ state, rows, columns, contents }: FrameProps) {
  if (state.screen.kind === 'home')
    return (
      <HomeBody
        sessions={state.sessions}
        unsafe={state.unsafe}
        cursor={state.screen.cursor}
        rows={rows}
      />
    );
  return contents === undefined ? null : (
    <contents.Body state={state} rows={rows} columns={columns} />
  );
}

/**
 * Rows that the notice takes beyond its one to be whole: from the foot and from what is free. Where the
 * screen itself needs them it stays in one row, ends in "…", and the page of `i` has it whole.
 * @param size rows between head and foot, with the foot's
 */
function noticeExtra(
  state: State,
  { left, right }: Notice,
  size: Size,
  contents: Contents | undefined,
): number {
  if (contents === undefined) return 0;
  // A column is free at each side of the frame, two before what is kept.
  const wanted =
    contents.rowsOf(left, size.columns - 2 - (right === '' ? 0 : right.length + 2)) - 1;
  const [page, ...more] = contents.pages(state, size) ?? [];
  const needs = contents.needs(state, size.columns);
  // In a field `i` is a letter: there the steps give way to the notice.
  const opens = state.screen.kind === 'walk' && state.screen.input.kind === 'ready';
  const asked = page?.length ?? (opens ? needs.wanted : needs.least);
  return wanted > 0 && more.length === 0 && wanted <= size.rows - asked ? wanted : 0;
}

/** The keys that fit into one row; the page of keys, which holds the rest, is always among them. */
function keysLine(shown: ReturnType<typeof hints>, columns: number): string {
  const all = shown.map(({ key, hint }) => ({ hint, text: `${keyName(key)} ${hint}` }));
  const page = all.filter(({ hint }) => hint === 'keys').map(({ text }) => text);
  const fitting: string[] = [];
  for (const { hint, text } of all) {
    const row = [...fitting, text, ...page].join(gap);
    if (hint !== 'keys' && row.length <= columns - 2) fitting.push(text);
  }
  return [...fitting, ...page].join(gap);
}

const gap = '   ';
