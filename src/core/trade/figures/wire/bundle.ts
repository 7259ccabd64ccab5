import { generalTable, measured } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';

/** Share of its current that each of so many loaded wires in a bundle may carry. */
const bundles: readonly (readonly [most: number, share: number])[] = [
  [3, 1],
  [6, 0.8],
  [9, 0.7],
  [20, 0.5],
  [30, 0.45],
  [40, 0.4],
  [100, 0.35],
];

const wires = span('wires', 1, 100, '');
const airs = span('air', -40, 125, 'C');
const insulations = span('insulation', 60, 200, 'C');
const rated = span('current', 0, 1000, 'A');
/** C of the air for which the tables of allowable current hold. */
const tableAir = 30;

/**
 * Share of its current that each wire of a bundle may carry when all are loaded for long. Valid for
 * 1 to 100 wires. Source: NEC 2014 table 310.15(B)(3)(a) (buildings), read in a copy. Worked
 * example: 8 wires: 0.7.
 */
export function bundleShare(count: number): number {
  const row = bundles.find(([most]) => inSpan(count, wires) <= most);
  if (row === undefined) throw new RangeError(`wires ${count} is outside 1 to 100.`);
  return row[1];
}

/**
 * Share of its current that a wire may carry in hot air: sqrt((insulation - air) / (insulation -
 * 30)), all in C; never more than 1. RangeError at and above what the insulation bears. Source: the
 * NEC equation for other temperatures, from memory. Worked example: 60 C insulation in 50 C: 0.577.
 */
export function hotShare(insulation: number, air: number): number {
  const left = inSpan(insulation, insulations) - inSpan(air, airs);
  if (left <= 0) throw new RangeError(`air ${air} C leaves ${insulation} C insulation nothing.`);
  return Math.min(1, Math.sqrt(left / (insulation - tableAir)));
}

export const wireDerating = makeFigure({
  name: 'wire-derating',
  family: 'wire',
  about: 'Current left to a wire that runs bundled or through hot air for long.',
  inputs: {
    current: measured('current', rated, 'it may carry alone in mild air (wire-current, open)'),
    wires: measured('count', wires, 'loaded wires in the bundle', { default: 1 }),
    air: measured('temperature', airs, 'around the wire', { default: tableAir }),
    insulation: measured('temperature', insulations, 'rating; old PVC: 60 C', { default: 60 }),
  },
  outputs: {
    result: { unit: 'A', about: 'current left to each wire' },
    bundle: { unit: '1', about: 'share left by the bundle' },
    heat: { unit: '1', about: 'share left by the heat' },
  },
  formula: 'current x bundle share x sqrt((insulation - air) / (insulation - 30 C))',
  range: '1 to 100 wires, air below the rating of the insulation',
  source: 'NEC 2014 table 310.15(B)(3)(a), read in a copy; its heat equation from memory',
  mark: 'published',
  work: ({ current, wires: count, air, insulation }) => {
    const bundle = bundleShare(count);
    const heat = hotShare(insulation, air);
    return {
      values: { result: current * bundle * heat, bundle, heat },
      verdict: `Made for buildings; short loads heat less. ${generalTable}`,
    };
  },
});
