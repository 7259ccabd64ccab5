import { chargeAtGravity } from './charge.ts';
import { generalTable, measured, ruleOfThumb } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { lookUp, lookUpLog } from '../../table.ts';
import type { Table } from '../../table.ts';
import { showReading } from '../../units/units.ts';

/** Freezing point in F by specific gravity at 80 F: US Army TM 10-6140-200-14 table 1-1. */
const armyFreezing: Table = [
  [1.16, 1],
  [1.22, -31],
  [1.25, -62],
  [1.28, -95],
];

/** The same over the whole range, after Vinal, from memory; US Army OD1002 agrees within 1 F. */
const freezing: Table = [
  [1, 32],
  [1.1, 18],
  [1.15, 5],
  [1.2, -17],
  [1.25, -62],
  [1.3, -95],
];

/** Specific gravity lost per day on the shelf, first ten days, by F: US Army TM 9-6140-200-14. */
const selfDischargeTable: Table = [
  [50, 0.0003],
  [80, 0.001],
  [100, 0.0025],
];

const gravities = span('gravity', 1, 1.3, '');
const acidHeats = span('temperature', -40, 160, 'F');
const cellLimit = 0.025;

/**
 * What to add to a hydrometer reading at a temperature in F: 0.004 for each 10 F above 80 F, less
 * below. Valid from -40 to 160 F. Source: battery FAQ tables; US Army TM 5-4210-230-14&P-1.
 * Worked example: 30 F: -0.02.
 */
export function hydrometerCorrection(temperature: number): number {
  return (0.004 * (inSpan(temperature, acidHeats) - 80)) / 10;
}

/**
 * Temperature in F at which electrolyte of a gravity (at 80 F) freezes, the warmer of two tables:
 * the danger lies on that side. Valid for 1.000 to 1.300. A widely copied table that gives -16 F
 * at 1.155 is unsafe and is not used. Worked example: 1.25: -62 F.
 */
export function freezingPoint(gravity: number): number {
  const general = lookUp(freezing, inSpan(gravity, gravities), 'gravity');
  return Math.max(general, armyFreezingPoint(gravity) ?? general);
}

function armyFreezingPoint(gravity: number): number | undefined {
  return gravity < 1.16 || gravity > 1.28 ? undefined : lookUp(armyFreezing, gravity, 'gravity');
}

export const electrolyte = makeFigure({
  name: 'electrolyte',
  family: 'battery',
  about: 'Hydrometer reading brought to 80 F: charge, rested volts, freezing point.',
  inputs: {
    gravity: measured('gravity', gravities, 'as the hydrometer shows it'),
    temperature: measured('temperature', acidHeats, 'of the electrolyte', { default: 80 }),
  },
  outputs: {
    result: { unit: '1', about: 'specific gravity at 80 F' },
    correction: { unit: '1', about: 'that was added' },
    charge: { unit: '%', about: 'state of charge; take it as within 10 %' },
    restedVolts: { unit: 'V', about: 'rule of thumb for a rested 12 V battery' },
    freezes: { unit: 'F', about: 'freezing point, the warmer of two tables' },
    freezesGeneral: { unit: 'F', about: 'freezing point, table after Vinal' },
    freezesArmy: { unit: 'F', about: 'freezing point, army table (1.160 to 1.280)' },
  },
  formula: 'SG80 = SG + 0.004 x (F - 80) / 10; V = 6 x (SG80 + 0.845)',
  range: 'specific gravity 1.000 to 1.300, -40 to 160 F',
  source: 'battery FAQ tables; US Army TM 10-6140-200-14 table 1-1; Vinal, from memory',
  mark: 'published',
  work: ({ temperature, gravity: shown }) => {
    const correction = hydrometerCorrection(temperature);
    const gravity = shown + correction;
    const clipped = Math.min(gravities.high, Math.max(gravities.low, gravity));
    const freezes = freezingPoint(clipped);
    return {
      values: {
        result: gravity,
        correction,
        charge: chargeAtGravity(gravity),
        restedVolts: 6 * (gravity + 0.845),
        freezes,
        freezesGeneral: lookUp(freezing, clipped, 'gravity'),
        freezesArmy: armyFreezingPoint(clipped),
      },
      verdict: `Freezes at about ${showReading(freezes, 'F')}; never charge or jump a frozen battery. ${generalTable}`,
    };
  },
});

export const hydrometerFigure = makeFigure({
  name: 'hydrometer-correction',
  family: 'battery',
  about: 'What to add to a hydrometer reading for the temperature.',
  inputs: {
    temperature: measured('temperature', acidHeats, 'of the electrolyte', { default: 90 }),
  },
  outputs: { result: { unit: '1', about: 'to add to the specific gravity' } },
  formula: '0.004 x (F - 80) / 10',
  range: '-40 to 160 F',
  source: 'battery FAQ tables; US Army TM 5-4210-230-14&P-1',
  mark: 'published',
  work: ({ temperature }) => ({ values: { result: hydrometerCorrection(temperature) } }),
});

/** Largest less smallest of the cells' gravities. RangeError for none. Example: 1.265, 1.23: 0.035. */
export function cellDifference(cells: readonly number[]): number {
  if (cells.length === 0) throw new RangeError('cells: there are no readings.');
  const checked = cells.map((each) => inSpan(each, gravities));
  return Math.max(...checked) - Math.min(...checked);
}

export const cellSpread = makeFigure({
  name: 'cell-spread',
  family: 'battery',
  about: 'Difference between the cells of a charged battery.',
  inputs: { cells: measured('gravity', gravities, 'one reading a cell', { list: true }) },
  outputs: {
    result: { unit: '1', about: 'largest less smallest' },
    limit: { unit: '1', about: 'more than this condemns a fully charged battery' },
    mean: { unit: '1', about: 'mean of the cells' },
  },
  formula: 'largest - smallest',
  range: 'specific gravity 1.000 to 1.300',
  source: 'US Army TM 9-6140-200-14 paragraph 4-7',
  mark: 'published',
  work: ({ cells }) => {
    const spread = cellDifference(cells);
    const bad = spread > cellLimit + 1e-9;
    return {
      values: {
        result: spread,
        limit: cellLimit,
        mean: cells.reduce((sum, each) => sum + each, 0) / cells.length,
      },
      verdict: bad
        ? `More than 0.025 between cells: if it is fully charged, it is worn out. ${ruleOfThumb}`
        : `The cells agree within 0.025. ${ruleOfThumb}`,
    };
  },
});

export const selfDischarge = makeFigure({
  name: 'self-discharge',
  family: 'battery',
  about: 'Specific gravity a stored battery loses in a day.',
  inputs: { temperature: measured('temperature', span('temperature', 50, 100, 'F'), 'in store') },
  outputs: { result: { unit: '1/day', about: 'specific gravity lost a day, first ten days' } },
  formula: 'published table, between its rows on a logarithmic scale',
  range: '50 to 100 F',
  source: 'US Army TM 9-6140-200-14 paragraph 4-8',
  mark: 'published',
  work: ({ temperature }) => ({
    values: { result: lookUpLog(selfDischargeTable, temperature, 'temperature') },
  }),
});
