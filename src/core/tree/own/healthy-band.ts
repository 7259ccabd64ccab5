import { readNumber } from '../../trade/units/number.ts';
import { quantitiesOf, unitId } from '../../trade/units/units.ts';
import type { OwnBand } from './named.ts';

const above = /^(?:at least|over|above|more than|not under|no less than|>=?)\s+(.+)$/i;
const orMore = /^(.+?)\s+(?:or more|or over|or above|and up|at least)$/i;
const under = /^(?:under|below|less than|at most|not over|no more than|<=?)\s+(.+)$/i;
const orLess = /^(.+?)\s+(?:or less|or under|or below|at most)$/i;
const between =
  /^(?:between\s+|from\s+)?(.+?)\s*(?:\bto\b|\band\b|\.\.|–|(?<=[\d\s.,])-(?=[\d\s.,]))\s*(.+)$/i;

/**
 * Reads what a healthy one shows as a band: `12.2 V or more`, `under 0.5 V`, `11 to 13 V`. As in a
 * tree the lower end belongs to it and the upper one does not. Undefined where it is no band in a
 * unit of ours: then the person judges.
 */
export function readHealthyBand(text: string): OwnBand | undefined {
  const clean = text.trim().replace(/\.$/, '');
  return (
    oneEnd(clean, [above, orMore], (from) => ({ from })) ??
    oneEnd(clean, [under, orLess], (below) => ({ below })) ??
    bothEnds(clean)
  );
}

type Ends = Pick<OwnBand, 'from' | 'below'>;

function oneEnd(
  text: string,
  patterns: readonly RegExp[],
  ends: (value: number) => Ends,
): OwnBand | undefined {
  const said = patterns.flatMap((pattern) => pattern.exec(text)?.[1] ?? [])[0];
  const amount = amountIn(said);
  return amount?.unit === undefined ? undefined : bandIn(amount.unit, ends(amount.value));
}

function bothEnds(text: string): OwnBand | undefined {
  const [, first, last] = between.exec(text) ?? [];
  const [low, high] = [amountIn(first), amountIn(last)];
  const unit = high?.unit ?? low?.unit;
  if (low === undefined || high === undefined || unit === undefined) return undefined;
  const same = (low.unit ?? unit) === unit && low.value < high.value;
  return same ? bandIn(unit, { from: low.value, below: high.value }) : undefined;
}

/** A number with its unit, or without one. */
function amountIn(text: string | undefined) {
  const number = text === undefined ? undefined : readNumber(text);
  if (number === undefined || !Number.isFinite(number.value)) return undefined;
  const unit = number.rest.trim();
  if (unit === '') return { value: number.value, unit: undefined };
  return quantitiesOf(unit).length === 0 ? undefined : { value: number.value, unit: unitId(unit) };
}

function bandIn(unit: string, ends: Ends): OwnBand | undefined {
  const [quantity] = quantitiesOf(unit);
  return quantity && { quantity, unit, ...ends };
}
