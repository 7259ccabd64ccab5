import {
  forSystem,
  generalTable,
  measured,
  perhapsSix,
  systemVolts,
  voltsOf,
} from '../../figure-words.ts';
import type { SystemVolts } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { lookUp, turned } from '../../table.ts';
import type { Table } from '../../table.ts';

/** Rested volts of a 12 V battery by percent of charge, 80 F: battery FAQ tables credited to BCI. */
const popularVolts: Table = [
  [0, 11.89],
  [25, 12.06],
  [50, 12.24],
  [75, 12.45],
  [100, 12.65],
];

/** The same, coarser: US Army TM 5-3805-262-20. */
const armyVolts: Table = [
  [0, 11.7],
  [25, 12],
  [50, 12.2],
  [75, 12.4],
  [100, 12.6],
];

/** Specific gravity at 80 F by percent of charge, from the same FAQ tables. */
const chargeGravity: Table = [
  [0, 1.12],
  [25, 1.155],
  [50, 1.19],
  [75, 1.225],
  [100, 1.265],
];

/** Keeps 55.000000001 % from being rounded outward to 60 %. */
const slack = 1e-9;

const charges = span('charge', 0, 100, '%');
const restedVolts = span('volts', 3, 16, 'V');

/** Volts of a battery of `system` volts told as if it had six cells. */
function asTwelve(volts: number, system: SystemVolts): number {
  return system === '6' ? volts * 2 : volts;
}

/** Rested volts for a percent of charge, 12 V or 6 V. Worked example: 75 %, 12 V: 12.45 V. */
export function voltsAtCharge(
  charge: number,
  system: SystemVolts,
  table: Table = popularVolts,
): number {
  return forSystem(lookUp(table, inSpan(charge, charges), 'charge'), system);
}

export type ChargeBand = {
  /** Percent by the popular table, to the nearest 5. */
  readonly middle: number;
  readonly low: number;
  readonly high: number;
};

/**
 * State of charge of a rested lead battery as a band, because published scales differ by a quarter
 * of a charge: the two scales, rounded outward to 5 % and at least 5 % wide. Above the tables it is
 * full, below empty.
 * Valid for 3 to 16 V, to 8 V of a 6 V battery. Source: FAQ tables credited to BCI, US Army TM 5-3805-262-20. Worked
 * example: 12.24 V is 50 to 55 %.
 */
export function chargeBand(volts: number, system: SystemVolts): ChargeBand {
  const twelve = asTwelve(voltsOf(volts, system, restedVolts), system);
  const [popular, army] = [chargeOf(twelve, popularVolts), chargeOf(twelve, armyVolts)];
  const low = Math.floor(Math.min(popular, army) / 5 + slack) * 5;
  const high = Math.max(0, Math.ceil(Math.max(popular, army) / 5 - slack) * 5);
  const middle = Math.round(popular / 5) * 5;
  if (low < high) return { middle, low, high };
  // Both scales agree: no meter and no scale is nearer than 5 %.
  return low === 100 ? { middle, low: 95, high } : { middle, low, high: low + 5 };
}

function chargeOf(volts: number, table: Table): number {
  const byVolts = turned(table);
  const [lowest] = byVolts[0] ?? [0];
  const [highest] = byVolts.at(-1) ?? [0];
  return lookUp(byVolts, Math.min(highest, Math.max(lowest, volts)), 'volts');
}

/** Percent of charge, to the nearest 5, for a corrected gravity. Worked example: 1.19: 50 %. */
export function chargeAtGravity(gravity: number): number {
  return Math.round(chargeOf(gravity, chargeGravity) / 5) * 5;
}

function judgeCharge(volts: number, system: SystemVolts, band: ChargeBand): string {
  const twelve = asTwelve(volts, system);
  const open = 'Rest it 8 hours, or switch the headlamps on for 15 s and wait, before judging.';
  if (system === '12' && volts < 7.5)
    return `${perhapsSix} A 12 V one would have dead cells. Rule of thumb.`;
  if (twelve > 12.75) return `Surface charge: this reading tells nothing yet. ${open}`;
  if (twelve < 11.5) return 'Flat, or a dead cell: charge it and test each cell. Rule of thumb.';
  const told = `${band.low} to ${band.high} %`;
  const next = band.high < 75 ? 'Charge it before any load test.' : 'Good enough for a load test.';
  return `Charged ${told}. ${next} ${open} ${generalTable}`;
}

export const batteryCharge = makeFigure({
  name: 'battery-charge',
  family: 'battery',
  about: 'State of charge of a rested battery from its volts, as a band.',
  inputs: {
    volts: measured('voltage', restedVolts, 'at the posts, rested, nothing switched on'),
    battery: systemVolts,
  },
  outputs: {
    result: { unit: '%', about: 'by the commonest table; take the band' },
    low: { unit: '%', about: 'lower end of the band' },
    high: { unit: '%', about: 'upper end of the band' },
    cell: { unit: 'V', about: 'volts of one cell' },
  },
  formula: 'two published tables, straight between their rows; 6 V: half of 12 V',
  range:
    '3 to 16 V, a 6 V battery to 8 V, rested, about 80 F; cold needs a wider band, not a correction',
  source: 'battery FAQ tables credited to BCI; US Army TM 5-3805-262-20',
  mark: 'published',
  work: ({ volts, battery: system }) => {
    const band = chargeBand(volts, system);
    return {
      values: {
        result: band.middle,
        low: band.low,
        high: band.high,
        cell: volts / (system === '6' ? 3 : 6),
      },
      verdict: judgeCharge(volts, system, band),
    };
  },
});

export const restedVoltage = makeFigure({
  name: 'rested-voltage',
  family: 'battery',
  about: 'Volts and specific gravity of a rested battery at a state of charge.',
  inputs: { charge: measured('ratio', charges, 'state of charge'), battery: systemVolts },
  outputs: {
    result: { unit: 'V', about: 'rested volts, commonest table' },
    army: { unit: 'V', about: 'rested volts, army table' },
    gravity: { unit: '1', about: 'specific gravity at 80 F' },
  },
  formula: 'published tables, straight between their rows; 6 V: half of 12 V',
  range: '0 to 100 %, 80 F',
  source: 'battery FAQ tables credited to BCI; US Army TM 5-3805-262-20',
  mark: 'published',
  work: ({ charge, battery: system }) => ({
    values: {
      result: voltsAtCharge(charge, system),
      army: voltsAtCharge(charge, system, armyVolts),
      gravity: lookUp(chargeGravity, charge, 'charge'),
    },
  }),
});
