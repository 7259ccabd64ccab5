import {
  forSystem,
  measured,
  optional,
  ruleOfThumb,
  systemVolts,
  voltsOf,
} from '../../figure-words.ts';
import type { SystemVolts } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { lookUp } from '../../table.ts';
import type { Table } from '../../table.ts';
import { asShown, showReading } from '../../units/units.ts';

/**
 * Lowest volts of a 12 V battery after 15 s at half its cold cranking amperes, by F. 9.6 V at 70 F
 * was read in a published test description; the other rows are common practice (one table has 8.0 V
 * at 0 F).
 */
const loadFloors: Table = [
  [0, 8.5],
  [10, 8.7],
  [20, 8.9],
  [30, 9.1],
  [40, 9.3],
  [50, 9.4],
  [60, 9.5],
  [70, 9.6],
];

const batteryHeats = span('temperature', 0, 120, 'F');
const loadVolts = span('volts', 0, 16, 'V');
const coldCranking = span('cold cranking current', 50, 2000, 'A');
const capacities = span('capacity', 5, 400, 'Ah');

/**
 * Lowest sound volts in a half-CCA load test at a battery temperature in F; above 70 F as at 70 F.
 * Valid for 0 to 120 F. Worked example: 30 F, 12 V: 9.1 V; 6 V: 4.55 V.
 */
export function loadTestFloor(temperature: number, system: SystemVolts): number {
  const floor = lookUp(loadFloors, Math.min(70, inSpan(temperature, batteryHeats)), 'temperature');
  return forSystem(floor, system);
}

function judgeLoad(floor: number, volts?: number): string {
  const told = showReading(floor, 'V');
  if (volts === undefined) return `Sound at ${told} or more. ${ruleOfThumb}`;
  return asShown(volts, 'V') >= asShown(floor, 'V')
    ? `Holds up: ${told} or more is sound. ${ruleOfThumb}`
    : `Below ${told}: worn out, if it was charged to 75 % or more. ${ruleOfThumb}`;
}

/** Volts of a 12 V battery over which a starter hardly draws, and over which none turns. */
const cranking = { floor: 9.6, light: 11.5 } as const;

function judgeCranking(system: SystemVolts, volts?: number): string {
  const [floor, light] = [forSystem(cranking.floor, system), forSystem(cranking.light, system)];
  const told = showReading(floor, 'V');
  if (volts === undefined) return `Sound at ${told} or more. ${ruleOfThumb}`;
  if (asShown(volts, 'V') < floor)
    return `Below ${told}: the battery is weak, or the starter or a stiff engine pulls a sound one down. Load-test the battery before it is blamed. ${ruleOfThumb}`;
  return volts > light
    ? `Hardly loaded: over ${showReading(light, 'V')} the starter draws little or nothing. If it turns slowly or not, look between battery and starter. ${ruleOfThumb}`
    : `Holds up under the starter: ${told} or more is sound. ${ruleOfThumb}`;
}

export const loadTest = makeFigure({
  name: 'load-test',
  family: 'battery',
  about: 'Half-CCA load test: the load to set and the volts a sound battery keeps.',
  inputs: {
    temperature: measured('temperature', batteryHeats, 'of the battery', { default: 70 }),
    battery: systemVolts,
    volts: optional('voltage', loadVolts, 'read under load after 15 s'),
    cca: optional('current', coldCranking, 'cold cranking amperes'),
    capacity: optional('charge', capacities, '20-hour capacity, if no CCA'),
  },
  outputs: {
    result: { unit: 'V', about: 'lowest sound volts under load' },
    load: { unit: 'A', about: 'current to set for 15 s' },
    coldCrankingEnd: { unit: 'V', about: 'end volts of the CCA rating (30 s at 0 F)' },
  },
  formula: 'load = CCA / 2, or 3 x Ah; volts from a table by temperature; 6 V: half',
  range:
    '0 to 120 F, 0 to 16 V, a 6 V battery to 8 V, battery charged to 75 % or more, reading taken under load',
  source: 'trade table, 9.6 V at 70 F published; 3 x Ah is common practice; SAE J537 as restated',
  mark: 'common practice',
  work: ({ battery: system, cca, capacity, temperature, volts }) => {
    const floor = loadTestFloor(temperature, system);
    const read = volts === undefined ? undefined : voltsOf(volts, system, loadVolts);
    const byCapacity = capacity === undefined ? undefined : 3 * capacity;
    return {
      values: {
        result: floor,
        load: cca === undefined ? byCapacity : cca / 2,
        coldCrankingEnd: forSystem(7.2, system),
      },
      verdict: judgeLoad(floor, read),
    };
  },
});

export const crankingVoltage = makeFigure({
  name: 'cranking-voltage',
  family: 'battery',
  about: 'Volts at the battery posts while the starter turns a warm engine.',
  inputs: {
    battery: systemVolts,
    volts: optional('voltage', loadVolts, 'read at the posts while cranking'),
  },
  outputs: { result: { unit: 'V', about: 'lowest sound volts' } },
  formula: '9.6 V; 6 V: half',
  range: 'warm engine, charged battery, 0 to 16 V, a 6 V one to 8 V',
  source: 'common practice, no source',
  mark: 'common practice',
  work: ({ battery: system, volts }) => ({
    values: { result: forSystem(cranking.floor, system) },
    verdict: judgeCranking(
      system,
      volts === undefined ? undefined : voltsOf(volts, system, loadVolts),
    ),
  }),
});

const minutes = span('minutes', 1, 1000, 'min');

/** Ampere-hours taken out in a reserve test, 25 A x minutes / 60. Worked example: 90 min: 37.5 Ah. */
export function reserveCapacity(time: number): number {
  return (25 * inSpan(time, minutes)) / 60;
}

export const reserve = makeFigure({
  name: 'reserve',
  family: 'battery',
  about: 'Reserve minutes told as ampere-hours, two ways that answer two questions.',
  inputs: {
    minutes: measured('time', minutes, 'reserve capacity: minutes at 25 A', { default: 90 }),
    battery: systemVolts,
  },
  outputs: {
    result: { unit: 'Ah', about: 'taken out at 25 A' },
    twentyHour: { unit: 'Ah', about: 'rule for the 20-hour capacity, 0.6 x minutes' },
    endVolts: { unit: 'V', about: 'end of the reserve test' },
  },
  formula: 'Ah = 25 x minutes / 60; 20-hour Ah = 0.6 x minutes; end 1.75 V a cell',
  range: '1 to 1000 minutes at 25 A, 80 F',
  source: 'SAE J537 as restated; 0.6 x minutes is common practice',
  mark: 'computed',
  work: ({ minutes: time, battery }) => ({
    values: {
      result: reserveCapacity(time),
      twentyHour: 0.6 * time,
      endVolts: 1.75 * (battery === '6' ? 3 : 6),
    },
    verdict: `The two differ because a slow discharge gives more. ${ruleOfThumb}`,
  }),
});
