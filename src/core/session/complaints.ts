import { isProven } from './proof.ts';
import type { Leg, Repaired, Standpoint } from './story.ts';

/** One complaint of a job: the legs in which it was worked on, first to last. */
export type Complaint = {
  readonly legs: readonly number[];
  readonly title: string;
  /** What the owner says of it, where somebody noted that. */
  readonly said: string | undefined;
};

/** What the rules of proof look at. */
type Told = Pick<Standpoint, 'header' | 'legs' | 'repairs' | 'proofs' | 'findings'>;

/**
 * The complaints of a job in the order in which they came up. Where a tree leads on to another one it
 * is the same complaint still, unless that was proven gone before; a complaint that is gone back to
 * is no new one.
 */
export function complaintsOf(story: Told): readonly Complaint[] {
  const { legs, header } = story;
  const complaints: { legs: number[]; title: string; said: string | undefined }[] = [];
  let now: (typeof complaints)[number] | undefined;
  for (const [index, { tree, complaint }] of legs.entries()) {
    if (now === undefined || complaint !== undefined || isProven(upToLeg(story, index - 1))) {
      now = complaints.find((one) => one.legs.some((leg) => legs[leg]?.tree.id === tree.id));
      if (now === undefined) {
        const said = index === 0 ? header.said : complaint?.words;
        now = { legs: [], title: tree.title, said };
        complaints.push(now);
      }
    }
    now.legs.push(index);
  }
  return complaints;
}

/** Whether the leg that an event began goes back to a complaint that was worked on before. */
export function isReturn(story: Told, since: number): boolean {
  const leg = story.legs.findIndex((one) => one.since === since);
  const { legs } = complaintsOf(story).find((one) => one.legs.includes(leg)) ?? { legs: [] };
  return legs[0] !== leg && story.legs[leg]?.complaint !== undefined;
}

/** What came up in one leg, before the next was begun. */
export function inLeg<T extends { readonly n: number }>(
  legs: readonly Leg[],
  index: number,
  list: readonly T[],
): readonly T[] {
  const [since, until] = [legs[index]?.since ?? Infinity, legs[index + 1]?.since ?? Infinity];
  return list.filter(({ n }) => n > since && n <= until);
}

/** A job as it stood at the end of one of its legs. */
export function upToLeg({ header, legs, repairs, proofs, findings }: Told, index: number): Told {
  const until = legs[index + 1]?.since ?? Infinity;
  const before = <T extends { readonly n: number }>(list: readonly T[]): readonly T[] =>
    list.filter(({ n }) => n <= until);
  return {
    header,
    legs: legs.slice(0, index + 1),
    repairs: before(repairs),
    proofs: before(proofs),
    findings: before(findings),
  };
}

/** What was mended for a complaint. */
export const mendedFor = (
  { legs, repairs }: Pick<Told, 'legs' | 'repairs'>,
  complaint: Complaint,
): readonly Repaired[] => complaint.legs.flatMap((leg) => inLeg(legs, leg, repairs));

/** Whether the last repair for a complaint stood that complaint's own test. */
export function isProvenGone(story: Told, complaint: Complaint): boolean {
  const leg = complaint.legs.findLast((one) => inLeg(story.legs, one, story.repairs).length > 0);
  return leg !== undefined && isProven(upToLeg(story, leg));
}

/** The other complaints of the job that are not proven gone. */
export const leftComplaints = (story: Told): readonly Complaint[] =>
  complaintsOf(story).filter(
    (one) => !one.legs.includes(story.legs.length - 1) && !isProvenGone(story, one),
  );
