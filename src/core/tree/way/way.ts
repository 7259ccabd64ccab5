import type { Gate } from './gates.ts';
import { holdBefore, wayAfter, type Way } from './hold.ts';
import type { Done } from './known.ts';
import { isLook } from '../looked.ts';
import type { Result, Tree } from '../model.ts';
import { nextOf, parseNext, type Next } from './next.ts';

/** What a tree asks next, or where its own way ends. */
export type OnWay =
  | {
      readonly kind: 'check';
      readonly check: string;
      /** The step that waits for this check, where the way did not lead to it: a check or `cause:ID`. */
      readonly before?: string;
    }
  | { readonly kind: 'cause'; readonly cause: string }
  | { readonly kind: 'tree'; readonly tree: string; readonly reason: string | undefined }
  | { readonly kind: 'stop'; readonly reason: string | undefined }
  /** The way gives out: what follows is for the advice. */
  | { readonly kind: 'exhausted'; readonly reason: string };

/** Where a result leads, and the reason that the tree gives for it. */
type NextLink = { readonly next: Next; readonly reason?: string | undefined };

/** A link to where the way ends. */
type EndLink = {
  readonly next: Exclude<Next, { kind: 'check' }>;
  readonly reason: string | undefined;
};

type Answer = Extract<Done, { kind: 'shown' | 'passed' }>;

/**
 * The tree's own way: what it asks next after all that was done. The complaint's own test comes
 * first, then the baseline readings, then the branch that the complaint's result gives (else
 * `start`). An answer leads on from where it stands, past everything that is known, and a check
 * behind a gate waits for the gate's own check. A result that names danger or an end (`stop`) ends
 * the way there, baseline or not, and one that names another tree leads there at once: its own
 * baseline is another. A baseline result that names a cause or another tree ends the way when the
 * baseline is done.
 */
export function nextOnWay(tree: Tree, done: readonly Done[]): OnWay {
  const way = wayAfter(tree, done);
  const confirm = tree.complaint.confirm;
  const complaint = way.known(confirm);
  if (complaint === undefined) return complaintFirst(way);
  const answer = answerToFollow(way, done);
  if (answer !== undefined && ![confirm, ...tree.baseline].includes(answer.check))
    return leaveAt(way, answer) ?? baselineNext(way) ?? along(way, linkOf(way, answer));
  if (complaint === 0) return complaintGone(way);
  const left = answer?.check === confirm ? leaveAt(way, answer) : stopAt(way, answer);
  return left ?? baselineNext(way) ?? branch(way, complaint);
}

/**
 * The complaint's own test. Where a safeguard forbids it by what its check has shown, the way goes on
 * from that result: oil full of fuel is drained, a dry radiator is filled and looked at for its leak,
 * and only then is there a test.
 */
function complaintFirst(way: Way): OnWay {
  const { confirm } = way.tree.complaint;
  const hold = holdBefore(way, confirm);
  if (hold?.kind !== 'shut' || hold.gate.kind !== 'safeguard') return ask(way, confirm);
  const link = leadFrom(way, hold.gate.check, way.known(hold.gate.check) ?? 'passed');
  const to = along(way, link);
  return to.kind === 'exhausted' ? ask(way, confirm) : to;
}

const linkOf = (way: Way, { check }: Answer): NextLink | undefined =>
  leadFrom(way, check, way.known(check) ?? 'passed');

/** An abnormal result that ends the way with its reason: danger waits for nothing. */
function stopAt(way: Way, answer: Answer | undefined): OnWay | undefined {
  if (answer === undefined || !isAbnormal(way, answer.check)) return undefined;
  const link = linkOf(way, answer);
  return link?.next.kind === 'stop' ? { kind: 'stop', reason: link.reason } : undefined;
}

