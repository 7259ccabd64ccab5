import { chosen, measured } from './figure-words.ts';
import { makeFigure } from './figure.ts';
import { crossing } from './root.ts';
import { inSpan, span } from './span.ts';

const carbons = span('gas', 0, 25, '%');
const unburnt = span('hydrocarbons', 0, 20_000, 'ppm');
const oxides = span('nitric oxide', 0, 10_000, 'ppm');
const oxygens = span('oxygen', 0, 21, '%');
const lambdas = span('lambda', 0.6, 2, '');
const hydrogens = span('hydrogen', 0, 4, '');
const fuelOxygens = span('fuel oxygen', 0, 1, '');

/** Equilibrium constant of the water-gas reaction that the formula rests on. */
const waterGas = 3.5;
/** Nitrogen and the rest of air for one oxygen, and their mean mass. */
const airRest = 3.773;
const airRestMass = 28.16;

/** Hydrogen and oxygen for one carbon of the fuel. */
export type FuelMake = { readonly hydrogen: number; readonly oxygen: number };

/** Fuels by the constants in use; all from memory. */
const fuels: ReadonlyMap<string, FuelMake> = new Map([
  ['gasoline', { hydrogen: 1.7261, oxygen: 0.0175 }],
  ['directive', { hydrogen: 1.73, oxygen: 0.02 }],
  ['e5', { hydrogen: 1.89, oxygen: 0.016 }],
  ['plain', { hydrogen: 1.85, oxygen: 0 }],
]);

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
    fuel: chosen([...fuels.keys()], 'constants of the fuel', 'gasoline'),
    hydrogen: measured('ratio', hydrogens, 'H for one C, instead', { optional: true }),
    oxygen: measured('ratio', fuelOxygens, 'O for one C, instead', { optional: true }),
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
  work: (inputs) => {
    const gas = {
      co: inputs.number('co'),
      co2: inputs.number('co2'),
      o2: inputs.number('o2'),
      hc: inputs.number('hc'),
      no: inputs.number('no'),
    };
    const base = fuels.get(inputs.word('fuel')) ?? { hydrogen: 1.85, oxygen: 0 };
    const make = {
      hydrogen: inputs.maybe('hydrogen') ?? base.hydrogen,
      oxygen: inputs.maybe('oxygen') ?? base.oxygen,
    };
    const found = lambdaOf(gas, make, Number(inputs.word('hcFactor')));
    const carbon = gas.co + gas.co2;
    return { values: { result: found, carbon }, verdict: judgeLambda(found, carbon) };
  },
});

function judgeLambda(found: number, carbon: number): string {
  const word = found < 0.97 ? 'Rich' : found > 1.03 ? 'Lean or misfiring' : 'About right';
  const leak = carbon < 12 ? ' Little CO + CO2: air leaks into the exhaust or the probe.' : '';
  return `${word}.${leak} Good to about 0.02; the vehicle's own CO setting comes first.`;
}

/**
 * Air-fuel ratio by mass at which all is burnt: (1 + y/4 - z/2) x (32 + 3.773 x 28.16) /
 * (12.011 + 1.008 y + 16 z). Worked example: iso-octane (2.25, 0): 15.13.
 */
export function stoichiometric({ hydrogen, oxygen }: FuelMake): number {
  const y = inSpan(hydrogen, hydrogens);
  const z = inSpan(oxygen, fuelOxygens);
  return ((1 + y / 4 - z / 2) * (32 + airRest * airRestMass)) / (12.011 + 1.008 * y + 16 * z);
}

export type Burnt = { readonly co: number; readonly co2: number; readonly o2: number };

/**
 * Dry exhaust in percent at a lambda, all fuel burnt as far as the air goes: carbon, hydrogen and
 * oxygen balance with the water-gas equilibrium below 1, free oxygen above. Valid for lambda 0.6
 * to 2. Worked example: 0.95 with CH1.85: CO 1.81, CO2 14.13.
 */
export function exhaustAt(wanted: number, fuel: FuelMake): Burnt {
  const ratio = inSpan(wanted, lambdas);
  const y = inSpan(fuel.hydrogen, hydrogens);
  const z = inSpan(fuel.oxygen, fuelOxygens);
  const need = 1 + y / 4 - z / 2;
  const rest = airRest * ratio * need;
  if (ratio >= 1) {
    const free = (ratio - 1) * need;
    const total = 1 + free + rest;
    return { co: 0, co2: 100 / total, o2: (100 * free) / total };
  }
  const water = (co: number): number => z + 2 * ratio * need - 2 + co;
  const hydrogen = (co: number): number => y / 2 - water(co);
  const co = crossing((x) => x * water(x) - waterGas * (1 - x) * hydrogen(x), 0, 1);
  const total = 1 + hydrogen(co) + rest;
  return { co: (100 * co) / total, co2: (100 * (1 - co)) / total, o2: 0 };
}

export const mixture = makeFigure({
  name: 'mixture',
  family: 'fuel',
  about: 'Air-fuel ratio and ideal exhaust gas at a lambda.',
  inputs: {
    lambda: measured('ratio', lambdas, '1 is right, below 1 rich', { default: 1 }),
    hydrogen: measured('ratio', hydrogens, 'H for one C of the fuel', { default: 1.85 }),
    oxygen: measured('ratio', fuelOxygens, 'O for one C of the fuel', { default: 0 }),
  },
  outputs: {
    result: { unit: '1', about: 'air-fuel ratio by mass' },
    stoichiometric: { unit: '1', about: 'the same at lambda 1' },
    trade: { unit: '1', about: 'figure the trade uses for lambda 1' },
    co: { unit: '%', about: 'CO, dry' },
    co2: { unit: '%', about: 'CO2, dry' },
    o2: { unit: '%', about: 'O2, dry' },
  },
  formula: 'lambda x stoichiometric ratio; C, H, O balance with water-gas constant 3.5',
  range: 'lambda 0.6 to 2',
  source: 'mass balance, from memory; 14.7 is a trade figure that fits no fuel exactly',
  mark: 'computed',
  work: (inputs) => {
    const fuel = { hydrogen: inputs.number('hydrogen'), oxygen: inputs.number('oxygen') };
    const ratio = inputs.number('lambda');
    const right = stoichiometric(fuel);
    return {
      values: {
        result: ratio * right,
        stoichiometric: right,
        trade: 14.7,
        ...exhaustAt(ratio, fuel),
      },
      verdict: 'Judge by lambda or CO; the ratio depends on the fuel.',
    };
  },
});
