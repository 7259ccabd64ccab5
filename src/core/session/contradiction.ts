import { checkIn, type Finding, type Story } from './story.ts';

/** One check that showed better before and worse now, with nothing repaired between. */
export type Contradiction = {
  readonly check: string;
  readonly earlier: Finding;
  readonly later: Finding;
};

/**
 * Whether the last finding contradicts an earlier one. A fault that is there shows the same each
 * time, so with nothing changed a result can stay or be explained by a misreading, by something
 * new, or by a check that does not repeat; which of these it is only the mechanic can say.
 */
export function contradiction(story: Story): Contradiction | undefined {
  const later = story.findings.at(-1);
  if (later === undefined || later.corrected) return undefined;
  const kin = kinOf(story, later);
  const earlier = story.findings
    .slice(0, -1)
    .findLast((one) => one.repairs === later.repairs && kin.includes(one.check));
  if (earlier === undefined) return undefined;
  return severity(story, later) > severity(story, earlier)
    ? { check: later.check, earlier, later }
    : undefined;
}

/** Checks that show the same thing as this one's: itself, and those of its `same` name. */
function kinOf(story: Story, { check, leg }: Finding): readonly string[] {
  const same = checkIn(story, check, leg)?.same;
  if (same === undefined) return [check];
  const checks = Object.entries(story.legs[leg]?.tree.checks ?? {});
  return checks.filter(([, one]) => one.same === same).map(([id]) => id);
}

/** How far from healthy a finding is: the place of its result, the milder end where two are open. */
function severity(story: Story, { check, leg, result }: Finding): number {
  return checkIn(story, check, leg)?.results.findIndex(({ id }) => id === result) ?? -1;
}

/** What is noted when a mechanic says that something new has gone wrong. */
export const newFault = 'Something new has gone wrong since the check before.';
