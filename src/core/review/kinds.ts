import type { StepName } from '../reason/advice/minutes.ts';
import { chancesNow, leaderIn } from '../reason/history/belief-history.ts';
import { dueByTree } from '../session/due.ts';
import type { Event, UnknownEvent } from '../session/event.ts';
import { awaitsProof, lastRepair } from '../session/proof.ts';
import { currentLeg, type Finding, type Story } from '../session/story.ts';
import { isOwn } from '../tree/own/bare.ts';
import type { DecisionKind, Moment } from './decision.ts';
import { isOnWay, isQuickLead } from './leads.ts';
import { isDoubtful, repeatedBy } from './verifying.ts';

/** A kind, or that it takes weighing to know: the person's own choice, or what some advice led to. */
export type Kinded = DecisionKind | 'weigh';

/** Kinds of events that say by themselves what kind of a decision they are. */
const byEvent: Readonly<Partial<Record<Event['kind'] | 'unknown', DecisionKind>>> = {
  proved: 'proof',
  'not-this': 'look',
  unsure: 'unsure',
  skipped: 'passed',
};

export const kindOf = (moment: Moment, { kind }: Event | UnknownEvent): Kinded =>
  byEvent[kind] ?? kindByStory(moment);

function kindByStory({ before, atAnswer, after, step }: Moment): Kinded {
  if (isOwn(currentLeg(before).tree)) return 'own';
  if (isAsked(before, step)) return 'asked';
  const earlier = step.do === 'check' ? repeatedBy(atAnswer, step.id) : undefined;
  if (earlier !== undefined)
    return showsOther(after, earlier) || isDoubtful(atAnswer, earlier) ? 'verified' : 'weigh';
  if (isProvingReading(before, step)) return 'proof';
  const places = [before, atAnswer];
  if (isOnWay(places, step) || isQuickLead(places, step)) return 'followed';
  return isLookAtLeader(before, step) ? 'look' : 'weigh';
}

function showsOther({ findings }: Story, earlier: Finding): boolean {
  const now = findings.at(-1);
  return now?.result !== earlier.result || now.orResult !== earlier.orResult;
}

/** A reading that shows what was mended, taken before the proof: it says whether the repair did anything. */
function isProvingReading(story: Story, { do: kind, id }: StepName): boolean {
  const repair = awaitsProof(story) ? lastRepair(story) : undefined;
  const points = currentLeg(story).tree.checks[id]?.points ?? {};
  return kind === 'check' && repair !== undefined && Object.hasOwn(points, repair.cause);
}

/** Evidence before parts: a look at the very part that is suspected most is never the wrong step. */
function isLookAtLeader(story: Story, { do: kind, id }: StepName): boolean {
  const chances = kind === 'check' ? chancesNow(story) : undefined;
  const leader = chances && leaderIn(chances);
  const looks = currentLeg(story).tree.checks[id]?.['looks-at'] ?? [];
  return leader !== undefined && looks.includes(leader);
}

/** What must be safe, the complaint made to show itself, baseline readings, and what a repair asks to repeat. */
function isAsked(story: Story, { do: kind, id }: StepName): boolean {
  const { safeguards = [] } = currentLeg(story).tree;
  if (kind === 'check' && safeguards.some(({ check }) => check === id)) return true;
  const due = dueByTree(story);
  if (kind === 'repair' || due.kind !== 'check' || due.check !== id) return false;
  const { tree } = currentLeg(story);
  return due.why === 'repeat' || [tree.complaint.confirm, ...tree.baseline].includes(id);
}
