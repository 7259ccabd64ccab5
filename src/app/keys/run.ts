import type { Effect, Transition } from '../effect.ts';
import type { Run, State } from '../state.ts';
import type { KeyPress, Mode } from './command.ts';
import { isField, narrows } from './field.ts';
import { isDigit, isTyped, type Token } from './tokens.ts';

/**
 * Milliseconds after which the same key is struck anew: longer than any keyboard waits before it
 * repeats a key that is held (a second at most, common practice, no source), shorter than it takes
 * to read a page.
 */
const pause = 2000;

/** Whether a key goes on with a run that has done its one thing. */
export const isSpent = ({ run, now }: Pick<State, 'run' | 'now'>, token: Token): boolean =>
  run?.token === token && run.spent && now.mono - run.mono < (isLeaving(token) ? writing : pause);

/** Whoever strikes Ctrl+C again is to get out, and loses nothing: what is not kept is handed over. */
const isLeaving = (token: Token): boolean => token === 'C-c';

/** The run after a key that did nothing: it still parts one run of a key from the next. */
export const struck = (state: State, token: Token): State => ({
  ...state,
  run: {
    token,
    mono: state.now.mono,
    spent: isSpent(state, token),
    letters: lettersWith(state, token),
  },
});

/**
 * Milliseconds within which one letter after another may be writing: a slow typist takes a quarter
 * of a second a letter (common practice, no source). A practised hand is as quick from one command
 * to the next, but reads before the third.
 */
const writing = 350;

const takesLetters = (mode: Mode): boolean => isField(mode) || narrows(mode);

type Struck = Pick<State, 'run' | 'now' | 'question'>;

const lettersBefore = ({ run, now, question }: Struck): number =>
  run === undefined || takesLetters(question.mode) || now.mono - run.mono >= writing
    ? 0
    : run.letters;

const isLetter = (token: Token): boolean => isTyped(token) && /\p{L}/u.test(token);

/** A digit that was taken, or a key that is no character, parts two commands as nothing in a word does. */
function lettersWith(state: Struck, token: Token): number {
  if (takesLetters(state.question.mode)) return 0;
  const before = lettersBefore(state);
  if (isLetter(token)) return before + 1;
  return isHasty(state, token) || (isTyped(token) && !isDigit(token)) ? before : 0;
}

/** Whether a key goes on with words being written where no field is open: then it is no command. */
export const isHasty = (state: Struck, token: Token): boolean =>
  lettersBefore(state) > 1 && (isTyped(token) || token === 'enter');

/** Whether a letter comes so soon after a letter that it is a command, or the second of a word. */
export const mayBeWord = (state: Struck, token: Token): boolean =>
  isLetter(token) && lettersBefore(state) === 1;

/** Whether a press says of the page on screen that something is so, or was read. */
export const claims = ({ question: { mode } }: State, { command }: KeyPress): boolean =>
  command === 'confirm' ||
  command === 'not-this' ||
  (command === 'pick-line' && (mode === 'caution' || mode === 'cause-caution'));

/** The run after a press, and what it came to. */
export function runAfter(before: State, press: KeyPress, after: Transition): Run {
  const { token } = press;
  const did =
    claims(before, press) || writes(after) || after.state.screen.kind !== before.screen.kind;
  return {
    token,
    mono: before.now.mono,
    spent: did || isSpent(before, token),
    letters: lettersWith(before, token),
  };
}

const writings: ReadonlySet<Effect['kind']> = new Set(['append', 'keep-vehicle', 'keep-photo']);

/** Whether something goes into the record, or into a file beside it. */
export const writes = ({ effects }: Transition): boolean =>
  effects.some(({ kind }) => writings.has(kind));

/** Whether what the page asks was seen, down to its last line, before the key came. */
export const wasSeen = ({ drawn, question }: State): boolean =>
  drawn?.kind === 'page' && drawn.question === question && drawn.whole;
