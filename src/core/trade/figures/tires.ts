import type { Mark } from '../figure.ts';
import { makeFigure } from '../figure.ts';

/** What a tire's size says of its height, and how sure that is. */
type TireRule = {
  readonly size: RegExp;
  /** Section height over the width written in the size. */
  readonly height: (aspect: string) => number;
  readonly unit: 'mm' | 'in';
  readonly source: string;
  readonly mark: Mark;
};

const fromMemory =
  'usual for sizes of that kind, from memory, good to about 2 %: measure if it matters';

/** The first rule whose form a size has holds: width, aspect if it is written, rim in inches. */
const rules: readonly TireRule[] = [
  {
    size: /^(?:[A-Z]{1,2})?(?<width>\d{3})\/(?<aspect>\d{2})\s*[A-Z]{0,2}-?\s*(?<rim>\d{2})$/i,
    height: (aspect) => Number(aspect) / 100,
    unit: 'mm',
    source: 'definition of the size, from memory',
    mark: 'computed',
  },
  {
    // Radials without an aspect, 165R13, 165SR13: about 80 %.
    size: /^(?<width>1[2-9][05]|2[0-4][05])\s*(?:[SHV]?R|-)\s*(?<rim>1\d)$/i,
    height: () => 0.8,
    unit: 'mm',
    source: fromMemory,
    mark: 'from memory',
  },
  {
    // Crossply of the later sixties, 7.35-14, 7.75-15: width ends in 5, about 82 %.
    size: /^(?<width>[5-9]\.\d5)\s*[-x]\s*(?<rim>\d{2})$/,
    height: () => 0.82,
    unit: 'in',
    source: fromMemory,
    mark: 'from memory',
  },
  {
    // Small crossply, 6.00-13, 5.20-12: about 88 %.
    size: /^(?<width>[4-7]\.\d0)\s*[-x]\s*(?<rim>1[0-3])$/,
    height: () => 0.88,
    unit: 'in',
    source: fromMemory,
    mark: 'from memory',
  },
  {
    // Full-section crossply, 6.50-16, 7.00-15: about as high as wide.
    size: /^(?<width>[4-9]\.[05]0)\s*[-x]\s*(?<rim>1[4-9]|2\d)$/,
    height: () => 1,
    unit: 'in',
    source: fromMemory,
    mark: 'from memory',
  },
  {
    // Low-section crossply, 6.70-15, 5.60-15: about 95 %.
    size: /^(?<width>[4-9]\.\d0)\s*[-x]\s*(?<rim>1[4-9])$/,
    height: () => 0.95,
    unit: 'in',
    source: fromMemory,
    mark: 'from memory',
  },
];

/** Sizes of the seventies by load and aspect, E70-14, FR78-15. No table of them was found that can be named. */
const lettered = /^[A-N]R?\d{2}\s*-?\s*\d{2}$/i;

export type TireFound = {
  /** Inches, not loaded. */
  readonly diameter: number;
  readonly source: string;
  readonly mark: Mark;
};

/**
 * Diameter of a tire from its size: rim + 2 x width x aspect. Metric sizes tell their aspect;
 * 165R13, 6.50-16, 6.70-15 and 7.35-14 do not, and take what is usual for their kind. RangeError
 * for a size that cannot be read; letters as in E70-14 tell the load and no size. Worked examples:
 * 275/60R15: 27.992 in; 165R13: 23.39 in; 6.50-16: 29 in.
 */
export function tireOf(size: string): TireFound {
  for (const { size: form, height, unit, source, mark } of rules) {
    const { width, aspect = '', rim } = form.exec(size.trim())?.groups ?? {};
    if (width === undefined || rim === undefined) continue;
    const wide = Number(width) / (unit === 'mm' ? 25.4 : 1);
    return { diameter: Number(rim) + 2 * wide * height(aspect), source, mark };
  }
  throw new RangeError(
    lettered.test(size.trim())
      ? `tire "${size}": its letter tells a load, and only the maker's table the width for it. Measure the tire, or give its diameter where one is asked.`
      : `tire "${size}" is not a size such as 275/60R15, 165R13, 6.50-16 or 7.35-14.`,
  );
}

export const tireSize = makeFigure({
  name: 'tire-size',
  family: 'road',
  about: 'Diameter of a tire from its size.',
  inputs: {
    tire: { quantity: 'text', unit: '', about: 'such as 275/60R15, 165R13, 6.50-16, 7.35-14' },
  },
  outputs: {
    result: { unit: 'in', about: 'diameter, not loaded' },
    turns: { unit: '1/mile', about: 'turns a mile' },
  },
  formula: 'rim + 2 x width x aspect / 25.4; 80, 82, 88, 95 or 100 % where none is written',
  range: 'metric sizes, 165R13, 6.50-16, 6.70-15, 7.35-14; no letter sizes',
  source: 'definition of the size, from memory; sizes without an aspect: usual ones, from memory',
  mark: 'computed',
  work: ({ tire }) => {
    const { diameter, source, mark } = tireOf(tire);
    return {
      values: { result: diameter, turns: 63_360 / (Math.PI * diameter) },
      source,
      mark,
    };
  },
});
