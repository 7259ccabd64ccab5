import { nextOnWay } from '../tree/way.ts';
import { awaitsProof, isProven, lastRepair, sinceLeg } from './proof.ts';
import { knownOf } from './known.ts';
import { currentLeg, type Standpoint, type Due } from './story.ts';

type Numbered = { readonly n: number };

/** Whether the one came later than the other; what never came is earlier than everything. */
const later = (one: Numbered | undefined, ...others: readonly (Numbered | undefined)[]): boolean =>
  one !== undefined && others.every((other) => other === undefined || one.n > other.n);

/** Works out what is to be done now; the same events always give the same step. */
export function dueNow(story: Standpoint): Due {
  if (story.closed !== undefined) return { kind: 'closed' };
  const repair = lastRepair(story);
  const proof = sinceLeg(story, story.proofs).at(-1);
  const condemned = sinceLeg(story, story.condemned).at(-1);
  const [begun] = sinceLeg(story, story.begun === undefined ? [] : [story.begun]);
  const move = lastMove(story);
  if (begun !== undefined && later(begun, repair, proof, move))
    return { kind: 'check', check: begun.check, why: 'chosen' };
  if (repair !== undefined && awaitsProof(story)) return afterRepair(story, repair);
  if (proof !== undefined && isProven(story) && later(proof, move)) return { kind: 'proven' };
  if (condemned !== undefined && later(condemned, repair, proof, move))
    return { kind: 'repair', cause: condemned.cause };
  return ownWay(story);
}

/** First the checks that the repair asks to have repeated, then the complaint's own test. */
function afterRepair(story: Standpoint, repair: { n: number; cause: string }): Due {
  const { tree } = currentLeg(story);
  const repeats = tree.causes[repair.cause]?.repair.then ?? [];
  const answered = new Set(
    [...story.findings, ...story.unsure, ...story.skipped]
      .filter(({ n }) => n > repair.n)
      .map(({ check }) => check),
  );
  const repeat = repeats.find(
    (check) =>
      check !== tree.complaint.confirm && Object.hasOwn(tree.checks, check) && !answered.has(check),
  );
  return repeat === undefined
    ? { kind: 'proof', cause: repair.cause }
    : { kind: 'check', check: repeat, why: 'repeat' };
}

type Move = { readonly n: number; readonly check: string; readonly result?: string };

/** The last answer given to a check in this leg (a proof is no answer on the way). */
function lastMove(story: Standpoint): Move | undefined {
  const { since } = currentLeg(story);
  const moves: Move[] = [
    ...story.findings.filter(({ proof }) => !proof),
    ...story.unsure,
    ...story.skipped,
  ].filter(({ n }) => n > since);
  return moves.reduce<Move | undefined>(
    (last, move) => (last === undefined || move.n > last.n ? move : last),
    undefined,
  );
}

/** The tree's own way, from all that is known in this leg. */
function ownWay(story: Standpoint): Due {
  const failed = sinceLeg(story, story.proofs).at(-1);
  const move = lastMove(story);
  const { tree } = currentLeg(story);
  const afterProof = failed !== undefined && failed.n > (move?.n ?? 0);
  const next = nextOnWay(tree, {
    knownOf: (check) => knownOf(story, check),
    last: afterProof ? tree.complaint.confirm : move?.check,
    isMended: (cause) => story.repairs.some((repair) => repair.cause === cause),
  });
  switch (next.kind) {
    case 'check':
      return { kind: 'check', check: next.check, why: 'way' };
    case 'cause':
      return { kind: 'named', cause: next.cause };
    case 'tree':
      return { kind: 'leg', tree: next.tree, reason: next.reason };
    case 'stop':
    case 'exhausted':
      return next;
  }
}
