import {
  chosen,
  generalTable,
  measured,
  namesOf,
  optional,
  ruleOfThumb,
  systemVolts,
  perhapsSix,
  voltsOf,
} from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { lookUp } from '../../table.ts';
import type { Table } from '../../table.ts';
import { asShown, convert, showReading } from '../../units/units.ts';

const drains = span('drain', 0.1, 100_000, 'mA');
const capacities = span('capacity', 1, 400, 'Ah');
const shares = span('usable', 1, 100, '%');

/**
 * Days until a steady drain leaves too little to start: Ah x usable / 100 x 1000 / (24 x mA).
 * Valid for 0.1 mA to 100 A. Arithmetic; the usable 40 % is common practice. Worked example:
 * 50 mA, 60 Ah, 40 %: 20 days.
 */
export function daysToNoStart(drain: number, capacity: number, usable: number): number {
  const charge = inSpan(capacity, capacities) * (inSpan(usable, shares) / 100) * 1000;
  return charge / (24 * inSpan(drain, drains));
}

/** Steady drain a vehicle may have with everything off, mA, by kind of vehicle. */
const drainLimits = { points: 0, clock: 10, training: 35, modern: 50 } as const;

export const standingDrain = makeFigure({
  name: 'standing-drain',
  family: 'battery',
  about: 'Days until a steady drain with everything off flattens the battery.',
  inputs: {
    drain: measured('current', drains, 'with everything off'),
    capacity: measured('charge', capacities, '20-hour capacity', { default: 50 }),
    usable: measured('ratio', shares, 'of it before the engine no longer starts', { default: 40 }),
    vehicle: chosen(
      namesOf(drainLimits),
      'points: no clock, no memory; clock; modern; training: a training text',
      'points',
    ),
  },
  outputs: {
    result: { unit: 'day', about: 'until it no longer starts' },
    limit: { unit: 'mA', about: 'drain such a vehicle may have' },
  },
  formula: 'days = Ah x usable x 1000 / (24 x mA)',
  range: '0.1 mA to 100 A, 1 to 400 Ah',
  source: 'arithmetic; 40 %, 0 and 50 mA common practice; 35 mA a training text; clock from memory',
  mark: 'common practice',
  work: ({ drain, vehicle, capacity, usable }) => {
    const limit = drainLimits[vehicle];
    // A vehicle with points draws nothing; a few mA are meter error and old insulation.
    const high = drain > Math.max(limit, 5);
    return {
      values: { result: daysToNoStart(drain, capacity, usable), limit },
      verdict: `${high ? 'More than such a vehicle should draw: find it.' : 'No cause for worry.'} ${ruleOfThumb}`,
    };
  },
});

/** End-of-charge volts of a 12 V battery by F: published battery notes. */
const chargeEnds: Table = [
  [0, 15.1],
  [75, 14.4],
  [95, 14.2],
];

/** Volts a lead cell wants less per kelvin, 3 mV: published. */
const perCell = -0.003;
const chargeHeats = span('temperature', -40, 160, 'F');
const chargedVolts = span('volts', 0, 20, 'V');

/**
 * End-of-charge volts of a conventional 12 V battery at a temperature in F: the table, and beyond
 * its ends 18 mV per kelvin. Valid from -40 to 160 F. Worked example: 75 F: 14.4 V.
 */
export function endOfCharge(temperature: number): number {
  const wanted = inSpan(temperature, chargeHeats);
  const inside = Math.min(95, Math.max(0, wanted));
  return lookUp(chargeEnds, inside, 'temperature') + 6 * perCell * ((wanted - inside) / 1.8);
}

