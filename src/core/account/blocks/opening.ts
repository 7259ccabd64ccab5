import { percent } from '../../reason/history/wording.ts';
import { isProven, triesSoFar } from '../../session/proof.ts';
import {
  complaintsOf,
  inLeg,
  mendedFor,
  upToLeg,
  type Complaint,
} from '../../session/complaints.ts';
import {
  isHealthy,
  firstLeg,
  type Finding,
  type Repaired,
  type Story,
} from '../../session/story.ts';
import type { Tree } from '../../tree/model.ts';
import { triageOf } from '../../session/triage.ts';
import { paragraph, type Block } from '../block.ts';
import type { AccountContext } from '../context.ts';
import { asClause, causeName, causeThing, joined, sentence, toldFound } from '../words/wording.ts';
import { failedRepairs } from './ledger.ts';

/** What belongs to one complaint of the job. */
type Part = {
  readonly complaint: Complaint;
  readonly tree: Tree;
  readonly first: boolean;
  /** It is the complaint that was worked on last. */
  readonly last: boolean;
  readonly repairs: readonly Repaired[];
  readonly named: readonly string[];
  readonly shown: Finding | undefined;
  /** The story as far as this complaint goes, for the rules of proof. */
  readonly told: ReturnType<typeof upToLeg>;
};

/** The job before its story: what it came in with, what it was, what was done, and whether that is proven. */
export function openingBlocks(context: AccountContext): readonly Block[] {
  const { story } = context;
  return partsOf(story).map((part) =>
    paragraph(
      [complaintWords(story, part), ...causeWords(context, part), ...endWords(story, part)].join(
        ' ',
      ),
    ),
  );
}

const partsOf = (story: Story): readonly Part[] =>
  complaintsOf(story).map((complaint, place) => {
    const repairs = mendedFor(story, complaint);
    const inPart = <T extends { readonly n: number }>(list: readonly T[]): readonly T[] =>
      complaint.legs.flatMap((leg) => inLeg(story.legs, leg, list));
    // A leg that goes back to it and mends nothing leaves proven what is proven.
    const end = repairs.at(-1)?.leg ?? complaint.legs.at(-1) ?? 0;
    const { tree } = story.legs[complaint.legs[0] ?? 0] ?? firstLeg(story);
    return {
      complaint,
      tree,
      first: place === 0,
      last: complaint.legs.includes(story.legs.length - 1),
      repairs,
      named: [...new Set(inPart(story.condemned).map(({ cause }) => cause))],
      shown: inPart(story.findings).find(
        ({ check, proof }) => check === tree.complaint.confirm && !proof,
      ),
      told: upToLeg(story, end),
    };
  });

/** The complaint, and how it showed when it was tried. */
function complaintWords(story: Story, { complaint, tree, first, shown }: Part): string {
  const say = asClause(tree.complaint.say);
  const said =
    complaint.said === undefined ? say : `${say} (its owner: "${complaint.said.trim()}")`;
  const came = first
    ? `It came in with this complaint: ${said}.`
    : `On the same job another complaint was taken up: ${said}.`;
  const told = shown && toldFound(story, shown);
  if (shown === undefined || told === undefined) return came;
  const healthy = isHealthy(story, shown);
  return `${came} ${healthy ? 'It did not show when it was tried' : 'When it was tried'}: ${told}.`;
}

/** What was found, in the person's own words where they noted it; nothing where a tree only sorts. */
function causeWords(context: AccountContext, part: Part): readonly string[] {
  const { story } = context;
  if (triageOf(story) !== undefined) return [];
  const failed = new Set(failedRepairs(story).map(({ n }) => n));
  const mended = [
    ...new Set(part.repairs.filter(({ n }) => !failed.has(n)).map(({ cause }) => cause)),
  ];
  if (mended.length > 0 && isProven(part.told)) return [`It was ${asFound(story, mended)}.`];
  if (mended.length > 0) return [`The suspicion fell on ${asFound(story, mended)}.`];
  const open = part.named.filter((id) => !part.repairs.some(({ cause }) => cause === id)).slice(-1);
  if (open.length > 0) return [`What was found led to ${asFound(story, open)}, not mended yet.`];
  return [notFoundWords(context, part)];
}

/** How likely a suspect must be for the opening to name it where no cause was found. Our own judgment. */
const telling = 0.3;

function notFoundWords({ story, history }: AccountContext, { last }: Part): string {
  const leader = [...(history.at(-1)?.after ?? [])].toSorted((one, two) => two[1] - one[1])[0];
  if (!last || leader === undefined || leader[1] < telling) return 'No cause was found for it.';
  return `No cause was proven; what was found speaks most for ${causeThing(story, leader[0])} (${percent(leader[1])}).`;
}

/** Causes as they were found: `the vacuum hose (hose split at the clamp)`. */
function asFound(story: Story, causes: readonly string[]): string {
  return joined(
    causes.map((id) => {
      const own = story.condemned.findLast(({ cause }) => cause === id)?.found;
      const [thing, words] = [causeThing(story, id), asClause(own ?? causeName(story, id))];
      return thing === words ? thing : `${thing} (${words})`;
    }),
  );
}

/** What was done, and what that came to. */
function endWords(story: Story, part: Part): readonly string[] {
  const triage = triageOf(story);
  if (triage !== undefined) return [forInspection(story, triage)];
  if (part.repairs.length === 0) return [nothingDone(story, part)];
  const failed = new Set(failedRepairs(story).map(({ n }) => n));
  const done = part.repairs.map(({ cause, did, n }) => {
    const words = did === undefined ? `${causeThing(story, cause)} was mended` : asClause(did);
    return failed.has(n) ? `${words} (this did not cure it)` : words;
  });
  return [sentence(done.join('; then ')), proofWords(part)];
}

const nothingDone = ({ closed }: Story, { last }: Part): string =>
  !last
    ? 'Nothing was repaired for it before the next complaint was taken up.'
    : closed?.as === 'handed-on'
      ? 'Nothing was repaired; the vehicle was handed on.'
      : 'Nothing was repaired.';

/** What a tree that only sorts comes to, whatever was found or done: nothing of it is proven. */
function forInspection({ closed, repairs }: Story, triage: string): string {
  const handed = closed?.as === 'handed-on' ? 'Handed to inspection' : 'Still to be inspected';
  const mended = repairs.length === 0 ? 'Nothing was repaired.' : 'No repair in it is proven.';
  return `${handed}: ${triage} ${mended}`;
}

/** Whether the last repair stood the complaint's own test. */
function proofWords({ told, repairs }: Part): string {
  const soFar = triesSoFar(told);
  if (soFar !== undefined) return `Not proven yet: ${soFar}.`;
  if (isProven(told)) return "After that the complaint's own test passed.";
  const tried = told.proofs.some(({ n }) => n > (repairs.at(-1)?.n ?? 0));
  return tried
    ? "It is not proven: the complaint's own test still failed after the last repair."
    : "It is not proven: the complaint's own test was not repeated after the last repair.";
}
