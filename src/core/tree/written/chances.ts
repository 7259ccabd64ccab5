import { at } from '../../at.ts';
import { sum } from '../../sum.ts';
import { backgroundTotals, floor, producedTotals, type Totals } from '../noisy-max.ts';
import { oftenWords, type Certain, type Shares } from './written.ts';

/** Of a hundred sound vehicles, how many look bad where the author does not say: common practice. */
export const usuallyBad = 3;

const percentOf = (share: number | keyof typeof oftenWords): number =>
  typeof share === 'number' ? share : oftenWords[share];

/** A number there is a share of a result of that name, which no result may have. */
export const isCertain = (shares: Certain | Shares): shares is Certain =>
  Object.keys(shares).length === 1 && typeof shares.always === 'string';

/**
 * What was typed, as chances in the order of the results and before any floor. The healthy result
 * gets what is left of a hundred; where it is named too, all that is named shares the hundred out.
 * Words that leave it less than 3 are scaled to leave it that.
 */
export function typedRow(shares: Shares, results: readonly string[]): readonly number[] {
  const percents = results.map((id) => percentOf(shares[id] ?? 0));
  const [named = 0, ...bad] = percents;
  const total = sum(bad);
  if (named > 0) return percents.map((percent) => percent / (named + total));
  const worded = Object.values(shares).some((share) => typeof share === 'string');
  const scale = Math.min(1, (worded ? oftenWords.always : 100) / total);
  const scaled = total > 0 ? bad.map((percent) => (percent * scale) / 100) : bad;
  return [Math.max(0, 1 - sum(scaled)), ...scaled];
}

/** The row of a sound vehicle: one number is spread evenly over all but the healthy result. */
export function soundRow(sound: Shares | number, results: readonly string[]): readonly number[] {
  const bad = results.length - 1;
  const typed =
    typeof sound === 'number'
      ? [1 - sound / 100, ...Array.from({ length: bad }, () => sound / 100 / bad)]
      : typedRow(sound, results);
  return rowOf(backgroundTotals(typed, results.length));
}

/**
 * The row of a vehicle with one cause alone, brought to what such a vehicle can show: what is not
 * named shows as it does on a sound vehicle, no cause is seen for certain, and none looks healthier
 * than a sound vehicle does.
 */
export function causeRow(
  shares: Shares,
  results: readonly string[],
  background: readonly number[],
): readonly number[] {
  const under = backgroundTotals(background, results.length);
  const typed = typedRow(shares, results);
  const produced = producedTotals(besideSound(typed, shares, results, under), under, floor);
  return rowOf(produced.map((total, result) => total * at(under, result)));
}

/**
 * Gives each result that is not named what the background makes of it where the cause stays silent,
 * at the cost of the healthy one. Running totals are `scale * healthy + rest` with the healthy share
 * not known yet; a result that is not named multiplies them, a named one adds to them.
 */
function besideSound(
  typed: readonly number[],
  shares: Shares,
  results: readonly string[],
  under: Totals,
): readonly number[] {
  const total = results.slice(1).reduce(
    ({ scale, rest }, id, before) => {
      if (Object.hasOwn(shares, id)) return { scale, rest: rest + at(typed, before + 1) };
      const grows = at(under, before + 1) / at(under, before);
      return { scale: scale * grows, rest: rest * grows };
    },
    { scale: 1, rest: 0 },
  );
  let soFar = Math.max(0, (1 - total.rest) / total.scale);
  return results.map((id, index) => {
    if (index === 0) return soFar;
    const grows = at(under, index) / at(under, index - 1);
    const share = Object.hasOwn(shares, id) ? at(typed, index) : soFar * (grows - 1);
    soFar += share;
    return share;
  });
}

/** The row of the complaint's own test, which no sound vehicle shows. */
export function complaintRow(
  shares: Certain | Shares,
  results: readonly string[],
): readonly number[] {
  if (!isCertain(shares)) return typedRow(shares, results);
  return results.map((id) => (id === shares.always ? 1 : 0));
}

/** The chance of each result, from the running totals. */
const rowOf = (totals: Totals): readonly number[] =>
  totals.map((total, result) => total - (result === 0 ? 0 : at(totals, result - 1)));
