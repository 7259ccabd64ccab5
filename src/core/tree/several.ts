import { at } from '../at.ts';
import { findFigure } from '../trade/catalog.ts';
import type { Figure } from '../trade/figure.ts';
import { usualUncertainty } from '../trade/units/uncertainty.ts';
import { convert } from '../trade/units/units.ts';
import type { Facts } from './facts.ts';
import { cylindersOf } from './fit.ts';
import { measured, uncertaintyOf, type Measured } from './judge.ts';
import type { Check, NamedReading, Reading } from './model.ts';
import { judgeWords } from './shapes.ts';

/** A check that takes several readings in one go, and how they are judged. */
export type Several = {
  readonly reading: Reading;
  readonly judge: string;
  /** The first stands for all where there is one a cylinder. */
  readonly readings: readonly [NamedReading, ...NamedReading[]];
};

/** How a check takes its several readings; undefined for one that takes a single one, or none. */
export function severalOf({ reading, readings, judge }: Check): Several | undefined {
  const [first, ...others] = readings ?? [];
  return reading === undefined || judge === undefined || first === undefined
    ? undefined
    : { reading, judge, readings: [first, ...others] };
}

/** How many readings a check takes; undefined where nobody knows how many cylinders there are. */
export function readingsWanted(check: Check, facts: Facts): number | undefined {
  if (check.each === undefined) return check.readings?.length ?? 1;
  return cylindersOf(facts);
}

/**
 * Several values, in the unit of `readings`, as what is judged, in the unit of `reading`: one, or
 * all of them where each is judged by itself. A value may be Infinity. RangeError where they cannot
 * be compared. One meter reads them all, so the share that it is off by falls out of a difference;
 * what stays is its fixed error, twice: common practice, no source.
 */
export function combined(several: Several, values: readonly number[]): readonly Measured[] {
  const { judge } = several;
  if (judge === 'share') return [share(several, values)];
  return judgeWords.some((word) => word === judge)
    ? inOneUnit(several, values)
    : [byFigure(several, values)];
}

/** Judged as what they are: each, the lowest, or how far they lie apart. */
function inOneUnit(several: Several, values: readonly number[]): readonly Measured[] {
  const { reading, judge, readings } = several;
  const [{ unit, uncertainty }] = readings;
  const meter = { ...reading, uncertainty: uncertainty ?? reading.uncertainty };
  const own = values.map((value) =>
    Number.isFinite(value) ? convert(value, unit, reading.unit) : value,
  );
  if (judge === 'each') return own.map((value) => measured(meter, value));
  const [least, most] = [Math.min(...own), Math.max(...own)];
  if (judge === 'lowest') return [measured(meter, least)];
  return [apart(several, judge === 'spread' ? most - least : at(own, 0) - at(own, 1))];
}

function apart({ reading, readings: [first] }: Several, difference: number): Measured {
  if (Number.isNaN(difference)) throw new RangeError('two of them are beyond the range.');
  const { quantity, unit } = reading;
  const twice = first.uncertainty === undefined ? undefined : 2 * first.uncertainty;
  const usual = Number.isFinite(difference)
    ? usualUncertainty(quantity, difference, unit) + usualUncertainty(quantity, 0, unit)
    : 0;
  return measured({ ...reading, uncertainty: reading.uncertainty ?? twice ?? usual }, difference);
}

/** The lowest as a share of the highest; the fixed error of the meter opens both. */
function share({ reading, readings: [one] }: Several, values: readonly number[]): Measured {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (!Number.isFinite(most) || most <= 0)
    throw new RangeError('the highest is no number above 0.');
  const percent = (part: number): number => convert(100 * part, '%', reading.unit);
  const value = percent(least / most);
  if (reading.uncertainty !== undefined) return measured(reading, value);
  const fixed = uncertaintyOf(one, 0);
  return {
    value,
    low: percent(Math.max(0, least - fixed) / (most + fixed)),
    high: percent(Math.min(1, (least + fixed) / Math.max(least + fixed, most - fixed))),
  };
}

function byFigure(
  { reading, judge, readings: [one] }: Several,
  values: readonly number[],
): Measured {
  const figure = findFigure(judge);
  const list = figure && listInput(figure);
  if (figure === undefined || list === undefined)
    throw new RangeError(`"${judge}" is no figure that takes a list of readings.`);
  const given = values.map((value) => convert(value, one.unit, list.unit));
  const { result } = figure.run({ [list.key]: given }).outputs;
  if (result === undefined) throw new RangeError(`${judge} has no answer for these.`);
  return measured(reading, convert(result.value, result.unit, reading.unit));
}

/** The input of a figure that takes all readings, where it asks for nothing else. */
export function listInput(figure: Figure) {
  const needed = Object.entries(figure.inputs).filter(
    ([, { optional, default: preset }]) => optional !== true && preset === undefined,
  );
  const [[key, input] = []] = needed;
  return needed.length === 1 && key !== undefined && input?.list === true
    ? { key, quantity: input.quantity, unit: input.unit, gives: figure.outputs['result']?.unit }
    : undefined;
}
