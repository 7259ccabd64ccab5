import { optional, ruleOfThumb } from '../../figure-words.ts';
import { notGiven } from '../../figure-inputs.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';

const leaks = span('leakage', 0, 100, '%');
const supplies = span('supply', 1, 200, 'psi');
const helds = span('held', 0, 200, 'psi');

/** Upper edges of the bands, percent: published; 20 % and 30 to 40 % are both in print as a limit. */
const bands = { good: 10, fair: 20, bad: 30 } as const;

/**
 * Leakage in percent from the pressures of a two-gauge tester: 100 x (supply - held) / supply.
 * RangeError if more is held than supplied. Worked example: 80 psi, 60 psi held: 25 %.
 */
export function leakageOf(supply: number, held: number): number {
  const given = inSpan(supply, supplies);
  return inSpan((100 * (given - inSpan(held, helds))) / given, leaks);
}

export const leakage = makeFigure({
  name: 'leakage',
  family: 'compression',
  about: 'Cylinder leakage and the band it falls in.',
  inputs: {
    leak: optional('ratio', leaks, 'as the tester shows it'),
    supply: optional('pressure', supplies, 'put in, two-gauge tester'),
    held: optional('pressure', helds, 'held, two-gauge tester'),
  },
  outputs: {
    result: { unit: '%', about: 'leakage' },
    good: { unit: '%', about: 'up to this it is good' },
    fair: { unit: '%', about: 'up to this it is fair' },
    bad: { unit: '%', about: 'above this it is bad' },
  },
  formula: '100 x (supply - held) / supply',
  range: '0 to 100 %',
  source: 'bands in print; testers differ, compare cylinders first',
  mark: 'common practice',
  work: ({ leak, supply, held }) => {
    const found = leak ?? leakageOf(supply ?? notGiven('supply'), held ?? notGiven('held'));
    return { values: { result: found, ...bands }, verdict: judgeLeak(found) };
  },
});

function judgeLeak(found: number): string {
  const listen =
    'Listen: carburetor, inlet valve; tailpipe, exhaust valve; filler, rings; radiator, gasket.';
  if (found <= bands.good) return `Good. ${ruleOfThumb}`;
  if (found <= bands.fair) return `Fair. ${listen} ${ruleOfThumb}`;
  return `${found > bands.bad ? 'Bad' : 'Poor'}. ${listen} ${ruleOfThumb}`;
}
