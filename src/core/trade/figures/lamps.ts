import { chosen, generalTable, measured, optional, ruleOfThumb } from '../figure-words.ts';
import { notGiven } from '../figure-inputs.ts';
import { makeFigure } from '../figure.ts';
import { lamps } from './lamp-tables.ts';
import type { LampRow } from './lamp-tables.ts';
import { inSpan, span } from '../span.ts';

const watts = span('power', 0, 1000, 'W');
const volts = span('volts', 1, 60, 'V');

/**
 * Lamp current goes with the 0.55th power of the volts: the usual law of rerating. Source: the open
 * encyclopedia's article on lamp rerating (read), which cites a maker's pages and a handbook.
 */
export const lampExponent = 0.55;

/** Amperes of a lamp at its design volts, W / V. Worked example: 60 W at 12.8 V: 4.6875 A. */
export function lampAmps(power: number, design: number): number {
  return inSpan(power, watts) / inSpan(design, volts);
}

/** Amperes at other volts than the design ones. Worked example: 2.1 A of 12.8 V, at 6.4 V: 1.434 A. */
export function lampAmpsAt(design: { amps: number; volts: number }, actual: number): number {
  return design.amps * (inSpan(actual, volts) / inSpan(design.volts, volts)) ** lampExponent;
}

export const lampCurrent = makeFigure({
  name: 'lamp-current',
  family: 'charging',
  about: 'Current of a lamp, by its designation or its watts.',
  inputs: {
    lamp: chosen(
      ['other', ...lamps.keys()],
      'designation, or other with power and design',
      'other',
    ),
    power: optional('power', watts, 'of another lamp'),
    design: measured('voltage', volts, 'for which the power holds', { default: 12.8 }),
    actual: optional('voltage', volts, 'at the lamp'),
  },
  outputs: {
    result: { unit: 'A', about: 'current at design volts' },
    design: { unit: 'V', about: 'design volts' },
    power: { unit: 'W', about: 'rated power' },
    most: { unit: 'W', about: 'largest power at 13.5 V' },
    actual: { unit: 'A', about: 'current at the actual volts' },
  },
  formula: 'I = W / V; I at other volts with the 0.55th power of the ratio',
  range: '0 to 1000 W, 1 to 60 V',
  source: 'ANSI and SAE lamp lists, from memory; UN R37: H1, H3, P21W read, others from memory',
  mark: 'from memory',
  work: ({ lamp, power, design, actual }) => {
    const row: LampRow = lamps.get(lamp) ?? { volts: design, watts: power ?? notGiven('power') };
    const amps = 'amps' in row ? row.amps : lampAmps(row.watts, row.volts);
    return {
      values: {
        result: amps,
        design: row.volts,
        power: 'watts' in row ? row.watts : amps * row.volts,
        most: 'watts' in row ? row.most : undefined,
        actual: actual === undefined ? undefined : lampAmpsAt({ amps, volts: row.volts }, actual),
      },
      verdict: `Cold it has a tenth of the resistance: size no fuse by an ohmmeter. ${generalTable}`,
    };
  },
});

const outputs = span('rating', 0.1, 300, 'A');
const loads = span('load', 0, 300, 'A');
const ripples = span('ripple', 0, 20, 'V');

/** Share of its rating that a sound charging machine gives: common practice. */
const soundShare = 0.9;

/**
 * Amperes left for the battery: 0.9 x rating less the loads. Common practice. Worked example:
 * 35 A and loads of 10, 8 and 4 A: 9.5 A.
 */
export function chargeLeft(rating: number, drawn: readonly number[]): number {
  const total = drawn.reduce((sum, each) => sum + inSpan(each, loads), 0);
  return soundShare * inSpan(rating, outputs) - total;
}

export const chargeBalance = makeFigure({
  name: 'charge-balance',
  family: 'charging',
  about: 'Whether the charging machine carries the loads with something left for the battery.',
  inputs: {
    rating: measured('current', outputs, 'of the generator or alternator'),
    loads: measured('current', loads, 'each thing switched on', { list: true, optional: true }),
    ripple: optional('voltage', ripples, 'alternating volts at the battery'),
  },
  outputs: {
    result: { unit: 'A', about: 'left for the battery' },
    expected: { unit: 'A', about: 'what a sound machine gives at speed' },
    total: { unit: 'A', about: 'the loads' },
    rippleLimit: { unit: 'V', about: 'alternating volts allowed, loosest in print' },
    rippleStrict: { unit: 'V', about: 'alternating volts allowed, a stricter page' },
  },
  formula: '0.9 x rating - loads',
  range: '0.1 to 300 A',
  source: '90 % and 0.5 V are common practice; 0.25 V read on a trade page',
  mark: 'common practice',
  work: ({ rating, loads: drawn, ripple }) => {
    const left = chargeLeft(rating, drawn);
    const word = left > 0 ? 'Something is left for the battery.' : 'The battery pays for the rest.';
    const diode = ripple !== undefined && ripple > 0.5 ? ' The ripple hints at a dead diode.' : '';
    return {
      values: {
        result: left,
        expected: soundShare * rating,
        total: soundShare * rating - left,
        rippleLimit: 0.5,
        rippleStrict: 0.25,
      },
      verdict: `${word}${diode} Generators give little at idle. ${ruleOfThumb}`,
    };
  },
});
