import { firstOf, good } from '../core/problem.ts';
import type { Damage, Recovered } from '../store/recover.ts';
import { loadSession } from '../store/sessions.ts';
import { printJson, type Ended, type Io } from './io.ts';
import { readOptions } from './options.ts';
import { namedSessions } from './session.ts';

/** `droplight verify SESSION...`: whole, torn or altered, and at which lines. 1 when any is not whole. */
export async function verify(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, { json: 'flag' });
  if (given.kind === 'bad') return given;
  const paths = namedSessions(io, given.value, 'droplight verify SESSION... [--json]');
  if (paths.kind === 'bad') return paths;
  const verdicts = paths.value.map((path) => judge(io, path));
  if (given.value.flag('json')) printJson(io, verdicts);
  else for (const verdict of verdicts) io.out(`${wordsOf(verdict)}\n`);
  return good(verdicts.every(({ state }) => state === 'whole') ? 0 : 1);
}

type Verdict = {
  readonly session: string;
  readonly state: 'whole' | 'torn' | 'altered' | 'unreadable';
  readonly events: number;
  readonly lines: readonly Damage[];
  readonly link?: string;
  readonly why?: string;
};

function judge(io: Io, path: string): Verdict {
  const loaded = loadSession(io.disk.files, path);
  if (loaded.kind === 'bad')
    return {
      session: path,
      state: 'unreadable',
      events: 0,
      lines: [],
      why: firstOf(loaded.problems).message,
    };
  const { events, damage, link } = loaded.value;
  return {
    session: path,
    state: stateOf(loaded.value),
    events: events.length,
    lines: damage,
    link,
  };
}

function stateOf({ damage, openEnd }: Recovered): Verdict['state'] {
  if (damage.some(({ kind }) => kind === 'altered')) return 'altered';
  return damage.length > 0 || openEnd ? 'torn' : 'whole';
}

function wordsOf({ session, state, events, lines, link, why }: Verdict): string {
  const at = lines.map(({ line, kind }) => `line ${line} ${kind}`).join(', ');
  const rest =
    why ??
    [`${events} events`, at, `last link ${link ?? ''}`].filter((part) => part !== '').join(', ');
  return `${state}: ${session} (${rest})`;
}
