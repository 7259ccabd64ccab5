import type { Tell } from '../../problem.ts';
import { showNumber } from '../../trade/units/units.ts';
import { booksOf, edgesOf } from '../limits.ts';
import type { Check, Reading, Result, Tree } from '../model.ts';
import { saidOf, type Said } from './spans-in-words.ts';

/** Bands that the words beside them contradict, and bands in which no reading can fall. */
export function lintBands(tree: Tree, tell: Tell): void {
  for (const [id, check] of Object.entries(tree.checks)) {
    const { reading } = check;
    if (reading === undefined || !check.results.some(hasBand)) continue;
    lintHealthy(check, reading, `checks.${id}`, tell);
    check.results.forEach((result, index) => {
      const path = `checks.${id}.results[${index}]`;
      if (meet(check)) lintLabel(result, reading, path, tell);
      lintPlausible(result, reading, path, tell);
    });
  }
}

const hasBand = ({ from, below }: Result): boolean => from !== undefined || below !== undefined;

/** Whether each band begins where another ends: a gap or an overlap is told by itself, elsewhere. */
function meet({ results }: Check): boolean {
  const bands = results.map(edgesOf).toSorted((one, other) => one.from - other.from);
  return bands.every(({ from }, index) => index === 0 || from === bands[index - 1]?.below);
}

/** How far a limit in words may lie from the typed one: "0.3 V or less" stands on a band below 0.31. */
const wordy = 0.05;

function lintLabel(result: Result, reading: Reading, path: string, tell: Tell): void {
  const said = saidOf(result.label, reading);
  if (said === undefined || booksOf(result).length > 0) return;
  if ('stranger' in said) {
    tell(strange(said.stranger, reading, `${path}.label`));
    return;
  }
  const { from, below } = edgesOf(result);
  if (fits(said.low, from) && fits(said.high, below)) return;
  tell({
    code: 'label-against-band',
    path: `${path}.label`,
    value: said.text,
    message: `The label says "${said.text}", but the band is ${bandOf(result, reading)}.`,
    mend: "Mend the one that is wrong: the number, its unit, or the reading's unit.",
  });
}

const strange = (unit: string, { quantity, unit: own }: Reading, path: string) => ({
  code: 'unit-in-words',
  path,
  value: unit,
  message: `The words say ${unit}, which is no unit of ${quantity}; the reading is in ${own}.`,
  mend: 'Mend the one that is wrong.',
});

const fits = (said: number | undefined, limit: number): boolean =>
  said === undefined || Math.abs(said - limit) <= wordy * Math.abs(limit);

/** A healthy value may be said more closely than its band ends, but not by another size. */
const otherSize = 3;

function lintHealthy(check: Check, reading: Reading, path: string, tell: Tell): void {
  const [healthy] = check.results;
  if (healthy === undefined || check.healthy === undefined || booksOf(healthy).length > 0) return;
  const said = saidOf(check.healthy, reading);
  if (said === undefined) return;
  if ('stranger' in said) {
    tell(strange(said.stranger, reading, `${path}.healthy`));
    return;
  }
  if (agree(said, healthy)) return;
  tell({
    code: 'healthy-against-band',
    path: `${path}.healthy`,
    value: said.text,
    message: `A good vehicle reads "${said.text}", but "${healthy.label}" is ${bandOf(healthy, reading)}.`,
    mend: 'Mend the one that is wrong: the words, the limits, or the unit of the reading.',
  });
}

function agree({ low, high }: Said, healthy: Result): boolean {
  const { from, below } = edgesOf(healthy);
  const overlap = (low ?? -Infinity) < below && (high ?? Infinity) >= from;
  return overlap && alike(low, from) && alike(high, below);
}

function alike(said: number | undefined, limit: number): boolean {
  if (said === undefined || !Number.isFinite(limit) || said <= 0 || limit <= 0) return true;
  return said / limit < otherSize && limit / said < otherSize;
}

function lintPlausible(
  result: Result,
  { plausible, unit }: Reading,
  path: string,
  tell: Tell,
): void {
  const { from, below } = edgesOf(result);
  const [least, most] = plausible;
  if (from < most && below > least) return;
  tell({
    code: 'band-implausible',
    path,
    value: result.id,
    message: `No plausible reading (${showNumber(least, 6)} to ${showNumber(most, 6)} ${unit}) falls into this band.`,
    mend: 'Mend "plausible" or the limits; one of them may be in another unit.',
  });
}

function bandOf(result: Result, { unit }: Reading): string {
  const { from, below } = edgesOf(result);
  const amount = (value: number): string => showNumber(value, 6);
  if (from === -Infinity) return `under ${amount(below)} ${unit}`;
  if (below === Infinity) return `${amount(from)} ${unit} or more`;
  return `${amount(from)} to ${amount(below)} ${unit}`;
}
