import { quantities, quantityNames } from './quantities.ts';
import type { Quantity } from './quantities.ts';
import type { UnitRow } from './row.ts';

type Lookup = { readonly exact: ReadonlyMap<string, UnitRow>; readonly loose: Loose };
/** By small letters; null where two units differ only by case. */
type Loose = ReadonlyMap<string, UnitRow | null>;

const lookups = new Map(quantityNames.map((name) => [name, makeLookup(quantities[name].units)]));

/**
 * The unit of one quantity that a text means, or undefined. The exact spelling counts first
 * (`mohm` is not `Mohm`); then case is overlooked where that leaves one unit only.
 */
export function findUnit(quantity: Quantity, text: string): UnitRow | undefined {
  const wanted = tidy(text);
  const lookup = lookups.get(quantity);
  return lookup?.exact.get(wanted) ?? lookup?.loose.get(wanted.toLowerCase()) ?? undefined;
}

function makeLookup(units: readonly UnitRow[]): Lookup {
  const named = units.flatMap((row) => [row.id, ...row.aliases].map((name) => ({ name, row })));
  const loose = new Map<string, UnitRow | null>();
  for (const { name, row } of named) {
    const small = tidy(name).toLowerCase();
    const before = loose.get(small);
    loose.set(small, before === undefined || before === row ? row : null);
  }
  return { exact: new Map(named.map(({ name, row }) => [tidy(name), row])), loose };
}

/** Every quantity in which the text names a unit: `F` is a temperature and a capacitance. */
export function quantitiesOf(text: string): readonly Quantity[] {
  return quantityNames.filter((quantity) => findUnit(quantity, text) !== undefined);
}

/** The way we write a unit that was typed in any other; unknown ones come back as they are. */
export function unitId(text: string): string {
  const rows = quantitiesOf(text).map((quantity) => findUnit(quantity, text));
  return rows.find((row) => row !== undefined)?.id ?? text;
}

/** The units of a quantity as we write them, commonest first. */
export function unitNames(quantity: Quantity): readonly string[] {
  return quantities[quantity].units.map((row) => row.id);
}

/**
 * A value in another unit of the same quantity. RangeError on a unit that is not known, on units
 * of different quantities, on a value that is not finite and on a temperature below absolute zero.
 * Factors: NIST SP 811. Worked example: convert(20, 'inHg', 'kPa') is 67.72778.
 */
export function convert(value: number, from: string, to: string): number {
  const { quantity, source, target } = unitPair(from, to);
  if (!Number.isFinite(value)) throw new RangeError(`value ${value} ${from} is not a number.`);
  const base = toBase(value, source);
  if (quantity === 'temperature' && base < 0) {
    throw new RangeError(`temperature ${value} ${from} is below absolute zero.`);
  }
  const turned = source === target ? value : fromBase(base, target);
  if (!Number.isFinite(turned)) {
    throw new RangeError(`value ${value} ${from} cannot be told in ${to}.`);
  }
  return turned;
}

type UnitPair = {
  readonly quantity: Quantity;
  readonly source: UnitRow;
  readonly target: UnitRow;
};

function unitPair(from: string, to: string): UnitPair {
  for (const quantity of quantityNames) {
    const source = findUnit(quantity, from);
    const target = findUnit(quantity, to);
    if (source !== undefined && target !== undefined) return { quantity, source, target };
  }
  for (const text of [from, to]) {
    if (quantitiesOf(text).length === 0) throw new RangeError(`unit "${text}" is not known.`);
  }
  throw new RangeError(
    `unit "${from}" measures ${namesOf(from)}, unit "${to}" measures ${namesOf(to)}.`,
  );
}

/** What a unit measures, in words: `temperature or capacitance`. */
export function namesOf(unit: string): string {
  return quantitiesOf(unit)
    .map((quantity) => quantities[quantity].name)
    .join(' or ');
}

function toBase(value: number, row: UnitRow): number {
  const scaled = (value + (row.offset ?? 0)) * row.factor;
  return row.upsideDown === true ? 1 / scaled : scaled;
}

function fromBase(base: number, row: UnitRow): number {
  const scaled = (row.upsideDown === true ? 1 / base : base) / row.factor;
  return scaled - (row.offset ?? 0);
}

/**
 * A value as text, rounded as finely as such a gauge is read: `12.43 V`, `20.5 inHg`, `0.004 V`.
 * At least two significant digits stay; a plain number shows no unit.
 */
export function showReading(value: number, unit: string): string {
  if (!Number.isFinite(value)) throw new RangeError(`value ${value} is not a number.`);
  const text = showNumber(value, decimalsOf(unit));
  return unit === '1' || unit === '' ? text : `${text} ${unit}`;
}

/**
 * A value as finely as it is shown, so that a verdict never contradicts the numbers beside it:
 * 9.104 V counts as 9.1 V.
 */
export function asShown(value: number, unit: string): number {
  return Number(showNumber(value, decimalsOf(unit)));
}

function decimalsOf(unit: string): number {
  const rows = quantityNames.flatMap((name) => quantities[name].units);
  return rows.find((each) => each.id === unit)?.decimals ?? 2;
}

/** A number with at most so many decimals, more where it is small, and no idle zeros. */
export function showNumber(value: number, decimals: number): string {
  if (value === 0) return '0';
  const size = Math.floor(Math.log10(Math.abs(value)));
  const places = Math.min(20, Math.max(decimals, 1 - size));
  const text = value.toFixed(places);
  const bare = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return bare === '-0' || bare === '' ? '0' : bare;
}

function tidy(text: string): string {
  return text
    .replaceAll(/[ΩΩ]/g, 'ohm')
    .replaceAll(/[µμ]/g, 'u')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll(/[\s.]+/g, '');
}
