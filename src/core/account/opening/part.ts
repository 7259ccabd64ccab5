import {
  complaintsOf,
  inLeg,
  mendedFor,
  upToLeg,
  type Complaint,
} from '../../session/complaints.ts';
import { isProven } from '../../session/proof.ts';
import {
  firstLeg,
  isHealthy,
  type Finding,
  type Repaired,
  type Story,
} from '../../session/story.ts';
import { triageOf } from '../../session/triage.ts';
import { lookAt } from '../../tree/looked.ts';
import type { Tree } from '../../tree/model.ts';
import { failedRepairs } from '../blocks/ledger.ts';

/** What belongs to one complaint of the job. */
export type Part = {
  readonly complaint: Complaint;
  readonly tree: Tree;
  readonly leg: number;
  readonly first: boolean;
  /** 0 for the complaint that came first. */
  readonly place: number;
  /** It is the complaint that was worked on last. */
  readonly last: boolean;
  readonly repairs: readonly Repaired[];
  /** Of these, what did not cure. */
  readonly failed: readonly Repaired[];
  readonly named: readonly string[];
  readonly shown: Finding | undefined;
  /** The story as far as this complaint goes, for the rules of proof. */
  readonly told: ReturnType<typeof upToLeg>;
};

/** How a complaint ended: one word for every part of the account that tells of it. */
export type Outcome = 'proven' | 'tried' | 'named' | 'went away' | 'open' | 'inspection';

/** The complaints of a job, each with all that belongs to it. */
export const partsOf = (story: Story): readonly Part[] =>
  complaintsOf(story).map((complaint, place) => {
    const repairs = mendedFor(story, complaint);
    const failed = new Set(failedRepairs(story).map(({ n }) => n));
    const inPart = <T extends { readonly n: number }>(list: readonly T[]): readonly T[] =>
      complaint.legs.flatMap((leg) => inLeg(story.legs, leg, list));
    // A leg that goes back to it and mends nothing leaves proven what is proven.
    const end = repairs.at(-1)?.leg ?? complaint.legs.at(-1) ?? 0;
    const leg = complaint.legs[0] ?? 0;
    const { tree } = story.legs[leg] ?? firstLeg(story);
    return {
      complaint,
      tree,
      leg,
      first: place === 0,
      place,
      last: complaint.legs.includes(story.legs.length - 1),
      repairs,
      failed: repairs.filter(({ n }) => failed.has(n)),
      named: namedIn(
        story,
        inPart(story.condemned).map(({ cause }) => cause),
      ),
      shown: inPart(story.findings).find(
        ({ check, proof }) => check === tree.complaint.confirm && !proof,
      ),
      told: upToLeg(story, end),
    };
  });

/** Causes that were named and stand: not looked at afterwards and found not to be it. */
const namedIn = (story: Story, causes: readonly string[]): readonly string[] =>
  [...new Set(causes)].filter((cause) => {
    const named = story.condemned.findLast((one) => one.cause === cause)?.n ?? Infinity;
    return !story.findings.some(({ n, check }) => n > named && check === lookAt(cause));
  });

export function outcomeOf(story: Story, part: Part): Outcome {
  if (triageOf(story) !== undefined) return 'inspection';
  if (part.repairs.length > 0) return isProven(part.told) ? 'proven' : 'tried';
  if (wentAway(story, part)) return 'went away';
  return part.named.length > 0 ? 'named' : 'open';
}

/** Whether the complaint's own test showed good in the end with nothing mended for it. */
function wentAway(story: Story, { complaint, tree, last }: Part): boolean {
  const tries = complaint.legs
    .flatMap((leg) => inLeg(story.legs, leg, story.findings))
    .filter(({ check }) => check === tree.complaint.confirm);
  const end = tries.at(-1);
  if (end !== undefined && tries.length > 1) return isHealthy(story, end);
  return (
    last && story.closed?.as === 'not-reproduced' && (end === undefined || isHealthy(story, end))
  );
}

/** What was mended and is not known to have failed. */
export const mendedCauses = ({ repairs, failed }: Pick<Part, 'repairs' | 'failed'>) => [
  ...new Set(repairs.filter((one) => !failed.includes(one)).map(({ cause }) => cause)),
];