/** The same, or on to another tree: what is wrong here is no matter of this one's baseline. */
function leaveAt(way: Way, answer: Answer): OnWay | undefined {
  const stop = stopAt(way, answer);
  if (stop !== undefined || !isAbnormal(way, answer.check)) return stop;
  const link = linkOf(way, answer);
  return link?.next.kind === 'tree'
    ? { kind: 'tree', tree: link.next.tree, reason: link.reason }
    : undefined;
}

/** The baseline is done: the end that it names, else the branch that the complaint's result gives. */
function branch(way: Way, complaint: number | 'passed'): OnWay {
  const { tree } = way;
  const start: NextLink = { next: parseNext(tree.start) };
  return baselineEnd(way) ?? along(way, leadFrom(way, tree.complaint.confirm, complaint) ?? start);
}

const isAbnormal = ({ known }: Way, check: string): boolean => {
  const place = known(check);
  return typeof place === 'number' && place > 0;
};

/** Where a check leads; one that was passed over goes on as the healthiest result would, to a check. */
function leadFrom(way: Way, check: string, known: number | 'passed'): NextLink | undefined {
  const { checks, complaint } = way.tree;
  const result = checks[check]?.results[known === 'passed' ? 0 : known];
  if (result === undefined) return undefined;
  const lead = nextOf(known === 'passed' ? toChecks(result) : result, (id) => shownAs(way, id));
  if (lead === undefined) return undefined;
  const next = parseNext(lead);
  if (known !== 'passed') return { next, reason: result.reason };
  return next.kind === 'check' && check !== complaint.confirm ? { next } : undefined;
}

/** A result without the leads that end the way: what nobody looked at condemns nothing. */
const toChecks = (result: Result): Result => ({
  ...result,
  leads: (result.leads ?? []).filter(({ go }) => parseNext(go).kind === 'check'),
});

/** The id of the result that a check shows now. */
function shownAs({ tree, known }: Way, check: string): string | undefined {
  const place = known(check);
  return typeof place === 'number' ? tree.checks[check]?.results[place]?.id : undefined;
}

function complaintGone(way: Way): OnWay {
  const confirm = way.tree.complaint.confirm;
  const link = leadFrom(way, confirm, 0);
  if (link !== undefined) return along(way, link);
  return { kind: 'stop', reason: way.tree.checks[confirm]?.results[0]?.reason };
}

/** The first baseline reading not taken yet; one behind a gate that stays shut is passed by. */
function baselineNext(way: Way): OnWay | undefined {
  for (const id of way.tree.baseline) {
    if (way.known(id) !== undefined || !Object.hasOwn(way.tree.checks, id)) continue;
    const hold = holdBefore(way, id);
    if (hold === undefined) return { kind: 'check', check: id };
    if (hold.kind === 'ask') return { kind: 'check', check: hold.check, before: id };
  }
  return undefined;
}

/** Where a baseline reading ends the way: at the first cause or other tree that one names. */
function baselineEnd(way: Way): OnWay | undefined {
  for (const id of way.tree.baseline) {
    const place = way.known(id);
    const link = typeof place === 'number' && place > 0 && leadFrom(way, id, place);
    if (link === false || link === undefined) continue;
    const open = link.next.kind === 'cause' && canName(way, link.next.cause);
    if (open || link.next.kind === 'tree') return along(way, link);
  }
  return undefined;
}

/** What the way goes on from: a repair and an open look at a cause lead nowhere. */
const isAnswer = (one: Done): boolean =>
  one.kind !== 'repaired' && !('check' in one && isLook(one.check));

/**
 * The answer that the way goes on from: the last one. A check that was only asked because another
 * waited for it leads back to that one, once the gate is open.
 */
