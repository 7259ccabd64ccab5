import { at } from '../at.ts';
import type { Model } from '../reason/belief/model.ts';
import { OwnRoutes, type Route } from '../reason/plan/routes.ts';
import type { Tree } from '../tree/model.ts';
import { causeWords, checkWords, ofHundred, sentence } from './words.ts';

/** Routes of fewer vehicles with this one fault are not followed. */
const least = 0.002;

/** How a vehicle with one fault alone goes through the tree's own way: the commonest route, and how often it ends right. */
export function walkedAloud(tree: Tree, model: Model, cause: string): string {
  const index = model.causes.findIndex(({ id }) => id === cause);
  const fleet = { sets: [[index]], weights: Float64Array.of(1) };
  const { routes } = new OwnRoutes(tree, model, least, fleet).run();
  const right = sumOf(routes.filter(({ end }) => end.kind === 'cause' && end.cause === cause));
  const [main] = routes.toSorted((one, other) => other.share - one.share);
  if (main === undefined) return `${sentence(causeWords(tree, cause))}: the way goes nowhere.`;
  const steps = main.shown.map(({ check, result }) => {
    const asked = tree.checks[check];
    return asked === undefined
      ? check
      : `${checkWords(asked)} shows "${at(asked.results, result).label}"`;
  });
  return (
    `${sentence(causeWords(tree, cause))}: ${steps.join('; then ')}; and ${endWords(tree, main)}. ` +
    `Condemned rightly in ${ofHundred(right)} of 100${otherEnds(tree, routes, cause)}.`
  );
}

const sumOf = (routes: readonly Route[]): number =>
  routes.reduce((all, { share }) => all + share, 0);

function endWords(tree: Tree, { end }: Route): string {
  if (end.kind === 'cause') return `the tree condemns ${causeWords(tree, end.cause)}`;
  if (end.kind === 'tree') return `it goes over to another complaint, ${end.tree}`;
  return end.kind === 'stop' ? 'the way stops' : 'the way gives out';
}

/** Where else such vehicles end, the commonest first. */
function otherEnds(tree: Tree, routes: readonly Route[], cause: string): string {
  const ends = Map.groupBy(
    routes.filter(({ end }) => end.kind !== 'cause' || end.cause !== cause),
    (route) => endWords(tree, route),
  );
  const told = [...ends]
    .map(([words, all]) => ({ words, share: sumOf(all) }))
    .filter(({ share }) => share >= 0.02)
    .toSorted((one, other) => other.share - one.share)
    .slice(0, 3)
    .map(({ words, share }) => `in ${ofHundred(share)} ${words}`);
  return told.length === 0 ? '' : `; else ${told.join(', ')}`;
}
