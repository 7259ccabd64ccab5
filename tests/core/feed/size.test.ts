import { expect, test } from 'vitest';
import { apart, solveNetwork, value } from './build.ts';
import { gridNetwork, ladderNetwork } from './large-network.ts';

test('what the source gives into 2,000 stations comes out of their loads', () => {
  const network = ladderNetwork(2000);
  const { amps } = value(solveNetwork(network));
  const taken = network.elements
    .filter(({ to, kind }) => to === '0' && kind === 'resistor')
    .reduce((sum, { id }) => sum + (amps.get(id) ?? NaN), 0);

  expect(apart(-(amps.get('source s0-0') ?? NaN), taken)).toBeLessThan(1e-9);
});

test('in a square sheet of equal spans the middle of the other diagonal is at half', () => {
  const { volts } = value(solveNetwork(gridNetwork(31 * 31)));
  const [from, to] = [volts.get('0,0') ?? NaN, volts.get('30,30') ?? NaN];

  expect(apart(volts.get('15,15'), (from + to) / 2)).toBeLessThan(1e-9);
  expect(apart(volts.get('0,30'), (from + to) / 2)).toBeLessThan(1e-9);
});
