import type { Element, Network } from '../../../src/core/feed/network.ts';
import { resistor, source } from './build.ts';

/** A supply line of so many stations, each with a load to ground. */
export function ladderNetwork(nodes: number): Network {
  const rungs = Array.from({ length: nodes - 1 }, (_none, at): readonly Element[] => [
    resistor(`s${at}`, `s${at + 1}`, 0.001 * (1 + (at % 7))),
    resistor(`s${at + 1}`, '0', 1000 + (at % 13)),
  ]);
  return { reference: '0', elements: [source('s0', '0', 12.65, 0.009), ...rungs.flat()] };
}

/** A square sheet, the worst that a vehicle's body could be. */
export function gridNetwork(nodes: number): Network {
  const side = Math.round(Math.sqrt(nodes));
  const name = (row: number, column: number) => `${row},${column}`;
  const cells = Array.from({ length: side * side }, (_none, at): readonly Element[] => {
    const [row, column] = [Math.floor(at / side), at % side];
    const right =
      column + 1 < side ? [resistor(name(row, column), name(row, column + 1), 0.01)] : [];
    const down = row + 1 < side ? [resistor(name(row, column), name(row + 1, column), 0.01)] : [];
    return [...right, ...down];
  });
  const ends = [source(name(0, 0), '0', 12.65, 0.009), resistor(name(side - 1, side - 1), '0', 1)];
  return { reference: '0', elements: [...ends, ...cells.flat()] };
}
