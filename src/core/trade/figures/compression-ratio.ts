import { sweptVolume } from './compression.ts';
import { measured, optional } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { convert } from '../units/units.ts';

const sizes = span('size', 0.1, 12, 'in');
const gaps = span('thickness', -0.2, 0.5, 'in');
const chambers = span('chamber', 1, 2000, 'ml');
const dishes = span('dish', -500, 500, 'ml');

/** Volumes of one cylinder in ml. */
export type CylinderVolumes = { readonly swept: number; readonly clearance: number };

/**
 * Compression ratio: (swept + clearance) / clearance, volumes of one cylinder in ml. RangeError
 * when nothing is left above the piston. Source: definition. Worked example: 720.74 and 81.35 ml:
 * 9.86.
 */
export function compressionRatioOf({ swept, clearance }: CylinderVolumes): number {
  if (!(clearance > 0))
    throw new RangeError(`clearance ${clearance} ml leaves no room to burn in.`);
  return (inSpan(swept, span('swept', 1, 20_000, 'ml')) + clearance) / clearance;
}

export const compressionRatio = makeFigure({
  name: 'compression-ratio',
  family: 'compression',
  about: 'Compression ratio from bore, stroke and the room above the piston.',
  inputs: {
    bore: measured('length', sizes, 'of the cylinder'),
    stroke: measured('length', sizes, 'of the piston'),
    chamber: measured('volume', chambers, 'of the chamber in the head'),
    gasket: measured('length', gaps, 'thickness of the gasket, crushed', { default: 0.04 }),
    gasketBore: optional('length', sizes, 'of the hole in the gasket; the bore if left out'),
    deck: measured('length', gaps, 'piston below the deck at top; above: -0.01', { default: 0 }),
    dish: measured('volume', dishes, 'of the piston; a dome is below zero', { default: 0 }),
  },
  outputs: {
    result: { unit: '1', about: 'compression ratio, to one' },
    swept: { unit: 'ml', about: 'swept volume of one cylinder' },
    clearance: { unit: 'ml', about: 'room above the piston at top' },
  },
  formula: '(swept + clearance) / clearance; clearance = chamber + gasket + deck + dish',
  range: '0.1 to 12 in, chamber 1 to 2000 ml',
  source: 'definition and geometry',
  mark: 'computed',
  work: ({ bore, gasketBore, stroke, chamber, gasket, deck, dish }) => {
    const hole = gasketBore ?? bore;
    const swept = convert(sweptVolume(bore, stroke, 1), 'in3', 'ml');
    const clearance = chamber + disc(hole, gasket) + disc(bore, deck) + dish;
    return {
      values: { result: compressionRatioOf({ swept, clearance }), swept, clearance },
      verdict: 'Measure the chamber with a burette: printed volumes are off after a skim.',
    };
  },
});

/** ml of a flat disc, from inches. */
const disc = (across: number, height: number): number =>
  convert((Math.PI / 4) * across ** 2 * height, 'in3', 'ml');
