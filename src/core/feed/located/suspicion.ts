import { sortedOut, type Located } from './locate.ts';
import type { Stretch } from './stretch.ts';

/** What all findings together say of the spans, as chances from 0 to 1. */
export type Suspicion = {
  /** That a cause sits on this span. */
  readonly of: (span: string) => number;
  /** That it is nothing on the list: it may sit anywhere. */
  readonly unlisted: number;
};

/** From this chance on the findings speak for a place; under it they speak for something else. */
const likely = 0.5;

/**
 * Holds what the volts say of each stretch against what all findings say. The volts are judged as on
 * a vehicle sound elsewhere: a jammed starter draws more through sound cables, and a film may lose
 * little at the amps of a lamp. Where the two disagree a stretch is neither bad nor cleared.
 */
export function heldAgainst(located: Located, { of, unlisted }: Suspicion): Located {
  const chanceOn = ({ spans }: Stretch): number =>
    spans.reduce((sum, span) => sum + of(span), unlisted);
  const verdictOf = (stretch: Stretch): Stretch['verdict'] => {
    const { verdict, spans } = stretch;
    if (verdict === 'bad' && chanceOn(stretch) < likely) return 'doubtful';
    if (verdict === 'sound' && spans.some((span) => of(span) >= likely)) return 'suspect';
    return verdict;
  };
  return {
    ...located,
    ...sortedOut(located.stretches.map((stretch) => ({ ...stretch, verdict: verdictOf(stretch) }))),
  };
}
