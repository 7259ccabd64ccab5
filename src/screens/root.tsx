import { Box, useApp, useInput, usePaste, useStdout, useWindowSize } from 'ink';
import { useEffect, useSyncExternalStore } from 'react';
import { hints } from '../app/keymap.ts';
import type { Message } from '../app/message.ts';
import type { Live, State } from '../app/state.ts';
import { tokens } from '../app/tokens.ts';
import { currentMode } from '../app/mode.ts';
import { clockTime, workedSeconds } from '../core/session/time.ts';
import { currentLeg } from '../core/session/story.ts';
import { count } from '../core/text.ts';
import { Body } from './body.tsx';
import { Ends, Frame, Line, ThemeContext } from './parts.tsx';
import { feedLine } from './feed.ts';
import { themes } from './theme.ts';
import { quickerLine, suspectsLine } from './why.ts';
import { doneCount, hours, lastWords } from './wording.ts';

type RootProps = {
  readonly state: () => State;
  readonly subscribe: (listener: () => void) => () => void;
  readonly dispatch: (message: Message) => void;
  /** Hands out a way to draw everything again, over whatever else was written to the terminal. */
  readonly lendRedraw: (redraw: () => void) => void;
};

/** The one place where keys come in: mounted for the life of the program, so that no key is lost. */
export function Root({ state: read, subscribe, dispatch, lendRedraw }: RootProps) {
  const state = useSyncExternalStore(subscribe, read);
  const { rows, columns } = useWindowSize();
  const { suspendTerminal } = useApp();
  const { stdout } = useStdout();
  useEffect(() => {
    // The alternate screen comes back wherever the cursor was: column 0 keeps its first line straight.
    lendRedraw(() => void suspendTerminal(() => void stdout.write('\r')));
  }, [lendRedraw, suspendTerminal, stdout]);
  useInput((input, key) => {
    for (const token of tokens(input, key)) dispatch({ kind: 'key', token });
  });
  usePaste((text) => dispatch({ kind: 'pasted', text }));
  return <ScreenFrame state={state} rows={rows} columns={columns} />;
}

type FrameProps = { readonly state: State; readonly rows: number; readonly columns: number };

/** Rows that the frame itself needs: head, three rules, notice, keys, and four foot lines. */
const frameRows = 10;

/** The whole screen as a function of the state. */
export function ScreenFrame({ state, rows, columns }: FrameProps) {
  if (rows < 10 || columns < 40)
    return <Line wrap="fold">The window is too small. Your session is safe.</Line>;
  const { live, screen } = state;
  const onWalk = live !== undefined && screen.kind !== 'home' && screen.kind !== 'settings';
  return (
    <ThemeContext value={themes[state.settings.theme]}>
      <Box flexDirection="column" height={rows}>
        <Frame
          left={onWalk ? headLeft(live) : 'DROPLIGHT'}
          right={onWalk ? headRight(state, live) : clockTime(state.now.at)}
          foot={onWalk ? <Foot live={live} /> : null}
          notice={<NoticeLine state={state} />}
          keys={keysLine(state, columns)}
        >
          <Body state={state} rows={rows - frameRows} columns={columns} />
        </Frame>
      </Box>
    </ThemeContext>
  );
}

const headLeft = ({ story }: Live): string =>
  `DROPLIGHT   ${story.header.vehicle.name} · ${currentLeg(story).tree.id.replaceAll('-', ' ')}`;

function headRight(state: State, { story, events }: Live): string {
  const last = events.at(-1);
  const minutes = story.minutes + (last === undefined ? 0 : workedSeconds(last, state.now) / 60);
  return `${clockTime(state.now.at)}  ${hours(minutes)}  ${count(doneCount(story), 'check')}`;
}

function Foot({ live }: { readonly live: Live }) {
  const { story } = live;
  // Suspects belong to steps that look for a cause; a repair, a proof and an end have none to show.
  const asks = ['check', 'named', 'stop'].includes(story.step.kind);
  const { shop } = currentLeg(story);
  const apart = [
    ...story.open.map((id) => shop.accesses[id]?.name ?? id),
    ...story.partsOff.map(({ part }) => part),
  ];
  return (
    <Box paddingX={1} flexDirection="column">
      <Line>{`LAST      ${lastWords(story)}`}</Line>
      {asks && feedLine(live) !== '' ? <Line>{feedLine(live)}</Line> : null}
      {asks ? <Line>{suspectsLine(live)}</Line> : null}
      {asks && quickerLine(live) !== '' ? <Line>{quickerLine(live)}</Line> : null}
      {apart.length === 0 ? null : <Line>{`APART     ${apart.join('; ')}`}</Line>}
    </Box>
  );
}

function NoticeLine({ state: { notice, live } }: { readonly state: State }) {
  const trouble = live?.trouble;
  const kept = live === undefined ? '' : keptWords(live);
  if (trouble !== undefined)
    return <Ends left={`NOT KEPT: ${trouble.message} ${trouble.mend}`} right={kept} as="problem" />;
  return (
    <Ends
      left={notice?.text ?? ''}
      right={kept}
      as={notice?.kind === 'problem' ? 'problem' : 'plain'}
    />
  );
}

/** Says `kept` only when everything shown is on the disk. */
function keptWords({ events, kept, keptAt, trouble }: Live): string {
  if (trouble !== undefined) return 'not kept';
  return (events.at(-1)?.n ?? 0) === kept ? `kept ${keptAt}` : 'keeping...';
}

/** The keys that fit into one row; the page of keys, which holds the rest, is always among them. */
function keysLine(state: State, columns: number): string {
  const all = hints(currentMode(state)).map(({ key, hint }) => ({ key, text: `${key} ${hint}` }));
  const page = all.filter(({ key }) => key === '?').map(({ text }) => text);
  const shown: string[] = [];
  for (const { key, text } of all) {
    const row = [...shown, text, ...page].join(gap);
    if (key !== '?' && row.length <= columns - 2) shown.push(text);
  }
  return [...shown, ...page].join(gap);
}

const gap = '   ';
