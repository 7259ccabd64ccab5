import { withoutDust } from '../trade/dust.ts';
import { convert, findUnit } from '../trade/units/units.ts';
import { uncertaintyOf } from '../tree/judge.ts';
import { broughtBy } from '../tree/brought.ts';
import { kinOf } from '../tree/kin.ts';
import type { Check } from '../tree/model.ts';
import type { Settling } from './kinds/shapes.ts';
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
 * Every finding that contradicts the one before it and waits for an answer, in order. A fault that
 * is there shows the same each time, and a repair takes faults away: a result can stay or get
 * better. A worse one is a misreading, something new, or a thing that comes and goes; which, only
 * the mechanic can say. A finding that was answered anew has been asked about already.
 */
export function contradictions(story: Story): readonly Contradiction[] {
  const last = new Map<string, Finding>();
  return story.findings.flatMap((later) => {
    const kin = sameThings(story, later);
    const [earlier] = kin
      .flatMap((check) => last.get(check) ?? [])
      .toSorted((one, other) => other.n - one.n);
    last.set(later.check, later);
    const made = madeBy(story, earlier, later);
    return made === undefined || isSettled(story, later) ? [] : [made];
  });
}

/** The contradiction that waits for an answer and was brought about by one event. */
export function contradictionOf(
  story: Story,
  event: { readonly n: number } | undefined,
): Contradiction | undefined {
  const index = story.findings.findLastIndex(({ n }) => n === event?.n);
  const later = story.findings[index];
  if (later === undefined || isSettled(story, later)) return undefined;
  const kin = sameThings(story, later);
  const earlier = story.findings.slice(0, index).findLast(({ check }) => kin.includes(check));
  return madeBy(story, earlier, later);
}

/** What a contradiction may be: new since the repair only where a repair lies between. */
export const settlings = ({ repairsBetween }: Contradiction): readonly Settling[] =>
  repairsBetween > 0
    ? ['misread-then', 'misread-now', 'comes-and-goes', 'new-since']
    : ['misread-then', 'misread-now', 'comes-and-goes'];

/** The contradictions that wait for an answer, as data: which findings, and what can be said. */
export const openQuestions = (story: Story) =>
  contradictions(story).map((found) => ({
    check: found.check,
    earlier: found.earlier.n,
    later: found.later.n,
    repairsBetween: found.repairsBetween,
    answers: settlings(found),
  }));

/** The checks that show the same thing as a finding's, its own among them, in the tree it was made in. */
const sameThings = ({ legs }: Story, { leg, check }: Finding): readonly string[] => {
  const found = legs[leg];
  return found === undefined ? [] : kinOf(found.tree, check);
};

const sameThing = (story: Story, finding: Finding, check: string): boolean =>
  sameThings(story, finding).includes(check);

/** What was said of findings that still stand. */
const settledNow = (story: Story): Story['settled'] =>
  story.settled.filter(({ later }) => story.findings.some(({ n }) => n === later));

/** Checks whose findings come and go: each counts by itself. */
export const comesAndGoes = (story: Story): readonly string[] =>
  settledNow(story).flatMap(({ as, check }) => (as === 'comes-and-goes' ? [check] : []));

/** Faults that came with a repair, as the trees name them, each from the finding on that showed it. */
export const broughtFaults = (
  story: Story,
): readonly { readonly cause: string; readonly n: number }[] =>
  settledNow(story).flatMap(({ as, later }) => {
    const found = story.findings.find(({ n }) => n === later);
    return as === 'new-since' && found ? [{ cause: broughtBy(found.repairs), n: later }] : [];
  });

/** Finding that was right when it was made, and says nothing since a repair brought something new. */
const isOutdated = (story: Story, finding: Finding, until = Infinity): boolean =>
  settledNow(story).some(
    ({ as, later, check }) =>
      as === 'new-since' && later <= until && finding.n < later && sameThing(story, finding, check),
  );

/**
 * The findings that count for the suspects: not those from before a repair that brought something
 * new to their check.
 * @param until the last event that is looked at; what was said of a later one is not known yet
 */
export const countedFindings = (story: Story, until = Infinity): readonly Finding[] =>
  story.findings.filter((finding) => !isOutdated(story, finding, until));

function isSettled(story: Story, later: Finding): boolean {
  return (
    isOutdated(story, later) ||
    comesAndGoes(story).some((check) => sameThing(story, later, check)) ||
    settledNow(story).some((said) => said.as === 'new-since' && said.later === later.n)
  );
}

function madeBy(
  story: Story,
  earlier: Finding | undefined,
  later: Finding,
): Contradiction | undefined {
  if (later.corrected || earlier === undefined || !isWorse(story, earlier, later)) return undefined;
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
