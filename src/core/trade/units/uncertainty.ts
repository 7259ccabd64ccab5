import type { Quantity } from './quantities.ts';
import { convert } from './units.ts';

/** How far off a reading usually is: a fixed part in `unit`, and a share of what was read. */
type Usual = {
  readonly unit: string;
  readonly fixed: number;
  readonly share: number;
  /** With which instrument, and where the numbers come from. */
  readonly source: string;
};

const usual = (unit: string, fixed: number, share: number, source: string): Usual => ({
  unit,
  fixed,
  share,
  source,
});

/** Of workshop instruments in fair order, read by a person beside a vehicle. */
const table: Readonly<Record<Quantity, Usual>> = {
  voltage: usual('V', 0.005, 0.008, 'hand-held meter: common practice, no source'),
  current: usual('A', 0.003, 0.02, 'meter in series or clamp: common practice, no source'),
  resistance: usual('ohm', 0.1, 0.01, 'hand-held meter and its leads: common practice, no source'),
  'line-resistance': usual('ohm/km', 0, 0.03, 'common practice, no source'),
  power: usual('W', 0, 0.03, 'volts times amps: common practice, no source'),
  energy: usual('J', 0, 0.03, 'common practice, no source'),
  charge: usual('Ah', 0, 0.05, 'common practice, no source'),
  capacitance: usual('uF', 0.005, 0.03, 'hand-held meter: common practice, no source'),
  inductance: usual('mH', 0.01, 0.05, 'hand-held meter: common practice, no source'),
  'wire-gauge': usual('AWG', 1, 0, 'one size, by a gauge plate: common practice, no source'),
  pressure: usual('psi', 0.25, 0.02, 'dial gauge: common practice, no source'),
  vacuum: usual('inHg', 0.5, 0, 'dial gauge of 30 inHg: common practice, no source'),
  temperature: usual('C', 2, 0.01, 'dial, probe or pyrometer: common practice, no source'),
  volume: usual('ml', 1, 0.03, 'measuring glass: common practice, no source'),
  flow: usual('l/min', 0, 0.05, 'measuring glass and watch: common practice, no source'),
  economy: usual('mpg', 0, 0.05, 'tank to tank: common practice, no source'),
  ratio: usual('%', 0.2, 0.03, 'gas or duty meter: common practice, no source'),
  gravity: usual('points', 5, 0, 'float hydrometer: common practice, no source'),
  count: usual('1', 0, 0, 'counted: common practice, no source'),
  length: usual('mm', 0.02, 0.002, 'feeler blade or caliper: common practice, no source'),
  area: usual('mm2', 0, 0.02, 'common practice, no source'),
  mass: usual('g', 1, 0.02, 'kitchen scale: common practice, no source'),
  force: usual('N', 1, 0.05, 'spring balance: common practice, no source'),
  torque: usual('Nm', 0, 0.04, 'torque wrench in calibration: common practice, no source'),
  speed: usual('km/h', 1, 0.03, 'speedometer: common practice, no source'),
  rotation: usual('rpm', 20, 0.01, 'tachometer: common practice, no source'),
  angle: usual('deg', 1, 0, 'timing lamp or dwell meter: common practice, no source'),
  time: usual('s', 0.3, 0.002, 'watch in the hand: common practice, no source'),
  frequency: usual('Hz', 0.1, 0.005, 'hand-held meter: common practice, no source'),
};

/**
 * How far off a reading usually is, in its own unit: 0.1 V for 12.4 V. It holds for one reading
 * of a workshop instrument; a check that knows better gives its own. RangeError as `convert`.
 */
export function usualUncertainty(quantity: Quantity, value: number, unit: string): number {
  const { unit: own, fixed, share } = table[quantity];
  const read = convert(value, unit, own);
  return Math.abs(convert(read + fixed + share * Math.abs(read), own, unit) - value);
}

/** Where the usual uncertainty of a quantity comes from, and with which instrument. @tested */
export const uncertaintySource = (quantity: Quantity): string => table[quantity].source;
