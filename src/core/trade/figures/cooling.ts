import { airPressure, altitudes } from './air.ts';
import { generalTable, measured, optional, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { saturationPressure, saturationTemperature } from './steam.ts';
import { lookUp } from '../table.ts';
import type { Table } from '../table.ts';
import { convert } from '../units/units.ts';

const caps = span('cap', 0, 30, 'psi');
const glycols = span('glycol', 0, 70, '%');
const absolutes = span('pressure', 0.1, 3000, 'psi');

/** kg/m3 at 20 C and g/mol of water and ethylene glycol, from memory. */
const water = { density: 998.2, mole: 18.015 } as const;
const glycol = { density: 1113.5, mole: 62.068 } as const;

/** Share of molecules that are water in so many percent glycol by volume. Worked example: 50: 0.7554. */
export function waterFraction(percent: number): number {
  const part = inSpan(percent, glycols) / 100;
  const waterMoles = ((1 - part) * water.density) / water.mole;
  return waterMoles / (waterMoles + (part * glycol.density) / glycol.mole);
}

/**
 * Boiling point in F of coolant under an absolute pressure in psi: water by IAPWS-IF97, glycol by
 * Raoult's law (pressure over the water fraction), good to about 3 F. Valid for 0.1 to 3000 psi,
 * 0 to 70 % glycol. Worked example: 14.696 psi, plain water: 211.95 F.
 */
export function boilingPoint(pressure: number, percent = 0): number {
  const asWater = inSpan(pressure, absolutes) / waterFraction(percent);
  return convert(saturationTemperature(convert(asWater, 'psi', 'MPa')), 'K', 'F');
}

/** No temperature to open a cap at: far below boiling the system still holds pressure and scalds. */
const hotCap =
  'Never open a hot cap, at whatever temperature: wait until the top hose is cold to the hand. It is under pressure below its boiling point too.';

export const boilingPointFigure = makeFigure({
  name: 'boiling-point',
  family: 'cooling',
  about: 'Boiling point of the coolant under its cap at this altitude.',
  inputs: {
    cap: measured('pressure', caps, 'rating of the pressure cap', { default: 0 }),
    altitude: measured('length', altitudes, 'above sea level', { default: 0 }),
    glycol: measured('ratio', glycols, 'antifreeze by volume', { default: 0 }),
    pressure: optional('pressure', absolutes, 'absolute, instead of cap and altitude'),
  },
  outputs: {
    result: { unit: 'F', about: 'boils, cap holding' },
    capOff: { unit: 'F', about: 'boils with the cap off' },
    waterFraction: { unit: '1', about: 'share of molecules that are water' },
    rise: { unit: 'F/psi', about: 'mean rise for each psi of the cap' },
    rule: { unit: 'F/psi', about: 'rule of thumb in an army text; optimistic' },
  },
  formula: 'T of saturation at (air pressure + cap) / water fraction',
  range: 'caps 0 to 30 psi, -2000 to 36,000 ft, 0 to 70 % glycol',
  source: "IAPWS-IF97 region 4; Raoult's law, from memory; 3 F/psi US Army OD1001",
  mark: 'computed',
  work: ({ cap, glycol: percent, altitude, pressure }) => {
    const air = convert(airPressure(altitude), 'kPa', 'psi');
    const [hot, open] = [boilingPoint(pressure ?? air + cap, percent), boilingPoint(air, percent)];
    return {
      values: {
        result: hot,
        capOff: open,
        waterFraction: waterFraction(percent),
        rise: cap === 0 ? undefined : (hot - open) / cap,
        rule: 3,
      },
      verdict: hotCap,
    };
  },
});

export const steamPressure = makeFigure({
  name: 'steam-pressure',
  family: 'cooling',
  about: 'Pressure of hot plain water in a closed system.',
  inputs: { temperature: measured('temperature', span('temperature', 32.02, 700, 'F'), 'of it') },
  outputs: {
    result: { unit: 'psi', about: 'absolute' },
    gauge: { unit: 'psi', about: 'above the air at sea level; below 0 it does not boil' },
  },
  formula: 'IAPWS-IF97 region 4',
  range: '32.02 to 700 F',
  source: 'IAPWS-IF97, from memory, agrees with its check values',
  mark: 'published',
  work: ({ temperature }) => {
    const kelvin = convert(temperature, 'F', 'K');
    const absolute = convert(saturationPressure(kelvin), 'MPa', 'psi');
    return { values: { result: absolute, gauge: absolute - convert(101.325, 'kPa', 'psi') } };
  },
});

/**
 * Freezing point in C of ethylene glycol by percent of volume. 30, 50 and 60 % read in a trade
 * page (a mixture model gives -15.7, -37.1, -52.0); the others from memory.
 */
const freezing: Table = [
  [0, 0],
  [10, -4],
  [20, -9],
  [30, -17],
  [40, -24],
  [50, -37],
  [60, -48],
];

/** Freezing point in C; valid for 0 to 60 %. Worked example: 50 %: -37 C. */
export function coolantFreezes(percent: number): number {
  return lookUp(freezing, inSpan(percent, { ...glycols, high: 60 }), 'glycol');
}

export const coolantFreeze = makeFigure({
  name: 'coolant-freeze',
  family: 'cooling',
  about: 'Freezing point of the coolant by its share of antifreeze.',
  inputs: {
    glycol: measured('ratio', { ...glycols, high: 60 }, 'ethylene glycol by volume'),
  },
  outputs: { result: { unit: 'C', about: 'first ice' } },
  formula: 'table, straight between its rows',
  range: '0 to 60 % by volume; more than 68 % freezes sooner again',
  source: 'trade page for 30, 50, 60 %; others from memory; sources differ by up to 4 C',
  mark: 'published',
  work: ({ glycol: percent }) => ({
    values: { result: coolantFreezes(percent) },
    verdict: `Trust a tester over the recipe. ${generalTable}`,
  }),
});

const openings = span('opens', 100, 230, 'F');

export const thermostat = makeFigure({
  name: 'thermostat',
  family: 'cooling',
  about: 'Temperatures between which a thermostat opens.',
  inputs: { opens: measured('temperature', openings, 'stamped on it', { default: 180 }) },
  outputs: {
    result: { unit: 'F', about: 'fully open, middle of 20 to 25 F more' },
    opens: { unit: 'F', about: 'begins to open' },
    summer: { unit: 'F', about: 'summer or alcohol-antifreeze kind' },
  },
  formula: 'fully open = stamped + 20 to 25 F',
  range: '100 to 230 F',
  source: '180 F usual: US Army OD1001; the rest common practice',
  mark: 'common practice',
  work: ({ opens }) => ({
    values: { result: opens + 22.5, opens, summer: 160 },
    verdict: `Try it in a pot with a thermometer. ${ruleOfThumb}`,
  }),
});
