import { measured, optional, ruleOfThumb, systemVolts } from '../../figure-words.ts';
import { notGiven } from '../../figure-inputs.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { convert, showReading } from '../../units/units.ts';
import { gauges, ohmsPerMetre, wireHeats, wireLengths } from '../wire/wire.ts';

const drops = span('drop', 0, 5, 'V');
const cableOhms = span('resistance', 1e-6, 1, 'ohm');
const cranked = span('volts', 1, 16, 'V');

/** Amperes that a warm engine's starter usually draws on 12 V; on 6 V about twice as much. */
const usual = { low: 80, high: 250 } as const;

/**
 * Amperes that a starter draws, from the volts lost over a length of its sound cable: drop /
 * resistance. Source: Ohm's law. Worked example: 0.1172 V over 5 ft of AWG 2 (0.78 milliohm): 150 A.
 */
export function starterAmps(drop: number, ohms: number): number {
  return inSpan(drop, drops) / inSpan(ohms, cableOhms);
}

export const starterDraw = makeFigure({
  name: 'starter-draw',
  family: 'battery',
  about: 'Current a starter draws, from the volts lost along its own cable while it cranks.',
  inputs: {
    drop: measured('voltage', drops, 'between two places of the bare cable, no joint between'),
    length: optional('length', wireLengths, 'of cable between them'),
    gauge: optional('wire-gauge', gauges, 'of the cable'),
    resistance: optional('resistance', cableOhms, 'instead of length and gauge'),
    temperature: measured('temperature', wireHeats, 'of the cable', { default: 68 }),
    volts: optional('voltage', cranked, 'at the starter while cranking'),
    battery: systemVolts,
  },
  outputs: {
    result: { unit: 'A', about: 'current of the starter' },
    power: { unit: 'W', about: 'power it takes' },
    low: { unit: 'A', about: 'lower end of what is usual, warm engine' },
    high: { unit: 'A', about: 'upper end' },
  },
  formula: 'I = drop / resistance of that much cable',
  range: '0 to 5 V; the cable must be sound and its size known',
  source: "Ohm's law, IACS copper; usual draw is common practice",
  mark: 'computed',
  work: ({ drop, length, gauge, resistance, temperature, volts, battery }) => {
    const ohms = resistance ?? cableOhmsOf({ length, gauge, temperature });
    const amps = starterAmps(drop, ohms);
    const part = battery === '6' ? 2 : 1;
    const [low, high] = [usual.low * part, usual.high * part];
    return {
      values: { result: amps, power: volts === undefined ? undefined : amps * volts, low, high },
      verdict: judgeDraw(amps, low, high),
    };
  },
});

function judgeDraw(amps: number, low: number, high: number): string {
  const told = `${showReading(low, 'A')} to ${showReading(high, 'A')} is usual on a warm engine`;
  if (amps < low) return `Little: ${told}; a bad joint or brushes hold it back. ${ruleOfThumb}`;
  if (amps > high)
    return `Much: ${told}; the starter drags or shorts, or the engine is stiff. ${ruleOfThumb}`;
  return `Usual: ${told}. ${ruleOfThumb}`;
}

type Cable = {
  readonly length: number | undefined;
  readonly gauge: number | undefined;
  readonly temperature: number;
};

function cableOhmsOf({ length, gauge, temperature }: Cable): number {
  const metres = convert(length ?? notGiven('length'), 'ft', 'm');
  const size = gauge ?? notGiven('gauge');
  return ohmsPerMetre({ gauge: size, kind: 'solid', temperature }) * metres;
}
