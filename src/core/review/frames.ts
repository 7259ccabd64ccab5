import { eventWords } from '../account/clauses/clauses.ts';
import { causeIn, minuteWords } from '../account/words/wording.ts';
import { gradeOf, grades } from '../reason/grade.ts';
import { clockTime, dateOf } from '../session/clock.ts';
import { fold, type Recorded } from '../session/fold.ts';
import type { Story } from '../session/story.ts';
import { spanOf } from '../session/time.ts';
import { unlisted } from '../tree/model.ts';
import type { Decision } from './decision.ts';
import { decisionAt, decisionEvents } from './decisions.ts';
import {
  betterThing,
  expectedThing,
  foundThing,
  howTaken,
  stepThing,
  tookWords,
} from './telling.ts';

/** One line of a frame: what it tells of, and its words. */
type FrameLine = { readonly tag: string; readonly text: string };

/** One decision as it is watched again: the clock of the session, what was asked, expected and found, and who moved. */
export type Frame = {
  /** Place of its event among those of the record, counted from 1. */
  readonly count: number;
  readonly clock: string;
  readonly lines: readonly FrameLine[];
  /** The same in the words of the account. */
  readonly told: string;
};

/** Counts of events after which a decision had been taken. */
export const frameStops = (recorded: Recorded): readonly number[] =>
  decisionEvents(recorded).map((index) => index + 1);

/** The decision taken by the event with that count. @throws RangeError where none was */
export function frameAt(recorded: Recorded, count: number): Frame {
  const decision = decisionAt(recorded, count - 1);
  const story = fold(recorded.header, recorded.events.slice(0, count));
  const entry = story.entries.at(-1);
  const since = minuteWords(spanOf(story.time) / 60);
  const line = (tag: string, text: string): readonly FrameLine[] =>
    text === '' ? [] : [{ tag, text }];
  return {
    count,
    clock: `${dateOf(decision.at)} ${clockTime(decision.at)}, ${since} after the beginning`,
    lines: [
      ...line('ASKED', `${stepThing(story, decision)} (${howTaken(decision)})`),
      ...line('EXPECTED', expectedThing(story, decision)),
      ...line('FOUND', foundThing(story, decision)),
      ...movedLines(story, decision),
      ...line('TOOK', tookWords(decision).replace(/^it took /, '')),
      ...line('QUICKER', betterThing(story, decision)),
    ],
    told: entry === undefined ? '' : eventWords(story, entry),
  };
}

/** So many that rose and so many that fell are told: the first ones. */
const mostMoved = 3;
/** Who rose and who fell, in words and five steps: numbers stand in the review. */
function movedLines(story: Story, { before, after, leg }: Decision): readonly FrameLine[] {
  if (before === undefined || after === undefined) return [];
  const shifts = [...after].map(([cause, to]) => ({ cause, to, from: before.get(cause) ?? 0 }));
  const told = (tag: string, sign: number): readonly FrameLine[] =>
    shifts
      .filter(({ from, to }) => sign * (to - from) > 0 && gradeOf(from) !== gradeOf(to))
      .toSorted((one, other) => sign * (other.to - other.from - (one.to - one.from)))
      .slice(0, mostMoved)
      .map(({ cause, from, to }, index) => ({
        tag: index === 0 ? tag : '',
        text: `${bar(from)} -> ${bar(to)}  ${nameOf(story, cause, leg)} (${gradeOf(from)} -> ${gradeOf(to)})`,
      }));
  return [...told('ROSE', 1), ...told('FELL', -1)];
}

const nameOf = (story: Story, cause: string, leg: number): string =>
  cause === unlisted ? 'something not on the list' : causeIn(story, cause, leg);

/** A chance as five steps: `###..`. */
function bar(chance: number): string {
  const steps = grades.length - grades.indexOf(gradeOf(chance));
  return '#'.repeat(steps).padEnd(grades.length, '.');
}
