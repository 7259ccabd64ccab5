import wrapAnsi from 'wrap-ansi';
import { cautionNames, shortCaution } from '../app/walk/caution-words.ts';
import type { AskedCheck, Blocker, DueOnScreen } from '../app/walk/question.ts';
import { hasRowBelow } from '../app/walk/reading-words.ts';
import type { WalkInput } from '../app/screen.ts';
import { conditionNames, healthyWords } from '../app/wording.ts';
import { currentLeg } from '../core/session/story.ts';
import { cleanRow } from '../core/text.ts';
import { firstBecause, reasonRows } from './claim-rows.ts';

/** Rows that text takes when it is folded into a column of some width, as Ink folds it. */
export const rowsOf = (text: string, width: number): number =>
  wrapAnsi(cleanRow(text), width, { trim: false, hard: true }).split('\n').length;

/** Rows of texts that are folded one under the other. */
export const allRowsOf = (texts: readonly string[], width: number): number =>
  texts.reduce((sum, text) => sum + rowsOf(text, width), 0);

/** How much of a step's words there is room for: `i` shows all of them at any size. */
export type Room = {
  /** `line` is their names in one row, which may be cut: they were read whole before. */
  readonly cautions: 'fold' | 'cut' | 'names' | 'line';
  readonly how: 'fold' | 'cut';
  /** Steps that are shown. */
  readonly steps: number;
  /** Whether a row below them says where the others are. */
  readonly more: boolean;
  readonly aside: boolean;
  /** Rows for the results: the marked one is among them. */
  readonly results: number;
};

/** Rows that a screen asks for between head and foot. */
export type Needs = {
  /** With fewer it cannot be answered, and takes nothing. */
  readonly least: number;
  /** With fewer the foot gives way. */
  readonly wanted: number;
};

type Form = Pick<Room, 'cautions' | 'how' | 'aside'>;

/** From roomy to tight: cautions lose their length first, their names last. */
const forms: readonly Form[] = [
  { cautions: 'fold', how: 'fold', aside: true },
  { cautions: 'cut', how: 'fold', aside: true },
  { cautions: 'cut', how: 'fold', aside: false },
  { cautions: 'names', how: 'fold', aside: false },
  { cautions: 'names', how: 'cut', aside: false },
];
const tightest: Form = { cautions: 'line', how: 'cut', aside: false };

type Words = {
  readonly how: readonly string[];
  readonly cautions: readonly string[];
  /** The cautions by name, in one line that folds. */
  readonly names: string;
  /** What can be done without first: what is healthy, where a part is. */
  readonly aside: string;
  /** Rows that are never cut: the field of the reading, what Enter does. */
  readonly kept: number;
  /** Results to pick from. */
  readonly results: number;
};

/** The roomiest way to show a step in the rows there are; the field and the results are kept longest. */
export function roomFor(words: Words, columns: number, rows: number): Room {
  const { how, results } = words;
  const form = forms.find((one) => rowsIn(words, one, columns) <= rows);
  if (form !== undefined) return { ...form, steps: how.length, more: false, results };
  const left = rows - leastRows(words) + Math.min(1, results);
  const shown = Math.min(results, Math.max(1, left));
  const forSteps = left - shown;
  const steps = forSteps >= how.length ? how.length : Math.max(0, forSteps - 1);
  return { ...tightest, steps, more: forSteps > 0 && steps < how.length, results: shown };
}

/** The title, one row of cautions, what is never cut, and one result. */
const leastRows = ({ cautions, kept, results }: Words): number =>
  1 + Math.min(1, cautions.length) + kept + Math.min(1, results);

function rowsIn(words: Words, form: Form, columns: number): number {
  const { how, cautions, names, aside, kept, results } = words;
  const forCautions = {
    fold: () => allRowsOf(cautions, columns - 4),
    cut: () => cautions.length,
    names: () => rowsOf(names, columns - 4) * Math.min(1, cautions.length),
    line: () => Math.min(1, cautions.length),
  }[form.cautions]();
  return (
    1 +
    forCautions +
    (form.how === 'cut' ? how.length : allRowsOf(how, columns - 7)) +
    (form.aside && aside !== '' ? rowsOf(aside, columns - 11) : 0) +
    kept +
    results
  );
}

/** A check on the walk, with what is typed for it. */
export type OnScreen = {
  readonly due: DueOnScreen;
  readonly asked: AskedCheck;
  readonly input: WalkInput;
};

/** The room for a check in the rows there are. */
export const roomOf = (on: OnScreen, columns: number, rows: number): Room =>
  roomFor(wordsOf(on, columns), columns, rows);

/** The rows a check asks for: all its steps, each in a row, and all its results. */
export function checkNeeds(on: OnScreen, columns: number): Needs {
  const words = wordsOf(on, columns);
  return { least: leastRows(words), wanted: rowsIn(words, tightest, columns) };
}

function wordsOf({ due, asked: { id, check }, input }: OnScreen, columns: number): Words {
  const leg = currentLeg(due.story);
  const first = conditionFirst(due.blocker);
  const doubt = input.kind === 'insist' ? [insistWords(input.why)] : [];
  const field = check.reading === undefined ? 0 : hasRowBelow(check) ? 2 : 1;
  const reasons = [...firstBecause(leg, id), ...(first === '' ? doubt : [first])];
  return {
    how: check.how,
    cautions: check.cautions.map((caution) => shortCaution(leg, caution)),
    names: cautionNames(leg, check.cautions),
    aside: first === '' ? healthyWords(check) : '',
    kept: allRowsOf(reasons, columns - 4) + (first === '' ? field : 1),
    results: first === '' ? check.results.length : 0,
  };
}

/** What is asked of a reading that can hardly be. */
export const insistWords = (why: string): string =>
  `${why} Is it really so? ! keeps it, Esc reads again.`;

/** What is to be said before the check can be answered; empty where nothing is. */
export const conditionFirst = (blocker: Blocker): string =>
  blocker.kind === 'condition'
    ? `This reading is judged by the ${conditionNames[blocker.condition]}. Enter: type it. u: not known, judge it as it is read.`
    : '';

/** What a field of words on the walk asks. */
export const textQuestions = {
  note: 'Note',
  skip: 'Why can it not be done?',
  road: 'Road test: what is seen now? Its time is kept. Typed by who does not drive. Empty: done.',
  worker: 'Who works from here on? Initials will do.',
  'follow-up': 'What is still to do?',
  altitude: 'Height above sea level (such as 5200ft)',
  temperature: 'Air temperature (such as 70F)',
  shown: 'Recorded. What exactly was found? May stay empty.',
  found: 'It is this: recorded. What exactly was found, and where? May stay empty.',
  'left-apart': 'Why does the proof go on with what is not back? The account will say it.',
  despite: 'Why do you go on all the same? The account will say it.',
} as const;

type TextInput = Extract<WalkInput, { kind: 'text' }>;

/** Reasons that stand over the field of a word of one's own, whole. */
export const despiteRows = ({ story, blocker }: DueOnScreen, { purpose }: TextInput) =>
  purpose === 'despite' && blocker.kind === 'safeguard'
    ? reasonRows(story, blocker.holds, false)
    : [];

/** Rows that a field of words asks for on the walk: its reasons and its question whole, and one to type in. */
export function textNeeds(due: DueOnScreen, input: TextInput, columns: number): Needs {
  const reasons = despiteRows(due, input).map(({ text }) => text);
  const least =
    allRowsOf(reasons, columns - 4) + rowsOf(textQuestions[input.purpose], columns - 2) + 1;
  return { least, wanted: least + 1 };
}
