import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { plain } from '../../src/commands/plain/plain.ts';
import { runCommand, scratch, type Ran } from './commands.ts';

/** What came of a job told line by line: all that was said, and the records it left. */
export type Told = Ran & {
  readonly folder: string;
  /** What was said after each line; the first before any. */
  readonly answers: readonly string[];
  /** The kinds of the events in the only session there is. */
  readonly kinds: readonly string[];
  readonly events: readonly Record<string, unknown>[];
};

type Options = {
  readonly folder?: string;
  readonly args?: readonly string[];
  readonly first?: Parameters<typeof plain>[2];
  readonly columns?: number;
};

/** Says the lines to the program, one after the other, and then no more. */
export async function tell(lines: readonly string[], options: Options = {}): Promise<Told> {
  const { folder = scratch(), args = [], first = 'home', columns } = options;
  const ran = await runCommand((io, given) => plain(io, given, first), [...args, '--plain'], {
    folder,
    lines,
    ...(columns !== undefined && { columns }),
  });
  const events = eventsIn(folder);
  return {
    ...ran,
    folder,
    answers: answersIn(ran.out, lines),
    events,
    kinds: events.map(({ kind }) => String(kind)),
  };
}

function answersIn(out: string, lines: readonly string[]): readonly string[] {
  const answers: string[] = [];
  let rest = out;
  for (const line of lines) {
    const echo = `\n> ${line}\n`;
    const end = rest.indexOf(echo);
    if (end < 0) break;
    answers.push(rest.slice(0, end));
    rest = rest.slice(end + echo.length - 1);
  }
  return [...answers, rest];
}

function sessionsIn(folder: string): readonly string[] {
  const sessions = join(folder, 'sessions');
  return readdirSync(sessions)
    .filter((name) => name.endsWith('.jsonl'))
    .map((name) => join(sessions, name));
}

function eventsIn(folder: string): readonly Record<string, unknown>[] {
  try {
    return sessionsIn(folder).flatMap((path) =>
      readFileSync(path, 'utf8')
        .split('\n')
        .filter((line) => line !== '')
        .slice(1)
        .map((line) => JSON.parse(line) as Record<string, unknown>),
    );
  } catch {
    return [];
  }
}

/** Up to the first step of a job on dead lamps: a truck whose facts are all said. */
export const began = [
  's',
  'nothing at all',
  '1',
  'all dead since Sunday',
  'My truck',
  'JB',
  '',
  '',
  '1',
  '2',
  '4',
  '1',
];

/** From the first step to a repaired clamp, its proof due. */
export const mended = ['1 y 5', '1 2 3 y 12.6 12.3', '1 2 y gray-film y y', 'brushed 15']
  .flatMap((step) => step.split(' '))
  .concat('', '');

/** The proof, and the job closed with its account written. */
export const proven = ['y', '0.02', 'y', '1', 'c', '1', 'y', 'e', 'q', 'q'];
