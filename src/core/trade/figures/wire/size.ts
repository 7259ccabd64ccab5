import { chosen, generalTable, measured, ruleOfThumb } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { lookUp } from '../../table.ts';
import { convert } from '../../units/units.ts';
import { currents, drops } from './drop.ts';
import { allowableAmps, engineSpace, insulations } from './tables.ts';
import { ohmsPerMetre, wireArea, wireHeats, wireLengths } from './wire.ts';

const ratedGauges = span('gauge', -3, 18, 'AWG');
const places = ['open', 'engine-space'] as const;

/**
 * Continuous amperes that a wire under 50 V may carry, by insulation rating (C) and place. Sizes
 * between those of the table count as the next thinner one. Valid for AWG 0000 (-3) to 18; starter
 * cables are exempt. Source: 33 CFR 183.425 table 5 (boats). Worked example: AWG 14, 105 C, engine
 * space: 29.75 A.
 */
export function allowableCurrent(gauge: number, insulation: number, place: string): number {
  inSpan(gauge, ratedGauges);
  const column = insulations.findIndex((each) => each === insulation);
  const row = allowableAmps.find(([size]) => size >= gauge);
  const amps = row?.[1][column];
  if (amps === undefined) {
    throw new RangeError(`insulation ${insulation} C is not one of ${insulations.join(', ')}.`);
  }
  return place === 'engine-space' ? amps * lookUp(engineSpace, insulation, 'insulation') : amps;
}

const insulation = chosen(
  insulations.map(String),
  'temperature rating of the insulation, C; old PVC: 60',
  '60',
);
const place = chosen(places, 'where the wire runs', 'engine-space');
const rating = '33 CFR 183.425 table 5 (boats), engine-space factors partly from memory';

export const wireCurrent = makeFigure({
  name: 'wire-current',
  family: 'wire',
  about: 'Continuous current that a wire may carry.',
  inputs: {
    gauge: measured('wire-gauge', ratedGauges, 'size of the wire'),
    insulation,
    place,
  },
  outputs: { result: { unit: 'A', about: 'continuous current' } },
  formula: 'table by size and insulation, times the engine-space factor',
  range: 'AWG 0000 to 18, under 50 V; not for starter cables',
  source: rating,
  mark: 'published',
  work: ({ gauge, insulation: heat, place: where }) => ({
    values: { result: allowableCurrent(gauge, Number(heat), where) },
    verdict: `Bundled or brittle wire carries less. ${generalTable}`,
  }),
});

const trade = [18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3];

export type RunWanted = {
  readonly current: number;
  /** Feet of wire in all, there and back if the return is a wire. */
  readonly length: number;
  readonly drop: number;
  readonly insulation: number;
  readonly place: string;
  readonly temperature: number;
};

/**
 * The thinnest trade size that neither loses more than `drop` nor carries more than it may.
 * RangeError when not even 0000 does. Source: Ohm's law and 33 CFR 183.425. Worked example: 30 A,
 * 15 ft, 0.36 V, 105 C insulation in the engine space: AWG 8.
 */
export function thinnestWire(run: RunWanted): number {
  const fits = trade.find(
    (gauge) =>
      runDrop(run, gauge) <= run.drop &&
      allowableCurrent(gauge, run.insulation, run.place) >= run.current,
  );
  if (fits === undefined) {
    throw new RangeError(
      `current ${run.current} A over ${run.length} ft needs more than AWG 0000.`,
    );
  }
  return fits;
}

function runDrop(run: RunWanted, gauge: number): number {
  const metres = convert(run.length, 'ft', 'm');
  const ohms = ohmsPerMetre({ gauge, kind: 'solid', temperature: run.temperature });
  return run.current * ohms * metres;
}

export const wireSize = makeFigure({
  name: 'wire-size',
  family: 'wire',
  about: 'Thinnest wire that carries a current over a length within an allowed drop.',
  inputs: {
    current: measured('current', currents, 'continuous'),
    length: measured('length', wireLengths, 'all the wire the current goes through'),
    drop: measured('voltage', drops, 'allowed', { default: 0.36 }),
    insulation,
    place,
    temperature: measured('temperature', wireHeats, 'of the wire', { default: 122 }),
  },
  outputs: {
    result: { unit: 'AWG', about: 'size of the wire' },
    area: { unit: 'mm2', about: 'the same as an area' },
    drop: { unit: 'V', about: 'volts lost in it' },
    allowed: { unit: 'A', about: 'continuous current it may carry' },
  },
  formula: 'thinnest size with I x R x length within the drop and I within the table',
  range: '0 to 2000 A, AWG 0000 to 18',
  source: `${rating}; IACS copper`,
  mark: 'computed',
  work: (inputs) => {
    const run = { ...inputs, insulation: Number(inputs.insulation) };
    const gauge = thinnestWire(run);
    return {
      values: {
        result: gauge,
        area: wireArea(gauge),
        drop: runDrop(run, gauge),
        allowed: allowableCurrent(gauge, run.insulation, run.place),
      },
      verdict: `Protect it at the source by a fuse or link no larger than it may carry. ${ruleOfThumb}`,
    };
  },
});
