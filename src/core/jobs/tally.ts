import { causeName } from '../account/words/wording.ts';
import { failedRepairs } from '../account/blocks/ledger.ts';
import { complaintsOf, isProvenGone, mendedFor, type Complaint } from '../session/complaints.ts';
import { fold, type Recorded } from '../session/fold.ts';
import { isPractice } from '../session/header/is-practice.ts';
import { stateOf, type Damage } from '../session/record/damage.ts';
import type { Repaired, Story } from '../session/story.ts';
import { isBrought } from '../tree/brought.ts';
import { oddsWritten } from '../tree/counted/as-written.ts';
import { isOwn } from '../tree/own/bare.ts';
import {
  jobApart,
  type Apart,
  type End,
  type Job,
  type JobComplaint,
  type Mended,
  type Proven,
} from './job.ts';
import { totalOdds } from './odds.ts';
import { tookIn } from './took.ts';

/** A session as its file was read. */
export type Read = Recorded & { readonly damage: readonly Damage[] };

/** What one session comes to for those that come after it; nothing counts of one that stands apart. */
export function jobOf(session: string, read: Read): Job {
  const { header } = read;
  const vehicle = header.vehicle.name;
  const apart = apartOf(read);
  if (apart !== undefined) return jobApart(session, apart, { opened: header.opened, vehicle });
  return jobOfStory(session, fold(header, read.events));
}

function jobOfStory(session: string, story: Story): Job {
  const failed = failedRepairs(story);
  return {
    session,
    opened: story.header.opened,
    vehicle: story.header.vehicle.name,
    complaints: complaintsOf(story).map((one) => complaintIn(story, one, failed)),
    took: tookIn(story),
    mended: story.repairs.map((repair) => mendedIn(story, repair, failed)),
  };
}

/** Why nothing of a session counts; undefined for one that does. */
export function apartOf({ header, damage }: Omit<Read, 'events'>): Apart | undefined {
  if (isPractice(header)) return 'practice';
  if (!header.tool.startsWith('droplight ')) return 'made by another tool';
  const state = stateOf(damage);
  // Every line of one whose line ends were changed is proven all the same.
  return state === 'whole' || state === 'line ends changed' ? undefined : state;
}

export function complaintIn(
  story: Story,
  complaint: Complaint,
  failed: Story['repairs'],
): JobComplaint {
  const trees = [...new Set(complaint.legs.map((leg) => story.legs[leg]?.tree.id ?? ''))];
  const proven = isProvenGone(story, complaint);
  const end: End = proven ? 'proven' : (story.closed?.as ?? 'open');
  return {
    tree: trees[0] ?? '',
    trees,
    title: complaint.title,
    end,
    causes: [...provenCauses(story, complaint, failed)],
  };
}

const provenCauses = (
  story: Story,
  complaint: Complaint,
  failed: Story['repairs'],
): readonly Proven[] =>
  provenRepairs(story, complaint, failed).map(({ repair: { cause, leg }, weight }) => ({
    cause,
    name: nameIn(story, cause, leg),
    tree: story.legs[leg]?.tree.id ?? '',
    weight,
    ...shareOf(story, leg, cause),
  }));

/**
 * What a complaint that is proven gone was: the last repair of each cause mended for it, without those
 * that failed its test and cured nothing, and without what a repair had brought. Mended together they
 * share its weight: the record does not say which it was.
 */
export function provenRepairs(
  story: Story,
  complaint: Complaint,
  failed: Story['repairs'],
): readonly { readonly repair: Repaired; readonly weight: number }[] {
  if (!isProvenGone(story, complaint)) return [];
  const mended = mendedFor(story, complaint).filter(
    ({ n, cause }) => !isBrought(cause) && failed.every((one) => one.n !== n),
  );
  const last = mended.filter(({ n, cause }) =>
    mended.every((one) => one.cause !== cause || one.n <= n),
  );
  return last.map((repair) => ({ repair, weight: 1 / last.length }));
}

/** The part of the odds that a tree gives a cause. */
function shareOf({ legs, facts }: Story, leg: number, cause: string): Pick<Proven, 'share'> {
  const tree = legs[leg]?.tree;
  if (tree === undefined || isOwn(tree) || !Object.hasOwn(tree.causes, cause)) return {};
  return { share: oddsWritten(tree, cause, facts) / totalOdds(tree, facts) };
}

const nameIn = (story: Story, cause: string, leg: number): string =>
  story.legs[leg]?.tree.causes[cause]?.name ?? causeName(story, cause);

export function mendedIn(story: Story, repair: Repaired, failed: Story['repairs']): Mended {
  const { n, cause, leg, parts } = repair;
  const cured = failed.every((one) => one.n !== n);
  return {
    tree: story.legs[leg]?.tree.id ?? '',
    cause,
    name: nameIn(story, cause, leg),
    parts: parts.filter((part) => part !== 'none'),
    ...((!cured || wasTried(story, repair)) && { helped: cured }),
  };
}

/** Whether the complaint's own test was made between a repair and the next. */
function wasTried({ repairs, proofs }: Story, repair: Repaired): boolean {
  const next = repairs.find(({ n }) => n > repair.n)?.n ?? Infinity;
  return proofs.some(({ n }) => n > repair.n && n < next);
}
