import { measured, optional } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { fuelOxygens, hydrogens, waterGas } from './lambda.ts';
import type { FuelMake } from './lambda.ts';
import { crossing } from '../root.ts';
import { inSpan, span } from '../span.ts';

const lambdas = span('lambda', 0.6, 2, '');
const richGases = span('CO', 0, 14, '%');

/** Nitrogen and the rest of air for one oxygen, and their mean mass. */
const airRest = 3.773;
const airRestMass = 28.16;

/**
 * Air-fuel ratio by mass at which all is burnt: (1 + y/4 - z/2) x (32 + 3.773 x 28.16) /
 * (12.011 + 1.008 y + 16 z). Valid for 0 to 4 hydrogen and 0 to 1 oxygen a carbon. Source: mass
 * balance, from memory. Worked example: iso-octane (2.25, 0): 15.13.
 */
export function stoichiometric({ hydrogen, oxygen }: FuelMake): number {
  const y = inSpan(hydrogen, hydrogens);
  const z = inSpan(oxygen, fuelOxygens);
  return (oxygenNeed(y, z) * (32 + airRest * airRestMass)) / (12.011 + 1.008 * y + 16 * z);
}

function oxygenNeed(y: number, z: number): number {
  return 1 + y / 4 - z / 2;
}

export type Burnt = { readonly co: number; readonly co2: number; readonly o2: number };

/**
 * Dry exhaust in percent at a lambda, all fuel burnt as far as the air goes: carbon, hydrogen and
 * oxygen balance with the water-gas equilibrium below 1, free oxygen above. Valid for lambda 0.6
 * to 2. Source: computed; two published points agree within 0.1 % CO. Worked example: 0.95 with
 * CH1.85: CO 1.81, CO2 14.13.
 */
export function exhaustAt(wanted: number, fuel: FuelMake): Burnt {
  const ratio = inSpan(wanted, lambdas);
  const y = inSpan(fuel.hydrogen, hydrogens);
  const z = inSpan(fuel.oxygen, fuelOxygens);
  const need = oxygenNeed(y, z);
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

/**
 * Lambda at which a sound engine would show so much CO in percent; for none it is 1 or more, told
 * as 1. Valid for 0 % to what lambda 0.6 makes. Worked example: 3.5 % with CH1.85: 0.905.
 */
export function lambdaForCo(co: number, fuel: FuelMake): number {
  const wanted = inSpan(co, richGases);
  return crossing((ratio) => exhaustAt(ratio, fuel).co - wanted, lambdas.low, 1);
}

export const mixture = makeFigure({
  name: 'mixture',
  family: 'fuel',
  about: 'Ideal exhaust gas and air-fuel ratio at a lambda, or the lambda that a CO reading means.',
  inputs: {
    lambda: measured('ratio', lambdas, '1 is right, below 1 rich', { default: 1 }),
    co: optional('ratio', richGases, 'read, instead of lambda; no misfire, no air leak'),
    hydrogen: measured('ratio', hydrogens, 'H for one C of the fuel', { default: 1.85 }),
    oxygen: measured('ratio', fuelOxygens, 'O for one C of the fuel', { default: 0 }),
  },
  outputs: {
    result: { unit: '1', about: 'lambda' },
    co: { unit: '%', about: 'CO, dry' },
    co2: { unit: '%', about: 'CO2, dry' },
    o2: { unit: '%', about: 'O2, dry' },
    airFuel: { unit: '1', about: 'air-fuel ratio by mass for that fuel' },
    stoichiometric: { unit: '1', about: 'the same at lambda 1' },
    trade: { unit: '1', about: 'figure the trade uses for lambda 1' },
  },
  formula: 'C, H, O balance with water-gas constant 3.5; lambda x stoichiometric ratio',
  range: 'lambda 0.6 to 2, CO 0 to what lambda 0.6 makes',
  source: 'mass balance, from memory; 14.7 is a trade figure that fits no fuel exactly',
  mark: 'computed',
  work: ({ lambda, co: read, ...fuel }) => {
    const ratio = read === undefined ? lambda : lambdaForCo(read, fuel);
    const right = stoichiometric(fuel);
    return {
      values: {
        result: ratio,
        ...exhaustAt(ratio, fuel),
        airFuel: ratio * right,
        stoichiometric: right,
        trade: 14.7,
      },
      verdict: 'Judge by lambda or CO; the air-fuel ratio depends on the fuel.',
    };
  },
});
