import type { Element, Network } from '../../../src/core/feed/network.ts';
import { numbersFrom } from './build.ts';

/**
 * A connected circuit of 4 to 30 nodes with resistors from a milliohm to a kilohm, real and ideal
 * sources, and currents. No two ideal sources share a node, so there is always an answer.
 */
export function randomNetwork(seed: number): Network {
  const next = numbersFrom(seed);
  const whole = (below: number): number => Math.floor(next() * below);
  const size = 4 + whole(27);
  const name = (node: number): string => (node === 0 ? '0' : `node ${node}`);
  const ohms = (): number => 10 ** (-3 + 6 * next());
  const ends = (): { from: string; to: string } => {
    const from = whole(size);
    return { from: name(from), to: name((from + 1 + whole(size - 1)) % size) };
  };
  const tree = Array.from({ length: size - 1 }, (_none, at): Element => {
    const node = at + 1;
    return {
      kind: 'resistor',
      id: `tree ${node}`,
      from: name(node),
      to: name(whole(node)),
      ohms: ohms(),
    };
  });
  const meshes = Array.from({ length: whole(2 * size) }, (_none, at): Element => {
    return { kind: 'resistor', id: `mesh ${at}`, ...ends(), ohms: ohms() };
  });
  const sources = Array.from({ length: 1 + whole(3) }, (_none, at): Element => {
    return {
      kind: 'source',
      id: `source ${at}`,
      ...ends(),
      volts: 6 + 18 * next(),
      ohms: 0.005 + next(),
    };
  });
  const held = Array.from({ length: whole(Math.floor(size / 4) + 1) }, (_none, at): Element => {
    const from = name(1 + 2 * at);
    return {
      kind: 'source',
      id: `held ${at}`,
      from,
      to: name(2 + 2 * at),
      volts: 12 * next(),
      ohms: 0,
    };
  });
  const currents = Array.from({ length: whole(3) }, (_none, at): Element => {
    return { kind: 'current', id: `current ${at}`, ...ends(), amps: next() };
  });
  return {
    reference: '0',
    elements: [...tree, ...meshes, ...sources, ...held, ...currents],
  };
}
