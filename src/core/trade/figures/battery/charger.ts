import { measured, ruleOfThumb } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';

const capacities = span('capacity', 1, 400, 'Ah');
const states = span('charge', 0, 100, '%');
const chargers = span('current', 0.1, 100, 'A');

/** Ampere-hours to put in for each that comes out again: common practice. */
const chargeFactor = 1.2;

/**
 * Hours that a steady charging current takes from one state of charge to another: Ah x share x 1.2
 * / A. Valid for 1 to 400 Ah and 0.1 to 100 A; the last fifth takes longer, since the current
 * falls. The 1.2 is common practice. Worked example: 60 Ah from 50 to 100 % at 4 A: 9 h.
 */
export function hoursToCharge(
  capacity: number,
  charge: { readonly from: number; readonly to: number },
  current: number,
): number {
  const missing = (inSpan(charge.to, states) - inSpan(charge.from, states)) / 100;
  if (missing < 0) throw new RangeError(`charge ${charge.to} % is less than there is.`);
  return (inSpan(capacity, capacities) * missing * chargeFactor) / inSpan(current, chargers);
}

export const chargeTime = makeFigure({
  name: 'charge-time',
  family: 'battery',
  about: 'Hours on the charger to bring a battery up.',
  inputs: {
    capacity: measured('charge', capacities, '20-hour capacity', { default: 50 }),
    from: measured('ratio', states, 'state of charge now'),
    to: measured('ratio', states, 'state of charge wanted', { default: 100 }),
    current: measured('current', chargers, 'of the charger', { default: 4 }),
  },
  outputs: {
    result: { unit: 'h', about: 'on the charger, at least' },
    charge: { unit: 'Ah', about: 'to put in' },
    gentle: { unit: 'A', about: 'a gentle current, a tenth of the capacity' },
  },
  formula: 'h = Ah x (to - from) / 100 x 1.2 / A',
  range: '1 to 400 Ah, 0.1 to 100 A',
  source: 'arithmetic; 1.2 and a tenth of the capacity are common practice',
  mark: 'common practice',
  work: ({ capacity, current, from, to }) => {
    const hours = hoursToCharge(capacity, { from, to }, current);
    return {
      values: { result: hours, charge: hours * current, gentle: capacity / 10 },
      verdict: `Gas is made: no flame, doors open, charger off before its clips are moved; hot to the hand, stop. Never a frozen or cracked one. ${ruleOfThumb}`,
    };
  },
});
