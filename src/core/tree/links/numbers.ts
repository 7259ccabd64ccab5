import type { Problem, Tell } from '../../problem.ts';
import { findUnit, unitNames } from '../../trade/units/units.ts';
import { edgesOf } from '../limits.ts';
import type { Check } from '../model.ts';

/** The check that is looked at: where it stands, and whom to tell. */
type Looked = { readonly path: string; readonly isComplaint: boolean; readonly tell: Tell };

/** Largest distance from 1 that the shares of a row may add up to. */
const slack = 1e-6;

/** Finds rows that are no distributions over the results, and bands with gaps or overlaps. */
export function checkNumbers(check: Check, { path, isComplaint, tell }: Looked): void {
  if (check.background !== undefined) checkRow(check.background, check, `${path}.background`, tell);
  else if (!isComplaint && check.feed === undefined)
    tell({
      code: 'no-background',
      path: `${path}.background`,
      message: 'The check does not say what a vehicle with none of the causes shows.',
      mend: 'Give one chance for each result, healthiest first, adding up to 1.',
    });
  for (const [cause, row] of Object.entries(check.points))
    checkRow(row, check, `${path}.points.${cause}`, tell);
  checkBands(check, path, tell);
}

function checkRow(row: readonly number[], check: Check, path: string, tell: Tell): void {
  const total = row.reduce((sum, chance) => sum + chance, 0);
  if (row.length !== check.results.length)
    tell({
      code: 'row-length',
      path,
      value: JSON.stringify(row),
      message: `${row.length} chances for ${check.results.length} results.`,
      mend: 'Give one chance for each result, in their order.',
    });
  else if (Math.abs(total - 1) > slack)
    tell({
      code: 'row-sum',
      path,
      value: JSON.stringify(row),
      message: `The chances add up to ${Number(total.toPrecision(6))}, not to 1.`,
      mend: 'Change them so that they add up to 1.',
    });
}

function checkBands(check: Check, path: string, tell: Tell): void {
  const banded = check.results.filter(
    ({ from, below }) => from !== undefined || below !== undefined,
  );
  if (check.reading === undefined) {
    if (banded.length > 0)
      tell({
        code: 'band-without-reading',
        path: `${path}.results`,
        message: 'Results have bands, but the check takes no reading.',
        mend: 'Add "reading", or take "from" and "below" out.',
      });
    return;
  }
  const bands = check.results.map(edgesOf).toSorted((a, b) => a.from - b.from);
  const { quantity, unit } = check.reading;
  if (findUnit(quantity, unit) === undefined)
    tell({
      code: 'unknown-unit',
      path: `${path}.reading.unit`,
      value: unit,
      message: `"${unit}" is no unit of ${quantity}.`,
      mend: `Use one of: ${unitNames(quantity).join(', ')}.`,
    });
  const [low, high] = check.reading.plausible;
  if (low >= high)
    tell({
      code: 'plausible-range',
      path: `${path}.reading.plausible`,
      value: JSON.stringify([low, high]),
      message: 'The plausible range is empty.',
      mend: 'Give the lower end first, then the higher.',
    });
  const open = openEnds(check);
  if (open === undefined) checkSeams(bands, [low, high], path, tell);
  else tell({ ...open, path: `${path}.results` });
}

type Bands = readonly ReturnType<typeof edgesOf>[];

function checkSeams(
  bands: Bands,
  [low, high]: readonly [number, number],
  path: string,
  tell: Tell,
): void {
  let reached = low;
  for (const band of bands) {
    if (band.from > reached || (band.from < reached && reached !== low))
      tell(seam(band.from > reached ? 'gap' : 'overlap', reached, band.from, path));
    reached = band.below;
  }
  if (reached < high) tell(seam('gap', reached, high, path));
}

/** More than one band that goes up, or down, without end: the others lack a number. */
function openEnds({ results }: Check): Omit<Problem, 'path'> | undefined {
  const without = (key: 'from' | 'below') => results.filter((one) => one[key] === undefined);
  const names = (few: Check['results']) => few.map(({ id }) => `"${id}"`).join(' and ');
  const bare = results.filter(({ from, below }) => from === undefined && below === undefined);
  const told = (message: string, mend: string) => ({ code: 'band-ends', message, mend });
  if (bare.length > 0)
    return told(
      `The check takes a reading, and nothing says at which ${names(bare)} ${bare.length > 1 ? 'begin and end' : 'begins and ends'}.`,
      'Give "from" and "below"; the highest has no "below", the lowest no "from".',
    );
  if (without('below').length > 1)
    return told(
      `Both ${names(without('below'))} go up without end.`,
      'Give "below" to all but the highest.',
    );
  if (without('from').length > 1)
    return told(
      `Both ${names(without('from'))} go down without end.`,
      'Give "from" to all but the lowest.',
    );
  return undefined;
}

const seam = (kind: 'gap' | 'overlap', one: number, other: number, path: string) => ({
  code: `band-${kind}`,
  path: `${path}.results`,
  value: `${one} and ${other}`,
  message: `The bands have a ${kind} between ${Math.min(one, other)} and ${Math.max(one, other)}.`,
  mend: 'Let each band begin ("from") where the one before it ends ("below").',
});
