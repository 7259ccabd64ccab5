import { Box } from 'ink';
import {
  homeLines,
  sessionsShown,
  sessionWords,
  stateWords,
  type HomeLine,
} from '../app/pages/home-lines.ts';
import type { Search } from '../app/keys/sought.ts';
import { closings } from '../core/session/record/closing.ts';
import type { SessionLine } from '../core/session/name.ts';
import { Choices, Line, Narrowed } from './parts.tsx';

type HomeProps = {
  readonly sessions: readonly SessionLine[];
  /** What must be done before a vehicle is driven. */
  readonly unsafe: readonly string[];
  readonly cursor: number;
  readonly rows: number;
};

/** Unsafe things told on Home; a vehicle's own page has all of its. */
const mostUnsafe = 3;

export function HomeBody({ sessions, unsafe, cursor, rows: room }: HomeProps) {
  const told = unsafe.slice(0, mostUnsafe);
  const more = unsafe.length - told.length;
  const rows = room - told.length - (more > 0 ? 1 : 0);
  const lines = homeLines(sessions);
  // The words below the lines go where there is no room for both.
  const spare = rows - 1 - lines.length;
  return (
    <Box flexDirection="column" paddingTop={spare >= 0 ? 1 : 0}>
      {told.length === 0 ? null : (
        <Box flexDirection="column" paddingX={1}>
          {told.map((one) => (
            <Line key={one} as="caution">{`! Before it is driven: ${one}`}</Line>
          ))}
          {more > 0 ? (
            <Line as="caution">{`  and ${more} more, on the pages of the vehicles`}</Line>
          ) : null}
        </Box>
      )}
      <Choices
        choices={lines.map((line) => ({ id: line.kind, label: words(line) }))}
        cursor={cursor}
        rows={rows}
      />
      {spare < 5 ? null : (
        <Box paddingX={1} paddingTop={1} flexDirection="column">
          <Line wrap="fold">
            From the complaint to a proven repair: one check at a time, every answer kept at once.
          </Line>
          <Line wrap="fold">
            The vehicle's own manual, local rules and licensed practice come first, always.
          </Line>
        </Box>
      )}
    </Box>
  );
}

function words(line: HomeLine): string {
  switch (line.kind) {
    case 'pick-up':
      return `Pick up: ${sessionWords(line.session)}`;
    case 'start':
      return 'Start a new job (s)';
    case 'list':
      return 'All sessions (a)';
    case 'vehicles':
      return 'Vehicles (v)';
    case 'jobs':
      return 'What past jobs turned out to be (p)';
    case 'figures':
      return 'Trade figures (f)';
    case 'settings':
      return 'Settings (g)';
    case 'quit':
      return 'Quit (q)';
  }
}

/** Columns of the longest word for how a session stands. */
const stateWidth = Math.max(...closings.map((as) => as.length));

type SessionsProps = {
  readonly sessions: readonly SessionLine[];
  readonly search: Search;
  readonly rows: number;
};

export function SessionsBody({ sessions, search, rows }: SessionsProps) {
  const shown = sessionsShown(sessions, search);
  if (sessions.length === 0)
    return (
      <Box paddingX={1} paddingTop={1}>
        <Line>There is no session here yet.</Line>
      </Box>
    );
  return (
    <>
      <Narrowed sought={search.sought} left={shown.length} />
      <Choices
        choices={shown.map((line) => ({
          id: line.path,
          label: `${stateWords(line).padEnd(stateWidth)}  ${sessionWords(line)}`,
        }))}
        cursor={search.cursor}
        rows={search.sought === '' ? rows : rows - 1}
      />
    </>
  );
}