function answerToFollow(way: Way, done: readonly Done[]): Answer | undefined {
  const at = done.findLastIndex(isAnswer);
  const answer = done[at];
  if (answer === undefined || (answer.kind !== 'shown' && answer.kind !== 'passed'))
    return undefined;
  if (!isGate(way.tree, answer.check)) return answer;
  const earlier = done.slice(0, at);
  const asked = nextOnWay(way.tree, earlier);
  if (asked.kind !== 'check' || asked.check !== answer.check || asked.before === undefined)
    return answer;
  return holdBefore(way, asked.before)?.kind === 'shut' ? answer : answerToFollow(way, earlier);
}

const isGate = ({ checks, safeguards = [] }: Tree, id: string): boolean =>
  safeguards.some(({ check }) => check === id) ||
  Object.values(checks).some(({ after }) => after !== undefined && Object.hasOwn(after, id));

/** A check now, or what must be shown before it. Only a safeguard stops it: it is asked by name. */
export function ask(way: Way, check: string): Extract<OnWay, { kind: 'check' | 'stop' }> {
  const hold = holdBefore(way, check);
  if (hold?.kind === 'ask') return { kind: 'check', check: hold.check, before: check };
  return hold?.gate.kind === 'safeguard'
    ? { kind: 'stop', reason: hold.gate.otherwise }
    : { kind: 'check', check };
}

const exhausted = (reason: string): OnWay => ({ kind: 'exhausted', reason });

/** On past every check that is known, to the first that is not, or to where the way ends. */
function along(way: Way, from: NextLink | undefined): OnWay {
  const { tree, known } = way;
  const met = new Set<string>();
  let link = from;
  while (link?.next.kind === 'check') {
    const { check } = link.next;
    if (met.has(check)) return exhausted('The way comes round to what is known already.');
    if (!Object.hasOwn(tree.checks, check))
      return exhausted('The way leads to a check that this vehicle does not have.');
    met.add(check);
    const place = known(check);
    const hold = place === undefined ? holdBefore(way, check) : undefined;
    if (place === undefined && (hold?.kind !== 'shut' || hold.gate.kind === 'safeguard'))
      return ask(way, check);
    link = leadFrom(way, check, place ?? 'passed');
  }
  return link === undefined
    ? exhausted('What would lead on was passed over, or leads nowhere.')
    : end(way, { next: link.next, reason: link.reason });
}

const canName = ({ tree, mended, lookedAway }: Way, cause: string): boolean =>
  Object.hasOwn(tree.causes, cause) && !mended.includes(cause) && !lookedAway(cause);

/**
 * Where the way ends; a cause waits for the safeguards of its repair. Where one of them was found shut,
 * the cause that its check names comes first: the short before the link that it burnt.
 */
function end(way: Way, { next, reason }: EndLink): OnWay {
  if (next.kind === 'stop') return { kind: 'stop', reason };
  if (next.kind === 'tree') return { kind: 'tree', tree: next.tree, reason };
  if (!canName(way, next.cause)) {
    const name = way.tree.causes[next.cause]?.name;
    return exhausted(
      name === undefined
        ? 'The way names a cause that this vehicle does not have.'
        : `The way names "${name}" again, ${way.mended.includes(next.cause) ? 'which was mended' : 'which was looked at, and it was not that'}.`,
    );
  }
  const before = `cause:${next.cause}`;
  const hold = holdBefore(way, before);
  if (hold?.kind === 'ask') return { kind: 'check', check: hold.check, before };
  if (hold === undefined) return { kind: 'cause', cause: next.cause };
  return (
    causeAtGate(way, hold.gate) ?? {
      kind: 'stop',
      reason: hold.gate.kind === 'safeguard' ? hold.gate.otherwise : undefined,
    }
  );
}

/** The cause that the check of a shut gate names, where nothing holds its own repair back. */
function causeAtGate(way: Way, { check }: Gate): OnWay | undefined {
  const next = leadFrom(way, check, way.known(check) ?? 'passed')?.next;
  if (next?.kind !== 'cause' || !canName(way, next.cause)) return undefined;
  return holdBefore(way, `cause:${next.cause}`) === undefined ? next : undefined;
}
