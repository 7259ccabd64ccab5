import { firstCheck, parseNext } from '../tree/next.ts';
import { along, leadFrom, type Known, type NextLink } from '../tree/way.ts';
import { awaitsProof, isProven, lastRepair, sinceLeg } from './proof.ts';
import { knownPlace } from './known.ts';
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

/** The tree's own way: on from the last answer, past everything that is answered already. */
function ownWay(story: Standpoint): Due {
  const { tree } = currentLeg(story);
  const confirm = firstCheck(tree);
  const known = knownOf(story);
  const complaint = known(confirm);
  if (complaint === undefined) return { kind: 'check', check: confirm, why: 'way' };
  const move = lastMove(story);
  const failed = sinceLeg(story, story.proofs).at(-1);
  const afterFailedProof = failed !== undefined && failed.n > (move?.n ?? 0);
  // A baseline reading is taken out of turn: what it showed is met again where the way comes by it.
  if (move === undefined || afterFailedProof || [confirm, ...tree.baseline].includes(move.check))
    return fromTheTop(story, complaint);
  return (
    baselineFirst(story) ?? follow(story, leadFrom(tree, move.check, known(move.check) ?? 'passed'))
  );
}

/** After the complaint was shown (or shown again): baseline readings, then the tree's start. */
function fromTheTop(story: Standpoint, complaint: number | 'passed'): Due {
  const { tree } = currentLeg(story);
  const healthy = tree.checks[firstCheck(tree)]?.results[0]?.reason;
  const lead = complaint === 'passed' ? undefined : leadFrom(tree, firstCheck(tree), complaint);
  if (complaint === 0) return follow(story, lead ?? { next: { kind: 'stop' }, reason: healthy });
  const start = { next: parseNext(tree.start) };
  return baselineFirst(story) ?? follow(story, lead ?? start);
}

function baselineFirst(story: Standpoint): Due | undefined {
  const known = knownOf(story);
  const check = currentLeg(story).tree.baseline.find((id) => known(id) === undefined);
  return check === undefined ? undefined : { kind: 'check', check, why: 'way' };
}

/** What is known of the checks of this leg. */
const knownOf =
  (story: Standpoint) =>
  (check: string): Known => {
    const passed = [...story.unsure, ...story.skipped].some((one) => one.check === check);
    return knownPlace(story, check) ?? (passed ? 'passed' : undefined);
  };

function follow(story: Standpoint, from: NextLink | undefined): Due {
  const { tree } = currentLeg(story);
  const lead = along(tree, from, knownOf(story));
  switch (lead?.next.kind) {
    case 'check':
      return { kind: 'check', check: lead.next.check, why: 'way' };
    case 'tree':
      return {
        kind: 'leg',
        tree: lead.next.tree,
        reason: lead.reason ?? 'This tree goes on there.',
      };
    case 'stop':
      return { kind: 'stop', reason: lead.reason ?? 'The tree ends here.' };
    case 'cause': {
      const { cause } = lead.next;
      const mended = story.repairs.some((repair) => repair.cause === cause);
      return mended || !Object.hasOwn(tree.causes, cause)
        ? leftOver(story)
        : { kind: 'named', cause };
    }
    case undefined:
      return leftOver(story);
  }
}

/** Where the way gives out: the first check not answered yet, in the tree's order. */
function leftOver(story: Standpoint): Due {
  const known = knownOf(story);
  const check = Object.keys(currentLeg(story).tree.checks).find((id) => known(id) === undefined);
  return check === undefined
    ? { kind: 'stop', reason: 'Every check of this tree has been answered.' }
    : { kind: 'check', check, why: 'way' };
}
