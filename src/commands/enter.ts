import {
  firstOf,
  good,
  problemsOf,
  showPath,
  showValue,
  type Parsed,
  type Problem,
} from '../core/problem.ts';
import { Action } from '../core/session/action.ts';
import type { Secret } from '../core/session/practice/secret.ts';
import type { KeptPhoto } from '../core/session/record/photo.ts';
import { recordWarning } from '../core/session/record/damage.ts';
import { takeAction } from '../app/take-action.ts';
import type { Effect } from '../app/effect.ts';
import { emptyState } from '../app/state.ts';
import type { State } from '../app/state.ts';
import { update } from '../app/update.ts';
import { parseJson } from '../core/tree/json/read.ts';
import { attempt } from '../store/files.ts';
import { discardPhoto, takePhoto } from '../store/photos.ts';
import { secretOf } from '../store/practice.ts';
import { openSession, type HeldSession } from '../store/sessions.ts';
import { readSettings } from '../store/settings.ts';
import { safeJson } from '../core/text.ts';
import { exitCodeOf, type Ended, type ExitCode, type Io } from './io.ts';
import { libraryForJobs, openLibrary } from './library.ts';
import { namedIn } from './session.ts';
import { uses } from './uses.ts';

/**
 * `droplight enter SESSION`: actions as JSON lines on standard input, the same that the screens
 * make, under the same rules. One JSON answer a line; `ok` means that it is on the disk.
 */
export async function enter(io: Io, args: readonly string[]): Promise<Ended> {
  const named = namedIn(io, args, uses.enter);
  if (named.kind === 'bad') return named;
  const { given, path } = named.value;
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return library;
  const mended: string[] = [];
  const opened = openSession(io.disk, path, {
    kept: () => {},
    trouble: () => {},
    mended: ({ message }) => mended.push(message),
  });
  if (opened.kind === 'bad') return opened;
  const settings = readSettings(io.disk.files, io.folders.settings);
  const state = {
    ...emptyState(io.clock(), settings),
    library: libraryForJobs(io, given, library.value),
  };
  try {
    const warning = recordWarning(opened.value.recovered.damage);
    if (warning !== undefined) mended.push(warning);
    const secret = secretOf(io.disk.files, io.folders.settings, opened.value.recovered.header);
    return await enterLines(io, { ...opened.value, mended, secret }, state);
  } finally {
    opened.value.release();
  }
}

/** An open session, and what somebody did to its file meanwhile, not told yet. */
type Entered = HeldSession & {
  readonly mended: string[];
  /** What a practice hides. */
  readonly secret: Secret | undefined;
};

async function enterLines(io: Io, open: Entered, before: State): Promise<Ended> {
  const { recovered, path, torn } = open;
  const first = update(
    before,
    { kind: 'session-opened', path, ...recovered, torn, secret: open.secret },
    io.clock(),
  );
  const begun = attempt(path, () => write(open, first.effects));
  if (begun.kind === 'bad') return begun;
  let state = first.state;
  let code: ExitCode = 0;
  for await (const line of io.lines()) {
    if (line.kind === 'good' && line.value.trim() === '') continue;
    const { state: after, answer } = enterLine(io, open, { ...state, now: io.clock() }, line);
    state = after;
    if (!answer.ok) code = code === 3 || exitCodeOf(answer.problem) === 3 ? 3 : 2;
    io.out(`${safeJson(answer)}\n`);
  }
  return good(code);
}

type Answer =
  | {
      readonly ok: true;
      readonly n: number;
      readonly step: unknown;
      readonly warnings?: readonly string[];
      /** What the hidden vehicle of a practice showed. */
      readonly shown?: unknown;
    }
  | { readonly ok: false; readonly problem: Problem };

type Answered = { readonly state: State; readonly answer: Answer };

function enterLine(io: Io, open: Entered, state: State, line: Parsed<string>): Answered {
  const action = line.kind === 'bad' ? firstOf(line.problems) : readAction(line.value);
  if ('code' in action) return { state, answer: { ok: false, problem: action } };
  if (action.do !== 'photo') return enterAction(open, state, action);
  const { files } = io.disk;
  const photo = takePhoto(files, open.path, action, io.folders);
  if (photo.kind === 'bad')
    return { state, answer: { ok: false, problem: firstOf(photo.problems) } };
  const answered = enterAction(open, state, action, photo.value);
  if (isRefused(answered.answer)) discardPhoto(files, open.path, photo.value);
  return answered;
}

/** Where the disk took nothing back, the record may tell of it. */
const isRefused = (answer: Answer): boolean => !answer.ok && answer.problem.code !== 'perhaps-kept';

function enterAction(open: Entered, state: State, action: Action, photo?: KeptPhoto): Answered {
  const acted = takeAction(state, action, photo);
  if (acted.outcome.kind === 'refused')
    return { state: acted.state, answer: { ok: false, problem: acted.outcome.problem } };
  const kept = attempt(open.path, () => write(open, acted.effects));
  // What was refused never was: the story goes on from where it stood.
  if (kept.kind === 'bad') return { state, answer: { ok: false, problem: firstOf(kept.problems) } };
  const { n } = acted.outcome;
  const warnings = [...acted.outcome.warnings, ...open.mended.splice(0)];
  const step = acted.state.session?.story.due;
  return {
    state: acted.state,
    answer: {
      ok: true,
      n,
      step,
      ...(warnings.length > 0 && { warnings }),
      ...(action.do === 'make' && { shown: shownIn(acted.effects) }),
    },
  };
}

/** What a check has shown, out of its own event. */
function shownIn(effects: readonly Effect[]): unknown {
  const events = effects.flatMap((effect) => (effect.kind === 'append' ? [effect.event] : []));
  const said = events.find(({ kind }) => kind === 'found' || kind === 'proved');
  if (said?.kind !== 'found' && said?.kind !== 'proved') return undefined;
  const { check, result, orResult, reading, readings } = said;
  return { check, result, orResult, reading, readings };
}

/** All events of one action, or none. */
const write = (open: HeldSession, effects: readonly Effect[]): void =>
  open.journal.commit(
    effects.flatMap((effect) => (effect.kind === 'append' ? [effect.event] : [])),
  );

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
  const twice = problemsOf(parseJson(line, '')).find(({ code }) => code === 'key-twice');
  if (twice !== undefined)
    return { code: twice.code, message: twice.message, mend: twice.mend, value: showValue(line) };
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