export const chargingVoltage = makeFigure({
  name: 'charging-voltage',
  family: 'charging',
  about: 'Volts at the battery with the engine running, against what they should be.',
  inputs: {
    temperature: measured('temperature', chargeHeats, 'of the battery', { default: 75 }),
    battery: systemVolts,
    volts: optional('voltage', chargedVolts, 'read, lightly loaded'),
  },
  outputs: {
    result: { unit: 'V', about: 'end-of-charge volts at that temperature' },
    predicted: { unit: 'V', about: 'the same from 14.4 V at 75 F and 3 mV a cell and kelvin' },
    coefficient: { unit: 'V/C', about: 'change with temperature' },
    low: { unit: 'V', about: 'lower end of the common band at that temperature' },
    high: { unit: 'V', about: 'upper end of the common band at that temperature' },
  },
  formula: 'published table; 14.4 V - 0.018 V/C x (T - 75 F); 6 V: half; the band moves along',
  range: '-40 to 160 F',
  source: 'published battery notes (table, coefficient); the band is common practice',
  mark: 'published',
  work: ({ temperature, battery, volts }) => {
    const six = battery === '6';
    const part = six ? 0.5 : 1;
    const end = endOfCharge(temperature);
    // The common band is that of a mild day; it moves with what the battery wants.
    const moved = end - endOfCharge(75);
    const [low, high] = six
      ? [6.9 + moved * part, 7.4 + moved * part]
      : [13.5 + moved, 14.8 + moved];
    return {
      values: {
        result: end * part,
        predicted: (14.4 + 6 * perCell * ((temperature - 75) / 1.8)) * part,
        coefficient: 6 * perCell * part,
        low,
        high,
      },
      verdict: judgeCharging(
        low,
        high,
        volts === undefined ? undefined : voltsOf(volts, battery, chargedVolts),
      ),
    };
  },
});

/** Volts that a 6 V system charges with at most, the coldest day: a 12 V battery at rest shows more. */
const sixAtMost = 8.5;

function judgeCharging(low: number, high: number, volts?: number): string | undefined {
  if (volts === undefined) return undefined;
  const told = `${showReading(low, 'V')} to ${showReading(high, 'V')} is common at that temperature`;
  const read = asShown(volts, 'V');
  if (high > sixAtMost && read > 0 && read < sixAtMost)
    return `Charges nothing that a 12 V battery would show. ${perhapsSix} ${ruleOfThumb}`;
  if (read < asShown(low, 'V')) return `Charges too little or not at all: ${told}. ${ruleOfThumb}`;
  if (read > asShown(high, 'V')) return `Charges too hard: ${told}. ${ruleOfThumb}`;
  return `Charges as it should: ${told}. ${ruleOfThumb}`;
}

const cellCounts = span('cells', 1, 300, '');
const gasHeats = span('temperature', -40, 80, 'C');
const overcharges = span('overcharge', 0, 10_000, 'Ah');

/**
 * Litres of hydrogen from so many cells and ampere-hours of overcharge at a temperature and
 * 1 atm: Faraday's law, 2 electrons a molecule, ideal gas. Source: from memory (F = 96485 C/mol,
 * R = 8.314462618 J/(mol K)). Worked example: 1 Ah, 1 cell, 25 C: 0.4564 L.
 */
export function hydrogenLitres(charge: number, cells: number, celsius: number): number {
  const moles = (3600 * inSpan(charge, overcharges)) / (2 * 96_485);
  const kelvin = convert(inSpan(celsius, gasHeats), 'C', 'K');
  return moles * inSpan(cells, cellCounts) * ((8.314462618 * kelvin) / 101_325) * 1000;
}

export const hydrogen = makeFigure({
  name: 'hydrogen',
  family: 'battery',
  about: 'Explosive hydrogen that overcharging makes.',
  inputs: {
    overcharge: measured('charge', overcharges, 'put in past full; amperes x hours'),
    cells: measured('count', cellCounts, 'of the battery', { default: 6 }),
    temperature: measured('temperature', gasHeats, 'of the gas', { default: 25 }),
  },
  outputs: {
    result: { unit: 'l', about: 'hydrogen at 1 atm' },
    rate: { unit: 'ft3/min', about: 'if that is one hour of charging' },
    limit: { unit: '%', about: 'share in air from which it burns' },
  },
  formula: 'V = 3600 x Ah x cells / (2 x 96485) x R x T / 101325 Pa',
  range: '-40 to 80 C',
  source: "Faraday's law, from memory; limit of 4 % read",
  mark: 'computed',
  work: ({ overcharge, cells, temperature }) => {
    const litres = hydrogenLitres(overcharge, cells, temperature);
    return {
      values: { result: litres, rate: convert(litres / 60, 'l/min', 'ft3/min'), limit: 4 },
      verdict: `No flame, no spark, doors open; charger off before its clips are moved. ${generalTable}`,
    };
  },
});
