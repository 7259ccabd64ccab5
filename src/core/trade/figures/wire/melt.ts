import { measured, optional, ruleOfThumb } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { convert } from '../../units/units.ts';
import { currents } from './drop.ts';
import { areaOf, areas, gauges, wireArea } from './wire.ts';

const links = span('gauge', -3, 20, 'AWG');
const steps = span('steps', 1, 10, '');
const times = span('time', 0.01, 10, 's');
const ambients = span('ambient', -60, 200, 'C');
const mils = span('area', 1, 400_000, 'cmil');
const flows = span('current', 0.01, 1e6, 'A');

const meltingPoint = 1083;
const noResistance = 234;

/**
 * AWG number of the fusible link for a wire: four numbers thinner (two even trade sizes). Valid
 * for wires 0000 to 20. Common practice, no source. Worked example: an AWG 12 wire takes 16.
 */
export function fuseLinkGauge(gauge: number, thinner = 4): number {
  return inSpan(gauge, links) + inSpan(thinner, steps);
}

/** Area of a wire over that of one so many numbers thinner, 92^(2n/39). Worked example: 4: 2.528. */
export function gaugeAreaRatio(thinner: number): number {
  return 92 ** ((2 * inSpan(thinner, steps)) / 39);
}

/**
 * Amperes that melt a copper wire of so many circular mils in so many seconds (Onderdonk):
 * A x sqrt(log10((1083 - Ta) / (234 + Ta) + 1) / (33 t)). No heat is lost in it, so it holds for
 * 0.01 to 10 s only. Source: from memory, with the sign of 234 + Ta as derived, not as misprinted.
 * Worked example: 4106.8 cmil, 10 s, 40 C: 186.7 A.
 */
export function meltingAmps(circularMils: number, seconds: number, ambient: number): number {
  return inSpan(circularMils, mils) * Math.sqrt(meltTerm(ambient) / (33 * inSpan(seconds, times)));
}

/** Onderdonk for the time. Worked example: 4106.8 cmil at 400 A from 25 C: 2.256 s. */
export function meltingSeconds(circularMils: number, amps: number, ambient: number): number {
  const area = inSpan(circularMils, mils);
  const seconds = (area ** 2 * meltTerm(ambient)) / (33 * inSpan(amps, flows) ** 2);
  return inSpan(seconds, times);
}

function meltTerm(ambient: number): number {
  const celsius = inSpan(ambient, ambients);
  return Math.log10((meltingPoint - celsius) / (noResistance + celsius) + 1);
}

/**
 * Diameter in inches of the copper wire that a steady current in free air melts (Preece):
 * (I / 10244)^(2/3). Valid for 1 to 500 A. Source: a published fuse table that follows it.
 * Worked example: 30 A melts 0.0205 in.
 */
export function meltingDiameter(amps: number): number {
  return (inSpan(amps, span('current', 1, 500, 'A')) / 10_244) ** (2 / 3);
}

const sizeInputs = {
  gauge: optional('wire-gauge', gauges, 'size of the wire'),
  area: optional('area', areas, 'instead of the gauge'),
  ambient: measured('temperature', ambients, 'of the wire before', { default: 25 }),
};

function circularMilsOf(gauge?: number, area?: number): number {
  return convert(areaOf(gauge, area), 'mm2', 'cmil');
}

export const fuseLink = makeFigure({
  name: 'fuse-link',
  family: 'wire',
  about: 'Size of the fusible link that protects a wire.',
  inputs: {
    gauge: measured('wire-gauge', links, 'of the protected wire'),
    steps: measured('count', steps, 'AWG numbers thinner', { default: 4 }),
  },
  outputs: {
    result: { unit: 'AWG', about: 'size of the link' },
    area: { unit: 'mm2', about: 'its area' },
    areaRatio: { unit: '1', about: 'area of the wire over that of the link' },
  },
  formula: 'link AWG = wire AWG + 4',
  range: 'wires of AWG 0000 to 20',
  source: 'common practice, no source',
  mark: 'common practice',
  work: ({ steps: thinner, gauge }) => {
    const link = fuseLinkGauge(gauge, thinner);
    return {
      values: { result: link, area: wireArea(link), areaRatio: gaugeAreaRatio(thinner) },
      verdict: `Link wire only, about 6 to 9 in long; find the short before fitting it. ${ruleOfThumb}`,
    };
  },
});

export const meltingCurrent = makeFigure({
  name: 'melting-current',
  family: 'wire',
  about: 'Current that melts a copper wire in a given time.',
  inputs: { ...sizeInputs, time: measured('time', times, 'until it melts', { default: 5 }) },
  outputs: {
    result: { unit: 'A', about: 'melts it in that time' },
    steady: { unit: 'A', about: 'melts it in the end, in free air' },
  },
  formula: 'Onderdonk: A x sqrt(log10((1083 - Ta)/(234 + Ta) + 1)/(33 t)); Preece: 10244 d^1.5',
  range: '0.01 to 10 s, -60 to 200 C',
  source: "Onderdonk's and Preece's equations, from memory; Preece agrees with a published table",
  mark: 'from memory',
  work: ({ gauge, area, ambient, time }) => {
    const mil = circularMilsOf(gauge, area);
    const inches = Math.sqrt(mil) / 1000;
    return {
      values: { result: meltingAmps(mil, time, ambient), steady: 10_244 * inches ** 1.5 },
    };
  },
});

export const meltingTime = makeFigure({
  name: 'melting-time',
  family: 'wire',
  about: 'Time until a current melts a copper wire.',
  inputs: { ...sizeInputs, current: measured('current', currents, 'through the wire') },
  outputs: { result: { unit: 's', about: 'until it melts' } },
  formula: 't = A^2 x log10((1083 - Ta)/(234 + Ta) + 1) / (33 I^2)',
  range: 'answers of 0.01 to 10 s, -60 to 200 C',
  source: "Onderdonk's equation, from memory",
  mark: 'from memory',
  work: ({ gauge, area, ambient, current }) => ({
    values: { result: meltingSeconds(circularMilsOf(gauge, area), current, ambient) },
  }),
});

export const meltingSize = makeFigure({
  name: 'melting-size',
  family: 'wire',
  about: 'Copper wire that a steady current melts in free air.',
  inputs: { current: measured('current', span('current', 1, 500, 'A'), 'steady') },
  outputs: { result: { unit: 'in', about: 'diameter' } },
  formula: 'd = (I / 10244)^(2/3)',
  range: '1 to 500 A',
  source: "Preece's equation as a published fuse table follows it",
  mark: 'published',
  work: ({ current }) => ({ values: { result: meltingDiameter(current) } }),
});
