import { gatesOf, type Gate } from './gates.ts';
import type { Tree } from './model.ts';
import { parseNext, type Next } from './next.ts';

/** What is known of a check on the way: its result, by place; that it was passed over; or nothing. */
export type Known = number | 'passed' | undefined;

/** What a person on the way knows. */
export type Knowledge = {
  /** What each check shows as the vehicle is now: see `isStale`. */
  readonly knownOf: (check: string) => Known;
  /** The check answered last, a proof as the complaint's own; undefined before the first. */
  readonly last: string | undefined;
  readonly isMended: (cause: string) => boolean;
};

/** Where the tree's own way goes on. */
export type OnWay =
  | { readonly kind: 'check'; readonly check: string }
  | { readonly kind: 'cause'; readonly cause: string }
  | { readonly kind: 'tree'; readonly tree: string; readonly reason: string }
  | { readonly kind: 'stop'; readonly reason: string }
  /** The tree says no more: what follows is for the advice. */
  | { readonly kind: 'exhausted'; readonly reason: string };

/** Where a result leads, and the reason that the tree gives for it. */
type NextLink = { readonly next: Next; readonly reason?: string | undefined };

const exhausted: OnWay = {
  kind: 'exhausted',
  reason: "The tree's own way ends here; what follows is the advice.",
};

/**
 * The tree's own way, in the one place where it stands: the complaint's own test, the baseline,
 * the branch that the complaint's result gives (else the start), then from result to result past
 * all that is known. What can hurt comes first: a step behind a safeguard waits for its check. A
 * check behind an `after` that was not met is passed over. A baseline result that names an end
 * ends the way there.
 */
export function nextOnWay(tree: Tree, known: Knowledge): OnWay {
  const { confirm } = tree.complaint;
  const complaint = known.knownOf(confirm);
  if (complaint === undefined) return ask(tree, known, confirm) ?? exhausted;
  const atTop = known.last === undefined || [confirm, ...tree.baseline].includes(known.last);
  if (!atTop)
    return (
      nextOfBaseline(tree, known) ??
      follow(tree, linkFrom(tree, known.last, known.knownOf(known.last) ?? 'passed'), known)
    );
  return fromTheTop(tree, known, complaint);
}

/** On from the complaint's own test: what the baseline says, then the branch its result gives. */
function fromTheTop(tree: Tree, known: Knowledge, complaint: number | 'passed'): OnWay {
  const { confirm } = tree.complaint;
  const branch = complaint === 'passed' ? undefined : linkFrom(tree, confirm, complaint);
  if (complaint === 0) return follow(tree, branch ?? notThere(tree), known);
  const start: NextLink = { next: parseNext(tree.start) };
  return (
    endOfBaseline(tree, known) ??
    nextOfBaseline(tree, known) ??
    follow(tree, branch ?? start, known)
  );
}

const notThere = ({ checks, complaint }: Tree): NextLink => ({
  next: { kind: 'stop' },
  reason: checks[complaint.confirm]?.results[0]?.reason,
});

/** An end that a baseline reading names: no further check is asked past it. */
function endOfBaseline(tree: Tree, known: Knowledge): OnWay | undefined {
  for (const check of tree.baseline) {
    const shown = known.knownOf(check);
    const link = shown === undefined ? undefined : linkFrom(tree, check, shown);
    if (link === undefined || link.next.kind === 'check') continue;
    const end = endAt(tree, link, known);
    if (end.kind !== 'exhausted') return end;
  }
  return undefined;
}

/** The first baseline reading not taken yet that may be taken now. */
function nextOfBaseline(tree: Tree, known: Knowledge): OnWay | undefined {
  for (const check of tree.baseline) {
    const next = known.knownOf(check) === undefined ? ask(tree, known, check) : undefined;
    if (next !== undefined) return next;
  }
  return undefined;
}

/** Follows results past every check that is known, to the first that is not, or to an end. */
function follow(tree: Tree, from: NextLink | undefined, known: Knowledge): OnWay {
  const passed = new Set<string>();
  let link = from;
  while (link?.next.kind === 'check') {
    const { check } = link.next;
    if (!Object.hasOwn(tree.checks, check) || passed.has(check)) return exhausted;
    passed.add(check);
    const shown = known.knownOf(check);
    const next = shown === undefined ? ask(tree, known, check) : undefined;
    if (next !== undefined) return next;
    link = linkFrom(tree, check, shown ?? 'passed');
  }
  return link === undefined ? exhausted : endAt(tree, link, known);
}

/**
 * A check that is not known, or what has to come before it.
 * @returns undefined where an `after` was not met: the check would mean nothing
 */
function ask(
  tree: Tree,
  known: Knowledge,
  check: string,
  waiting: readonly string[] = [],
): OnWay | undefined {
  if (waiting.includes(check)) return undefined;
  for (const gate of gatesOf(tree, check)) {
    const shown = known.knownOf(gate.check);
    if (shown === undefined) {
      const first = ask(tree, known, gate.check, [...waiting, check]);
      if (first !== undefined) return first;
    }
    if (isOpen(tree, gate, shown)) continue;
    return gate.kind === 'safeguard' ? { kind: 'stop', reason: gate.otherwise } : undefined;
  }
  return { kind: 'check', check };
}

/** A gate that was passed over counts as healthy for what it explains, never for what can hurt. */
function isOpen({ checks }: Tree, { kind, check, results }: Gate, shown: Known): boolean {
  const place = shown === 'passed' && kind === 'after' ? 0 : shown;
  const result = typeof place === 'number' ? checks[check]?.results[place]?.id : undefined;
  return result !== undefined && results.includes(result);
}

/** Where a check leads; one that was passed over goes on as the healthiest result would, to a check. */
function linkFrom(
  { checks }: Tree,
  check: string | undefined,
  known: number | 'passed',
): NextLink | undefined {
  if (check === undefined) return undefined;
  const result = checks[check]?.results[known === 'passed' ? 0 : known];
  if (result?.next === undefined) return undefined;
  const next = parseNext(result.next);
  if (known !== 'passed') return { next, reason: result.reason };
  return next.kind === 'check' ? { next } : undefined;
}

function endAt(tree: Tree, { next, reason }: NextLink, { isMended }: Knowledge): OnWay {
  switch (next.kind) {
    case 'check':
      throw new Error(`the way does not end at the check ${next.check}`);
    case 'cause':
      return isMended(next.cause) || !Object.hasOwn(tree.causes, next.cause)
        ? exhausted
        : { kind: 'cause', cause: next.cause };
    case 'tree':
      return { kind: 'tree', tree: next.tree, reason: reason ?? 'This tree goes on there.' };
    case 'stop':
      return { kind: 'stop', reason: reason ?? 'The tree ends here.' };
  }
}

/**
 * Whether what a check showed says nothing any more: it was abnormal, and a cause that it shows
 * was mended since. A healthy result stays: no repair makes it worse.
 */
export const isStale = (
  tree: Tree,
  check: string,
  shown: number,
  mendedSince: readonly string[],
): boolean =>
  shown > 0 && mendedSince.some((cause) => Object.hasOwn(tree.checks[check]?.points ?? {}, cause));
