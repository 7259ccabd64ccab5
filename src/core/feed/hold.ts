import { at } from '../at.ts';
import { bad, good } from '../problem.ts';
import type { Parsed, Problem } from '../problem.ts';
import { nodeOf } from './network.ts';
import type { Hold, Plain } from './network.ts';

/** Nodes that ideal sources hold together: V(node) = V(root) + above. */
export type Held = { readonly root: Int32Array; readonly above: Float64Array };

/**
 * Merges the nodes at the ends of each ideal source, so that the matrix stays positive definite.
 * Two perfect sources in a loop have no answer (or no single one): a Problem.
 */
export function holdTogether(plain: Plain): Parsed<Held> {
  const parent = Int32Array.from({ length: plain.nodes.size }, (_none, node) => node);
  const step = new Float64Array(plain.nodes.size);
  const problems: Problem[] = [];
  const climb = (node: number): readonly [number, number] => {
    let [top, above] = [node, 0];
    for (let up = at(parent, top); up !== top; up = at(parent, top)) {
      above += at(step, top);
      top = up;
    }
    return [top, above];
  };
  for (const hold of plain.holds) {
    const [plus, plusAbove] = climb(nodeOf(plain.nodes, hold.from));
    const [minus, minusAbove] = climb(nodeOf(plain.nodes, hold.to));
    if (plus === minus) problems.push(loop(hold));
    parent[plus] = minus;
    if (plus !== minus) step[plus] = minusAbove + hold.volts - plusAbove;
  }
  if (problems.length > 0) return bad(...problems);
  return good(fromReference(plain.nodes.size, climb));
}

/** Shifts the reference's own part so that node 0 stands at 0 V and is its root. */
function fromReference(size: number, climb: (node: number) => readonly [number, number]): Held {
  const root = new Int32Array(size);
  const above = new Float64Array(size);
  const [ground, groundAbove] = climb(0);
  for (let node = 0; node < size; node += 1) {
    const [top, height] = climb(node);
    root[node] = top === ground ? 0 : top;
    above[node] = top === ground ? height - groundAbove : height;
  }
  return { root, above };
}

const loop = (hold: Hold): Problem => ({
  code: 'network-source-loop',
  message: `The source “${hold.id}” is shorted, or closes a loop of perfect sources: its current has no limit.`,
  mend: 'Give a source in that loop its inner ohms, or put a resistance between.',
  path: hold.id,
  value: `${hold.volts} V`,
});
