import { at } from '../at.ts';
import { makeRandom, type Random } from '../reason/plan/random.ts';
import { nextOnRoute, type Route } from '../reason/plan/routes.ts';
import type { Check, Tree } from '../tree/model.ts';
import type { OnWay } from '../tree/way/way.ts';
import { causeWords, checkWords, sentence } from './words.ts';

/** Vehicles that walk with each cause: a share of theirs is right to about 3 of 100. */
const vehicles = 250;

type Walk = Pick<Route, 'shown' | 'end'>;

/**
 * How vehicles with one fault alone go through the tree's own way: what the likeliest of them met,
 * and of a hundred how many end where. These are drawn from the tree's rows, the same ones each time.
 */
export function walkedAloud(tree: Tree, cause: string): string {
  const random = makeRandom(1);
  const next = rememberedNext(tree);
  const walks = Array.from({ length: vehicles }, () =>
    walk(tree, cause, next, (row) => drawn(row, random)),
  );
  const main = likeliest(tree, cause, next);
  const steps = main.shown.map(({ check, result }) => {
    const asked = tree.checks[check];
    return asked === undefined
      ? check
      : `${checkWords(asked)} showed "${at(asked.results, result).label}"`;
  });
  const ends = Map.groupBy(walks, ({ end }) => endWords(tree, end));
  const right = walks.filter(({ end }) => end.kind === 'cause' && end.cause === cause).length;
  return (
    `${sentence(causeWords(tree, cause))}: ${steps.join('; then ')}; and ${endWords(tree, main.end)}. ` +
    `Condemned rightly in about ${ofWalks(right)} of 100${otherEnds(ends, `the tree condemns ${causeWords(tree, cause)}`)}.`
  );
}

const ofWalks = (number: number): number => Math.round((100 * number) / vehicles);

/** Where the way leads after what was shown; many vehicles begin alike. */
function rememberedNext(tree: Tree): (shown: Route['shown']) => OnWay {
  const known = new Map<string, OnWay>();
  return (shown) => {
    const key = keyOf(shown);
    const to = known.get(key) ?? nextOnRoute(tree, shown);
    known.set(key, to);
    return to;
  };
}

const keyOf = (shown: Route['shown']): string =>
  shown.map(({ check, result }) => `${check}=${result}`).join(' ');

/** Goes the tree's own way, each check showing what is chosen from its row. */
function walk(
  tree: Tree,
  cause: string,
  next: (shown: Route['shown']) => OnWay,
  choose: (row: readonly number[]) => number,
): Walk {
  const shown: { check: string; result: number }[] = [];
  for (;;) {
    const to = next(shown);
    if (to.kind !== 'check') return { shown, end: to };
    const check = at([tree.checks[to.check]], 0);
    const complaint = to.check === tree.complaint.confirm;
    shown.push({ check: to.check, result: choose(rowOf(check, cause, complaint)) });
  }
}

/** What a vehicle with this cause alone shows; the complaint itself is known to be there. */
function rowOf(check: Check, cause: string, complaint: boolean): readonly number[] {
  const last = check.results.map((_, index) => (index === check.results.length - 1 ? 1 : 0));
  const row = check.points[cause] ?? check.background ?? last;
  return complaint ? row.map((chance, index) => (index === 0 ? 0 : chance)) : row;
}

function drawn(row: readonly number[], random: Random): number {
  let left = random() * row.reduce((all, chance) => all + chance, 0);
  const found = row.findIndex((chance) => (left -= chance) < 0);
  return found < 0 ? row.length - 1 : found;
}

/** The walk of a vehicle on which every check shows what is likeliest there. */
const likeliest = (tree: Tree, cause: string, next: (shown: Route['shown']) => OnWay): Walk =>
  walk(tree, cause, next, (row) => row.indexOf(Math.max(...row)));

function endWords(tree: Tree, end: Route['end']): string {
  if (end.kind === 'cause') return `the tree condemns ${causeWords(tree, end.cause)}`;
  if (end.kind === 'tree') return `it goes over to another complaint, ${end.tree}`;
  return end.kind === 'stop' ? 'the way stops' : 'the way gives out';
}

/** Where else such vehicles end, the commonest first; what fewer than 3 of 100 meet is left out. */
function otherEnds(ends: ReadonlyMap<string, readonly Walk[]>, right: string): string {
  const told = [...ends]
    .filter(([words, all]) => words !== right && ofWalks(all.length) >= 3)
    .toSorted(([, one], [, other]) => other.length - one.length)
    .slice(0, 3)
    .map(([words, all]) => `in ${ofWalks(all.length)} ${words}`);
  return told.length === 0 ? '' : `; else ${told.join(', ')}`;
}
