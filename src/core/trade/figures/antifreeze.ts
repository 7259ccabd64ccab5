import { coolantFreezes } from './cooling.ts';
import { generalTable, measured } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';

const systems = span('capacity', 0.5, 100, 'l');
const shares = span('antifreeze', 0, 60, '%');
const fills = span('fill', 1, 100, '%');

/** Shares of antifreeze in percent: in the system, wanted there, and in what is filled in. */
export type Antifreeze = { readonly now: number; readonly wanted: number; readonly fill: number };

/**
 * Litres to drain and replace so that a full system has the share wanted: capacity x (wanted - now)
 * / (fill - now). RangeError when the fill is no stronger than what is wanted. Source: mixing.
 * Worked example: 10 l from 20 to 50 % with undiluted antifreeze: 3.75 l.
 */
export function litresToReplace(capacity: number, { now, wanted, fill }: Antifreeze): number {
  const missing = inSpan(wanted, shares) - inSpan(now, shares);
  if (missing < 0) throw new RangeError(`antifreeze ${wanted} % is less than there is.`);
  if (missing === 0) return 0;
  if (inSpan(fill, fills) < wanted) throw new RangeError(`fill ${fill} % cannot give ${wanted} %.`);
  return (inSpan(capacity, systems) * missing) / (fill - now);
}

export const antifreezeTopUp = makeFigure({
  name: 'antifreeze-top-up',
  family: 'cooling',
  about: 'How much coolant to drain and replace to reach a share of antifreeze.',
  inputs: {
    capacity: measured('volume', systems, 'of the cooling system, heater too'),
    now: measured('ratio', shares, 'antifreeze in it now, by tester'),
    wanted: measured('ratio', shares, 'antifreeze wanted', { default: 50 }),
    fill: measured('ratio', fills, 'antifreeze in what is filled in', { default: 100 }),
  },
  outputs: {
    result: { unit: 'l', about: 'to drain and replace' },
    freezes: { unit: 'C', about: 'first ice of the mix wanted' },
    freezesNow: { unit: 'C', about: 'first ice of what is in it now' },
  },
  formula: 'l = capacity x (wanted - now) / (fill - now)',
  range: '0.5 to 100 l, up to 60 % by volume',
  source: 'mixing; freezing points as in coolant-freeze',
  mark: 'computed',
  work: ({ capacity, now, wanted, fill }) => ({
    values: {
      result: litresToReplace(capacity, { now, wanted, fill }),
      freezes: coolantFreezes(wanted),
      freezesNow: coolantFreezes(now),
    },
    verdict: `Cold engine only, top hose cold to the hand. It is poison and tastes sweet: catch all of it. Test again once it has run warm and cooled. ${generalTable}`,
  }),
});
