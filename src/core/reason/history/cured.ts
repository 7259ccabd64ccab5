import { checkIn, type Finding, type Repaired, type Story } from '../../session/story.ts';

/** A reading that a repair put right: what it showed before, and after. */
export type Cured = { readonly before: Finding; readonly after: Finding };

/**
 * What a repair put right of the readings that show its cause: abnormal just before it, healthy when
 * next taken, with no other repair between. Such a repair mended a real fault, whatever became of the
 * complaint. The complaint's own test is not among them: it shows every cause.
 */
export function curedBy(story: Story, repair: Repaired): readonly Cured[] {
  const { complaint, checks } = story.legs[repair.leg]?.tree ?? noTree(repair.leg);
  const [earlier, next] = [
    story.findings.filter(({ n }) => n < repair.n),
    story.repairs.find(({ n }) => n > repair.n)?.n ?? Infinity,
  ];
  return Object.keys(checks).flatMap((check) => {
    const shows = Object.hasOwn(checks[check]?.points ?? {}, repair.cause);
    const before = earlier.findLast((one) => one.check === check);
    const after = story.findings.find(
      (one) => one.check === check && one.n > repair.n && one.n < next,
    );
    if (check === complaint.confirm || !shows || before === undefined || after === undefined)
      return [];
    return !isSound(story, before) && isSound(story, after) ? [{ before, after }] : [];
  });
}

const noTree = (leg: number): never => {
  throw new Error(`a repair was made in leg ${leg}, which the session has not`);
};

const isSound = (story: Story, { check, leg, result, orResult }: Finding): boolean =>
  orResult === undefined && checkIn(story, check, leg)?.results[0]?.id === result;
