import { firstCheck, parseNext, type Next } from '../tree/next.ts';
import { awaitsProof, isProven, lastRepair, sinceLeg } from './proof.ts';
import { knownResult } from './known.ts';
import { currentLeg, type Standpoint, type Step } from './story.ts';

type Numbered = { readonly n: number };

/** Whether the one came later than the other; what never came is earlier than everything. */
const later = (one: Numbered | undefined, ...others: readonly (Numbered | undefined)[]): boolean =>
  one !== undefined && others.every((other) => other === undefined || one.n > other.n);

/** Works out what is to be done now; the same events always give the same step. */
export function stepNow(story: Standpoint): Step {
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
function afterRepair(story: Standpoint, repair: { n: number; cause: string }): Step {
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
function ownWay(story: Standpoint): Step {
  const { tree } = currentLeg(story);
  const confirm = firstCheck(tree);
  const complaint = knownResult(story, confirm);
  if (complaint === undefined && !wasPassed(story, confirm))
    return { kind: 'check', check: confirm, why: 'way' };
  const move = lastMove(story);
  const failed = sinceLeg(story, story.proofs).at(-1);
  const afterFailedProof = failed !== undefined && failed.n > (move?.n ?? 0);
  // A baseline reading is taken out of turn: what it showed is met again where the way comes by it.
  if (move === undefined || afterFailedProof || [confirm, ...tree.baseline].includes(move.check))
    return fromTheTop(story, complaint);
  return baselineFirst(story) ?? follow(story, ...leadOf(story, move.check, move.result));
}

/** After the complaint was shown (or shown again): baseline readings, then the tree's start. */
function fromTheTop(story: Standpoint, shown: string | undefined): Step {
  const { tree } = currentLeg(story);
  const results = tree.checks[firstCheck(tree)]?.results ?? [];
  const result = results.find(({ id }) => id === shown);
  if (result !== undefined && result === results[0])
    return follow(story, readNext(result.next) ?? { kind: 'stop' }, result.reason);
  const next = readNext(result?.next) ?? { kind: 'check', check: tree.start };
  return baselineFirst(story) ?? follow(story, next, result?.reason);
}

function baselineFirst(story: Standpoint): Step | undefined {
  const { tree } = currentLeg(story);
  const check = tree.baseline.find(
    (id) => knownResult(story, id) === undefined && !wasPassed(story, id),
  );
  return check === undefined ? undefined : { kind: 'check', check, why: 'way' };
}

const readNext = (next: string | undefined): Next | undefined =>
  next === undefined ? undefined : parseNext(next);

const wasPassed = (story: Standpoint, check: string): boolean =>
  [...story.unsure, ...story.skipped].some((passed) => passed.check === check);

type Lead = readonly [
  next: Next | undefined,
  reason: string | undefined,
  passed?: ReadonlySet<string>,
];

/** Where an answer leads; no answer (unsure, skipped) goes on as the healthiest result would. */
function leadOf(story: Standpoint, check: string, shown: string | undefined): Lead {
  const results = currentLeg(story).tree.checks[check]?.results ?? [];
  const result = results.find(({ id }) => id === shown);
  if (result !== undefined) return [readNext(result.next), result.reason];
  const healthy = readNext(results[0]?.next);
  return [healthy?.kind === 'check' ? healthy : undefined, undefined];
}

function follow(story: Standpoint, ...[next, reason, passed = new Set()]: Lead): Step {
  if (next === undefined) return leftOver(story);
  if (next.kind === 'tree')
    return { kind: 'leg', tree: next.tree, reason: reason ?? 'This tree goes on there.' };
  if (next.kind === 'stop') return { kind: 'stop', reason: reason ?? 'The tree ends here.' };
  if (next.kind === 'cause')
    return story.repairs.some(({ cause }) => cause === next.cause) ||
      !Object.hasOwn(currentLeg(story).tree.causes, next.cause)
      ? leftOver(story)
      : { kind: 'named', cause: next.cause };
  return followCheck(story, next.check, passed);
}

/** On to a check; one that is answered already, or that this vehicle has not, is walked through. */
function followCheck(story: Standpoint, check: string, passed: ReadonlySet<string>): Step {
  const known = currentLeg(story).tree.checks[check];
  const found = knownResult(story, check);
  const open = found === undefined && !wasPassed(story, check);
  if (known !== undefined && open) return { kind: 'check', check, why: 'way' };
  if (passed.has(check) || known === undefined) return leftOver(story);
  const [next, reason] = leadOf(story, check, found);
  return follow(story, next, reason, new Set([...passed, check]));
}

/** Where the way gives out: the first check not answered yet, in the tree's order. */
function leftOver(story: Standpoint): Step {
  const { tree } = currentLeg(story);
  const check = Object.keys(tree.checks).find(
    (id) => knownResult(story, id) === undefined && !wasPassed(story, id),
  );
  return check === undefined
    ? { kind: 'stop', reason: 'Every check of this tree has been answered.' }
    : { kind: 'check', check, why: 'way' };
}
