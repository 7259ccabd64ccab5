import { chosen, measured, namesOf, optional } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';

const carbons = span('gas', 0, 25, '%');
const unburnt = span('hydrocarbons', 0, 20_000, 'ppm');
const oxides = span('nitric oxide', 0, 10_000, 'ppm');
const oxygens = span('oxygen', 0, 21, '%');
export const hydrogens = span('hydrogen', 0, 4, '');
export const fuelOxygens = span('fuel oxygen', 0, 1, '');

/** Equilibrium constant of the water-gas reaction that the formula rests on. */
export const waterGas = 3.5;
/** Hydrogen and oxygen for one carbon of the fuel. */
export type FuelMake = { readonly hydrogen: number; readonly oxygen: number };

/** Fuels by the constants in use; all from memory. */
const fuels = {
  gasoline: { hydrogen: 1.7261, oxygen: 0.0175 },
  directive: { hydrogen: 1.73, oxygen: 0.02 },
  e5: { hydrogen: 1.89, oxygen: 0.016 },
  plain: { hydrogen: 1.85, oxygen: 0 },
} as const satisfies Readonly<Record<string, FuelMake>>;

/** Dry exhaust gas: CO, CO2, O2 in percent, HC as ppm hexane, NO in ppm. */
export type Exhaust = {
  readonly co: number;
  readonly co2: number;
  readonly o2: number;
  readonly hc: number;
  readonly no: number;
};

/**
 * Lambda from a dry exhaust analysis (Brettschneider). `hcFactor` 6 turns hexane into carbon; 12
 * also makes up for what the analyzer does not see. RangeError when CO + CO2 is below 6 %, the
 * limit at which a sample is void. Source: structure read, constants from memory. Worked example:
 * CO 3.5, CO2 12.5, O2 0.8, HC 300, older gasoline: 0.9254.
 */
export function lambdaOf(gas: Exhaust, fuel: FuelMake, hcFactor: number): number {
  const carbon = checkedCarbon(gas);
  const quarter = inSpan(fuel.hydrogen, hydrogens) / 4;
  const half = inSpan(fuel.oxygen, fuelOxygens) / 2;
  const water = quarter * (waterGas / (waterGas + gas.co / gas.co2)) - half;
  const free = inSpan(gas.o2, oxygens) + inSpan(gas.no, oxides) / 20_000;
  const burnt = carbon + (hcFactor * inSpan(gas.hc, unburnt)) / 10_000;
  return (gas.co2 + gas.co / 2 + free + water * carbon) / ((1 + quarter - half) * burnt);
}

function checkedCarbon(gas: Exhaust): number {
  const carbon = inSpan(gas.co, carbons) + inSpan(gas.co2, { ...carbons, low: 0.1 });
  return inSpan(carbon, span('CO + CO2', 6, 25, '%'));
}

const gasInput = (about: string, range = carbons) => measured('ratio', range, about);

export const lambda = makeFigure({
  name: 'lambda',
  family: 'fuel',
  about: 'Lambda from a four-gas exhaust analysis, before any air-fuel ratio.',
  inputs: {
    co: gasInput('CO, % volume dry'),
    co2: gasInput('CO2, % volume dry'),
    o2: measured('ratio', oxygens, 'O2, % volume', { default: 0 }),
    hc: measured('ratio', unburnt, 'HC as hexane, ppm', { default: 0 }),
    no: measured('ratio', oxides, 'NO, ppm', { default: 0 }),
    fuel: chosen(namesOf(fuels), 'constants of the fuel', 'gasoline'),
    hydrogen: optional('ratio', hydrogens, 'H for one C, instead'),
    oxygen: optional('ratio', fuelOxygens, 'O for one C, instead'),
    hcFactor: chosen(['6', '12'], 'what HC is multiplied by', '6'),
  },
  outputs: {
    result: { unit: '1', about: 'lambda: 1 is right, below 1 rich' },
    carbon: { unit: '%', about: 'CO + CO2; below 12 % look for an air leak' },
  },
  formula: 'Brettschneider, water-gas constant 3.5',
  range: 'CO + CO2 6 to 25 %, O2 0 to 21 %, HC to 20,000 ppm',
  source: 'formula read on several pages; fuel constants from memory; void limit 40 CFR 85.2213',
  mark: 'from memory',
  work: ({ fuel, hydrogen, oxygen, hcFactor, ...gas }) => {
    const base = fuels[fuel];
    const make = { hydrogen: hydrogen ?? base.hydrogen, oxygen: oxygen ?? base.oxygen };
    const found = lambdaOf(gas, make, Number(hcFactor));
    const carbon = gas.co + gas.co2;
    return { values: { result: found, carbon }, verdict: judgeLambda(found, carbon) };
  },
});

function judgeLambda(found: number, carbon: number): string {
  const word = found < 0.97 ? 'Rich' : found > 1.03 ? 'Lean or misfiring' : 'About right';
  const leak = carbon < 12 ? ' Little CO + CO2: air leaks into the exhaust or the probe.' : '';
  return `${word}.${leak} Good to about 0.02; the vehicle's own CO setting comes first.`;
}
