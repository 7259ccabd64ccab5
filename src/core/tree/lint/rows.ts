import { at } from '../../at.ts';
import { unlisted } from '../model.ts';
import type { Tell } from '../../problem.ts';
import type { Check, Tree } from '../model.ts';

/** Least chance of any background entry, and least chance that a cause misses a check. */
const leastChance = 0.005;

const slack = 1e-6;

/** Rows are typed to three decimals: what the rounding of one entry can amount to. */
const typing = 0.001;

const short = (chance: number): string => String(Number(chance.toPrecision(3)));

/** Rows that prove something by one reading, or that no vehicle with the background could show. */
export function lintRows(tree: Tree, tell: Tell): void {
  for (const [id, check] of Object.entries(tree.checks)) {
    const { background, results } = check;
    if (id === tree.complaint.confirm || background?.length !== results.length) continue;
    lintBackground(background, `checks.${id}.background`, tell);
    for (const [cause, row] of Object.entries(check.points)) {
      if (row.length !== results.length) continue;
      const place = { path: `checks.${id}.points.${cause}`, check, background, tell };
      lintMissing(row, place);
      lintHealthier(row, place);
    }
  }
}

function lintBackground(background: readonly number[], path: string, tell: Tell): void {
  background.forEach((chance, index) => {
    if (chance < leastChance - slack)
      tell({
        code: 'background-small',
        path: `${path}[${index}]`,
        value: String(chance),
        message: `The background gives this result ${short(chance)}, under ${leastChance}.`,
        mend: `Give at least ${leastChance}: nothing is proved by one reading.`,
      });
  });
}

type Place = {
  readonly path: string;
  readonly check: Check;
  readonly background: readonly number[];
  readonly tell: Tell;
};

/** A link is what the cause itself produces: healthy with row[0] / background[0]. */
function lintMissing(row: readonly number[], { path, background, tell }: Place): void {
  const [healthy = 0] = row;
  const least = leastChance * (background[0] ?? 1);
  if (healthy < least - slack)
    tell({
      code: 'row-certain',
      path,
      value: JSON.stringify(row),
      message: `With this cause the check can hardly look healthy: ${short(healthy)}.`,
      mend: `Give the first result at least ${short(Math.max(leastChance, least))}: a check can miss.`,
    });
}

/**
 * Cause and background both produce a result and the later-listed one shows. So the running
 * totals of a row, over those of the background, can only rise: where they fall, the row gives a
 * result less than the background alone would make of it.
 */
function lintHealthier(row: readonly number[], { path, check, background, tell }: Place): void {
  let [rowTotal, backgroundTotal] = [row[0] ?? 0, background[0] ?? 0];
  for (let index = 1; index < row.length; index += 1) {
    const chance = row[index] ?? 0;
    const least = backgroundTotal > 0 ? (rowTotal * (background[index] ?? 0)) / backgroundTotal : 0;
    if (chance < least - typing)
      tell({
        code: 'row-healthier',
        path: `${path}[${index}]`,
        value: String(chance),
        ...healthierWords(at(check.results, index).id, chance, least),
      });
    rowTotal += chance;
    backgroundTotal += background[index] ?? 0;
  }
}

/** No chance can be as large as a row in the wrong order asks for: then the order is asked about. */
const healthierWords = (result: string, chance: number, least: number) =>
  least > 1 - leastChance
    ? {
        message: `"${result}" gets ${short(chance)}, and nearly every sound vehicle shows it.`,
        mend: 'Are the results listed healthiest first, and the chances in that order?',
      }
    : {
        message: `"${result}" gets ${short(chance)}, but the background alone makes it ${short(least)}: healthier than a sound vehicle.`,
        mend: `Give it at least ${short(Math.ceil(least * 1000) / 1000)}, or lower the background.`,
      };

/** Shares of all the odds within which one cause makes sense, and totals that are parts of 100. */
const sensible = { least: 0.0005, most: 0.9, totals: [75, 125] } as const;

/** Odds on another scale than the rest, `unlisted` included: parts of a hundred are meant. */
export function lintOdds(tree: Tree, tell: Tell): void {
  const causes = Object.entries(tree.causes);
  const total = causes.reduce((all, [, { odds }]) => all + odds, tree.unlisted);
  const [low, high] = sensible.totals;
  const all = [
    ...causes.map(([id, { odds }]) => [`causes.${id}.odds`, odds] as const),
    [unlisted, tree.unlisted] as const,
  ];
  const odd = all.filter(
    ([, odds]) =>
      (odds > 0 && odds / total < sensible.least) ||
      (all.length > 2 && odds / total > sensible.most),
  );
  for (const [path, odds] of odd)
    tell({
      code: 'odds-scale',
      path,
      value: String(odds),
      message: `These odds are ${short((100 * odds) / total)} in a hundred of all the odds here.`,
      mend: 'Odds are parts of a hundred of all vehicles with this complaint: bring them to one scale.',
    });
  if (odd.length === 0 && (total < low || total > high))
    tell({
      code: 'odds-scale',
      path: 'causes',
      value: short(total),
      message: `The odds with "unlisted" add up to ${short(total)}.`,
      mend: `Let them add up to about 100 (${low} to ${high}), as "unlisted" is on that scale.`,
    });
}
