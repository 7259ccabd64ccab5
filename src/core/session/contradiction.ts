import { withoutDust } from '../trade/dust.ts';
import { convert, findUnit } from '../trade/units/units.ts';
import { uncertaintyOf } from '../tree/judge.ts';
import { kinOf } from '../tree/kin.ts';
import type { Check } from '../tree/model.ts';
import { checkIn, type Finding, type Story } from './story.ts';

/** A finding that is worse than the one before it of the same thing, beyond what the meter allows. */
export type Contradiction = {
  /** The check of the later finding. */
  readonly check: string;
  readonly earlier: Finding;
  readonly later: Finding;
  /** Repairs made between the two: 0 where nothing was changed. */
  readonly repairsBetween: number;
};

/**
 * Every finding that contradicts the one before it, in order. A fault that is there shows the
 * same each time, and a repair takes faults away: a result can stay or get better. A worse one is
 * a misreading, something new, or a check that does not repeat; which, only the mechanic can say.
 * A finding that was answered anew has been asked about already.
 */
export const contradictions = (story: Story): readonly Contradiction[] =>
  story.findings.flatMap((later, index) => madeBy(story, later, index) ?? []);

/** The contradiction that the last finding makes, for whoever asks what it is. */
export function lastContradiction(story: Story): Contradiction | undefined {
  const last = story.findings.length - 1;
  const later = story.findings[last];
  return later && madeBy(story, later, last);
}

/** The contradiction that an event has just brought about. */
export function contradictionOf(
  story: Story,
  event: { readonly n: number } | undefined,
): Contradiction | undefined {
  const last = lastContradiction(story);
  return last?.later.n === event?.n ? last : undefined;
}

function madeBy(story: Story, later: Finding, index: number): Contradiction | undefined {
  const leg = story.legs[later.leg];
  if (later.corrected || leg === undefined) return undefined;
  const kin = kinOf(leg.tree, later.check);
  const earlier = story.findings.slice(0, index).findLast(({ check }) => kin.includes(check));
  if (earlier === undefined || !isWorse(story, earlier, later)) return undefined;
  const repairsBetween = later.repairs - earlier.repairs;
  return { check: later.check, earlier, later, repairsBetween };
}

function isWorse(story: Story, earlier: Finding, later: Finding): boolean {
  const [one, other] = [earlier, later].map((finding) =>
    checkIn(story, finding.check, finding.leg),
  );
  if (one === undefined || other === undefined) return false;
  const before = placeIn(one, earlier.orResult ?? earlier.result);
  const now = placeIn(other, later.result);
  return before >= 0 && now > before && !withinError(other, earlier, later);
}

/** How far from healthy a result is; of an open finding the end is taken that agrees best. */
const placeIn = ({ results }: Check, result: string): number =>
  results.findIndex(({ id }) => id === result);

/** Whether two readings lie no further apart than the meter may be off. */
function withinError({ reading }: Check, earlier: Finding, later: Finding): boolean {
  if (reading === undefined) return false;
  const { quantity, unit } = reading;
  // As they were judged: brought to reference conditions where both were.
  const standard = earlier.standard !== undefined && later.standard !== undefined;
  const [before, now] = [earlier, later].map((finding) => {
    const amount = standard ? finding.standard : finding.reading;
    if (amount === undefined || findUnit(quantity, amount.unit) === undefined) return undefined;
    return convert(amount.value, amount.unit, unit);
  });
  if (before === undefined || now === undefined) return false;
  return withoutDust(Math.abs(now - before)) <= uncertaintyOf(reading, now);
}

/** What is noted when a mechanic says that something new has gone wrong. */
export const newFault = 'Something new has gone wrong since the check before.';
