import type { Done } from '../tree/way/known.ts';
import type { Tree } from '../tree/model.ts';
import { isOwn, isTestNamed } from '../tree/own/bare.ts';
import { nextAfterRepair } from '../tree/way/after-repair.ts';
import { nextOnWay, type OnWay } from '../tree/way/way.ts';
import { awaitsProof, isProven, lastRepair, sinceLeg } from './proof.ts';
import { handOver, triageOfCause } from './triage.ts';
import { standsAt } from './finding-words.ts';
import { currentLeg, type Due, type Finding, type Standpoint, type Story } from './story.ts';

type Numbered = { readonly n: number };

/** Whether the one came later than the other; what never came is earlier than everything. */
const later = (one: Numbered | undefined, ...others: readonly (Numbered | undefined)[]): boolean =>
  one !== undefined && others.every((other) => other === undefined || one.n > other.n);

/** Works out what is to be done now; the same events always give the same step. */
export function dueNow(story: Standpoint): Due {
  if (story.closed !== undefined) return { kind: 'closed' };
  const repair = lastRepair(story);
  const proof = lastProof(story);
  const { begun, condemned } = inHand(story);
  if (begun !== undefined) return { kind: 'check', check: begun.check, why: 'chosen' };
  // What is named before the proof is mended before it: else the same page would come back for ever.
  if (repair !== undefined && awaitsProof(story))
    return condemned === undefined
      ? afterRepair(story, repair)
      : afterNaming(story, condemned.cause);
  if (proof !== undefined && isProven(story) && later(proof, lastWrong(story)))
    return { kind: 'proven' };
  if (condemned !== undefined) return afterNaming(story, condemned.cause);
  return isOwn(currentLeg(story).tree) ? inOwnWords(story) : ownWay(story);
}

/** What is named is mended next, or another tree goes on from it, or only an inspection releases it. */
function afterNaming(story: Standpoint, cause: string): Due {
  const { tree } = currentLeg(story);
  const named = tree.causes[cause];
  if (named?.tree !== undefined)
    return {
      kind: 'leg',
      tree: named.tree,
      reason: `${named.name}: the tree of that complaint finds why.`,
    };
  const triage = triageOfCause(tree, cause);
  return triage === undefined
    ? { kind: 'repair', cause }
    : { kind: 'stop', reason: handOver(tree, triage, cause) };
}

const lastProof = (story: Standpoint) => sinceLeg(story, story.proofs).at(-1);

/**
 * The check begun and the cause condemned last, each as long as nothing was answered or mended since;
 * a cause that was condemned after a check was begun takes its place.
 */
export function inHand(story: Standpoint): Pick<Story, 'begun'> & {
  readonly condemned: Story['condemned'][number] | undefined;
} {
  const since = [lastRepair(story), lastProof(story), lastMove(story)];
  const [begun] = sinceLeg(story, story.begun === undefined ? [] : [story.begun]);
  const condemned = sinceLeg(story, story.condemned).at(-1);
  return {
    begun: later(begun, ...since, condemned) ? begun : undefined,
    condemned: later(condemned, ...since) ? condemned : undefined,
  };
}

/**
 * What the tree leads to by itself: all that is due but a check that the mechanic began out of turn.
 * This is what stood on screen before it was begun.
 */
export const dueByTree = (story: Standpoint): Due => dueNow({ ...story, begun: undefined });

/** Checks to be repeated, what must be safe first, then the complaint's own test. */
function afterRepair(story: Standpoint, { cause }: { cause: string }): Due {
  const { tree } = currentLeg(story);
  const next = nextAfterRepair(tree, doneIn(story), cause);
  if (next.kind !== 'check') return dueOf(next);
  return next.check === tree.complaint.confirm
    ? { kind: 'proof', cause }
    : { kind: 'check', check: next.check, why: 'repeat' };
}

/** The last answer given to a check in this leg (a proof is no answer on the way). */
function lastMove(story: Standpoint): Numbered | undefined {
  const [last] = [
    story.findings.findLast(({ proof }) => !proof),
    story.unsure.at(-1),
    story.skipped.at(-1),
  ]
    .filter((move) => move !== undefined)
    .toSorted((one, other) => other.n - one.n);
  return last !== undefined && last.n > currentLeg(story).since ? last : undefined;
}

/** The last answer in this leg that showed something wrong: a healthy one leaves proven what is proven. */
function lastWrong(story: Standpoint): Numbered | undefined {
  const { tree } = currentLeg(story);
  return sinceLeg(story, story.findings).findLast((finding) => {
    const done = finding.proof ? undefined : shownBy(tree, finding);
    return done?.kind === 'shown' && done.result > 0;
  });
}

const treeEnds = 'The tree ends here.';

/**
 * What a job without a tree asks: the complaint's own test as soon as somebody has said how it is
 * made, the cause that was named last, and else what comes next.
 */
function inOwnWords(story: Standpoint): Due {
  const { tree } = currentLeg(story);
  const { confirm } = tree.complaint;
  const tested = doneIn(story).some((one) => 'check' in one && one.check === confirm);
  if (!tested)
    return isTestNamed(tree)
      ? { kind: 'check', check: confirm, why: 'way' }
      : { kind: 'own', test: true };
  const named = sinceLeg(story, story.named).findLast(({ kind }) => kind === 'cause');
  const fresh = later(named, lastRepair(story), lastProof(story), lastMove(story));
  return named !== undefined && fresh
    ? { kind: 'named', cause: named.id }
    : { kind: 'own', test: false };
}

const ownWay = (story: Standpoint): Due => dueOf(nextOnWay(currentLeg(story).tree, doneIn(story)));

function dueOf(to: OnWay): Due {
  switch (to.kind) {
    case 'check':
      return { kind: 'check', check: to.check, why: 'way' };
    case 'cause':
      return { kind: 'named', cause: to.cause };
    case 'tree':
      return { kind: 'leg', tree: to.tree, reason: to.reason ?? 'This tree goes on there.' };
    case 'stop':
      return { kind: 'stop', reason: to.reason ?? treeEnds };
    case 'exhausted':
      return to;
  }
}

/** What a finding shows on the way; undefined for one that this tree's check cannot show. */
function shownBy({ checks }: Tree, finding: Finding): Done | undefined {
  const check = checks[finding.check];
  const result = check === undefined ? -1 : standsAt(check, finding);
  if (check === undefined || result < 0) return undefined;
  const done = { kind: 'shown', check: finding.check, result } as const;
  if (finding.orResult === undefined) return done;
  const [lo, hi] = [finding.result, finding.orResult].map((id) =>
    check.results.findIndex((one) => one.id === id),
  );
  return lo === undefined || hi === undefined || hi < 0 ? done : { ...done, ends: [lo, hi] };
}

/** All that was done, as the tree of this leg reads it. */
export function doneIn(story: Standpoint): readonly Done[] {
  const { tree, since } = currentLeg(story);
  const numbered: (Numbered & { readonly done: Done })[] = [];
  for (const finding of story.findings) {
    const done = shownBy(tree, finding);
    if (done !== undefined) numbered.push({ n: finding.n, done });
  }
  for (const { n, check } of [...story.unsure, ...story.skipped])
    numbered.push({ n, done: { kind: 'passed', check } });
  for (const { n, cause } of story.repairs) numbered.push({ n, done: { kind: 'repaired', cause } });
  if (since > 0) numbered.push({ n: since, done: { kind: 'begun' } });
  return numbered.toSorted((one, other) => one.n - other.n).map(({ done }) => done);
}
