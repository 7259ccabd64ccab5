import { Box, Text, Transform } from 'ink';
import SelectInput from 'ink-select-input';
import { createContext, useContext, type ReactNode } from 'react';
import { blockStart } from '../app/keys/cursor.ts';
import { cleanRow } from '../core/text.ts';
import { numberOf, useNoWindow } from './plain/no-window.ts';
import { themes, type Meaning, type Theme } from './theme.ts';

export const ThemeContext = createContext<Theme>(themes.day);

type LineProps = {
  readonly children: string;
  readonly as?: Meaning;
  /** `cut` ends a line that is too long with an ellipsis; `fold` goes on in the next row. */
  readonly wrap?: 'cut' | 'fold';
};

/** Text on the screen: whatever it holds comes out harmless. */
export function Line({ children, as = 'plain', wrap = 'cut' }: LineProps) {
  const theme = useContext(ThemeContext);
  const endless = useNoWindow();
  const text = cleanRow(children) || ' ';
  if (wrap === 'cut' && !endless)
    return (
      <Text {...theme[as]} wrap="truncate">
        {text}
      </Text>
    );
  return (
    <Transform transform={flushLeft}>
      <Text {...theme[as]} wrap="wrap">
        {text}
      </Text>
    </Transform>
  );
}

/** A fold after a row that is full to its last column leaves its space at the next row's beginning. */
const flushLeft = (row: string, index: number): string =>
  index === 0 ? row : row.replace(leading, '$1');
