import { good, showPath, showValue, type Problem } from '../core/problem.ts';
import { Action } from '../core/session/action.ts';
import { takeAction } from '../app/take-action.ts';
import type { Effect } from '../app/effect.ts';
import { emptyState } from '../app/state.ts';
import type { State } from '../app/state.ts';
import { update } from '../app/update.ts';
import { refusal, storeError } from '../store/files.ts';
import { openSession, type HeldSession } from '../store/sessions.ts';
import { readSettings } from '../store/settings.ts';
import type { Ended, ExitCode, Io } from './io.ts';
import { openLibrary } from './library.ts';
import { namedIn } from './session.ts';

const use = 'droplight enter SESSION < actions.jsonl';

/**
 * `droplight enter SESSION`: actions as JSON lines on standard input, the same that the screens
 * make, under the same rules. One JSON answer a line; `ok` means that it is on the disk.
 */
export async function enter(io: Io, args: readonly string[]): Promise<Ended> {
  const named = namedIn(io, args, { use });
  if (named.kind === 'bad') return named;
  const { given, path } = named.value;
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return library;
  const opened = openSession(io.disk, path, { kept: () => {}, trouble: () => {} });
  if (opened.kind === 'bad') return opened;
  const settings = readSettings(io.disk.files, io.folders.settings);
  const state = { ...emptyState(io.clock(), settings), library: library.value };
  try {
    return good(await enterLines(io, opened.value, state));
  } finally {
    opened.value.release();
  }
}

async function enterLines(io: Io, open: HeldSession, before: State): Promise<ExitCode> {
  const { recovered, path, torn } = open;
  const first = update(before, { kind: 'session-opened', path, ...recovered, torn }, io.clock());
  let state = first.state;
  write(open, first.effects);
  let refused = false;
  for await (const line of io.lines()) {
    if (line.trim() === '') continue;
    const answered = await enterLine(open, { ...state, now: io.clock() }, line);
    state = answered.state;
    refused ||= !answered.answer.ok;
    io.out(`${JSON.stringify(answered.answer)}\n`);
  }
  return refused ? 2 : 0;
}

type Answer =
  | {
      readonly ok: true;
      readonly n: number;
      readonly step: unknown;
      readonly warnings?: readonly string[];
    }
  | { readonly ok: false; readonly problem: Problem };

type Answered = { readonly state: State; readonly answer: Answer };

async function enterLine(open: HeldSession, state: State, line: string): Promise<Answered> {
  const action = readAction(line);
  if ('code' in action) return { state, answer: { ok: false, problem: action } };
  const acted = takeAction(state, action);
  if (acted.outcome.kind === 'refused')
    return { state: acted.state, answer: { ok: false, problem: acted.outcome.problem } };
  const { n, warnings } = acted.outcome;
  write(open, acted.effects);
  try {
    await open.journal.settled();
  } catch (error) {
    const problem = refusal(storeError(error, open.path));
    return { state: acted.state, answer: { ok: false, problem } };
  }
  const step = acted.state.session?.story.due;
  return {
    state: acted.state,
    answer: { ok: true, n, step, ...(warnings.length > 0 && { warnings }) },
  };
}

function write(open: HeldSession, effects: readonly Effect[]): void {
  for (const effect of effects) if (effect.kind === 'append') open.journal.append(effect.event);
}

/** One line of input as an action, or what is wrong with it. */
function readAction(line: string): Action | Problem {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return {
      code: 'not-json',
      message: 'This line is not JSON.',
      mend: 'Give one object a line, such as {"do":"find","check":"...","result":"..."}.',
      value: showValue(line),
    };
  }
  const action = Action.safeParse(value);
  if (action.success) return action.data;
  const [issue] = action.error.issues;
  const where = issue === undefined ? '' : showPath(issue.path);
  return {
    code: 'wrong-action',
    message: `This is no action${where === '' ? '' : ` ("${where}")`}: ${issue?.message ?? ''}.`,
    mend: `Actions: ${Action.options.map((option) => option.shape.do.value).join(', ')}; DEVELOPERS.md shows the fields of each.`,
    value: showValue(value),
  };
}
