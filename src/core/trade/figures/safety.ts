import { measured, namesOf } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { limits } from './limits.ts';
import type { Limit } from './limits.ts';
import { inSpan, span } from '../span.ts';

const rooms = span('room', 1, 100_000, 'm3');
const flows = span('flow', 0.01, 1000, 'l/s');
const shares = span('CO', 0.001, 20, '%');
const targets = span('target', 1, 10_000, 'ppm');

export type Garage = {
  /** m3 */
  readonly room: number;
  /** l/s of exhaust */
  readonly flow: number;
  /** percent */
  readonly co: number;
  /** ppm */
  readonly target: number;
};

/**
 * Minutes until exhaust fills a closed room with carbon monoxide to a level, well mixed:
 * V x target / (flow x CO). Source: mixing, computed. Worked example: 60 m3, 5 l/s, 4.5 %, 200 ppm:
 * 0.889 min.
 */
export function garageMinutes({ room, flow, co, target }: Garage): number {
  const wanted = inSpan(room, rooms) * (inSpan(target, targets) / 1e6);
  return wanted / ((inSpan(flow, flows) / 1000) * (inSpan(co, shares) / 100) * 60);
}

export const garageCo = makeFigure({
  name: 'garage-co',
  family: 'safety',
  about: 'How soon a running engine makes a closed garage dangerous.',
  inputs: {
    room: measured('volume', rooms, 'of the garage', { default: 60 }),
    flow: measured('flow', flows, 'of exhaust; about 5 l/s at idle', { default: 5 }),
    co: measured('ratio', shares, 'CO in the exhaust', { default: 4.5 }),
    target: measured('ratio', targets, 'level that is reached', { default: 200 }),
  },
  outputs: { result: { unit: 'min', about: 'until then' } },
  formula: 'V x target / (flow x CO)',
  range: '1 to 100,000 m3, 0.01 to 1000 l/s, 0.001 to 20 %',
  source: 'mixing, computed; the idle flow is assumed',
  mark: 'computed',
  work: (garage) => ({
    values: { result: garageMinutes(garage) },
    verdict: 'Never run an engine in a closed room: lead the exhaust outside, doors open.',
  }),
});

export const limit = makeFigure({
  name: 'limit',
  family: 'safety',
  about: 'A published or customary limit by its name.',
  inputs: {
    name: { quantity: 'choice', unit: '', about: 'which', values: namesOf(limits) },
  },
  outputs: { result: { unit: '1', about: 'the limit, in its own unit' } },
  formula: 'list',
  range: 'the names of the list',
  source: 'told with each',
  mark: 'published',
  work: ({ name }) => {
    const [value, unit, about, source, mark = 'published']: Limit = limits[name];
    return { values: { result: value }, unit, source, mark, verdict: `${about}.` };
  },
});