// oxlint-disable-next-line no-control-regex -- the row may begin with its colors
const leading = /^((?:\u001b\[[0-9;]*m)*) /;

type EndsProps = Pick<LineProps, 'as' | 'wrap'> & { readonly left: string; readonly right: string };

/** A line with something at its right end; the left part gives way when there is no room. */
export function Ends({ left, right, as = 'plain', wrap = 'cut' }: EndsProps) {
  const across = useNoWindow() ? undefined : ({ justifyContent: 'space-between', gap: 2 } as const);
  return (
    <Box {...(across ?? { flexDirection: 'column' })}>
      <Box flexShrink={1}>
        <Line as={as} wrap={wrap}>
          {left}
        </Line>
      </Box>
      <Box flexShrink={0}>
        <Line>{right}</Line>
      </Box>
    </Box>
  );
}

/** A rule over the whole width. Never given a width of its own: it would not follow a resize. */
function Rule() {
  const {
    background,
    quiet: { color },
  } = useContext(ThemeContext);
  return (
    <Box
      flexShrink={0}
      borderStyle="single"
      borderBottom={false}
      borderLeft={false}
      borderRight={false}
      {...(color !== undefined && { borderColor: color })}
      {...(background !== undefined && { borderBackgroundColor: background })}
    />
  );
}

type IndentedProps = LineProps & { readonly mark: string };

/**
 * A rule, or its blank row. The first character beyond ASCII makes the layout set up its tables of
 * wide characters, which takes a sixth of the time to the first frame; so that frame has none.
 */
const Edge = ({ ruled }: { readonly ruled: boolean }) =>
  ruled ? <Rule /> : <Box height={1} flexShrink={0} />;

/** Text set in from the left behind a mark, its later rows too. */
export function Indented({ mark, children, as = 'plain', wrap = 'fold' }: IndentedProps) {
  return (
    <Box paddingLeft={1} flexShrink={0}>
      <Box flexShrink={0} width={mark.length + 1}>
        <Line as={as}>{mark}</Line>
      </Box>
      <Box flexShrink={1}>
        <Line as={as} wrap={wrap}>
          {children}
        </Line>
      </Box>
    </Box>
  );
}

/** What Enter does now, set off from the step. */
export const Asks = ({ children }: { readonly children: string }) => (
  <Box paddingTop={1} flexShrink={0} flexDirection="column">
    <Indented mark=">" as="marked">
      {children}
    </Indented>
  </Box>
);

/** Lines over the rest of the screen: they keep their rows when it is tight. */
export const Head = ({ children }: { readonly children: ReactNode }) => (
  <Box paddingX={1} flexDirection="column" flexShrink={0}>
    {children}
  </Box>
);

/** What was typed to narrow a list, and how many lines are left of it. */
export const Narrowed = ({ sought, left }: { readonly sought: string; readonly left: number }) =>
  sought === '' ? null : (
    <Head>
      <Line as="title">
        {`"${sought}": ${left === 0 ? 'no line has it; backspace takes letters away' : left === 1 ? '1 line' : `${left} lines`}`}
      </Line>
    </Head>
  );

export type Choice = {
  readonly id: string;
  readonly label: string;
  /** The word for lines that belong together: it stands before the first of them that is seen. */
  readonly group?: string;
};

/** The word of a group where it begins; its room below that. */
const grouped = (group: string | undefined, before: string | undefined): string =>
  group === undefined ? '' : `${group === before ? '' : group}`.padEnd(10);

type ChoicesProps = {
  readonly choices: readonly Choice[];
  readonly cursor: number;
  readonly rows: number;
  /** Whether a digit picks a line; where digits type a reading no line has one. */
  readonly numbered?: boolean;
};

type Selectable = { readonly isSelected?: boolean };

const Mark = ({ isSelected = false }: Selectable) => {
  const marked = !useNoWindow() && isSelected;
  return (
    <Box flexShrink={0} width={3}>
      <Line>{marked ? ' > ' : '   '}</Line>
    </Box>
  );
};

const Item = ({ isSelected = false, label }: Selectable & { readonly label: string }) => (
  <Line as={isSelected ? 'marked' : 'plain'}>{label}</Line>
);

/** The first line seen: that of the numbered ones, or a later one where the cursor would be out of sight. */
export function firstShown(lines: number, cursor: number, rows: number): number {
  const last = Math.max(0, lines - Math.max(1, rows));
  return Math.max(Math.min(blockStart(cursor), last), cursor - Math.max(1, rows) + 1);
}

/**
 * A list of lines with their keys, the one under the cursor marked. The library draws it and finds the
 * part of a long list that is seen; the cursor is the program's, handed in by mounting it again. With
 * its own keys on it loses the second of two that come in one read, wraps at the ends, and moves by letters.
 */
export function Choices({ choices, cursor, rows, numbered = true }: ChoicesProps) {
  const unnumbered = useNoWindow() ? (index: number) => `#${index + 1}` : () => '-';
  const from = firstShown(choices.length, cursor, rows);
  const seen = choices.slice(from, from + Math.max(1, rows));
  const items = seen.map(({ id, label, group }, index) => ({
    key: id,
    value: id,
    label: `${numbered ? (numberOf(from + index, cursor, rows) ?? ' ') : unnumbered(from + index)}  ${grouped(group, seen[index - 1]?.group)}${label}`,
  }));
  return (
    <SelectInput
      key={`${cursor} ${rows} ${items.length}`}
      items={items}
      initialIndex={cursor - from}
      limit={Math.max(1, rows)}
      isFocused={false}
      indicatorComponent={Mark}
      itemComponent={Item}
    />
  );
}

type FrameProps = {
  /** Rules are left blank on the very first frame: see `Edge`. */
  readonly ruled: boolean;
  readonly left: string;
  readonly right: string;
  readonly children: ReactNode;
  /** Lines above the keys: what was last found, what is open. */
  readonly foot: readonly string[];
  readonly notice: ReactNode;
  readonly keys: string;
};

/** The frame of every screen: head, body, foot, keys. It fills the terminal. */
export function Frame({ ruled, left, right, children, foot, notice, keys }: FrameProps) {
  return (
    <>
      <Head>
        <Ends left={left} right={right} as="title" />
      </Head>
      <Edge ruled={ruled} />
      <Box flexDirection="column" flexGrow={1} flexShrink={1} overflow="hidden">
        {children}
      </Box>
      <Box flexDirection="column" flexShrink={0}>
        <Edge ruled={ruled} />
        <Box paddingX={1} flexDirection="column">
          {foot.map((line) => (
            <Line key={line}>{line}</Line>
          ))}
          {notice}
        </Box>
        <Edge ruled={ruled} />
        <Box paddingX={1}>
          <Line>{keys}</Line>
        </Box>
      </Box>
    </>
  );
}
