import type { Parsed } from '../problem.ts';
import { good } from '../problem.ts';
import { plainOf } from './network.ts';
import type { Network } from './network.ts';

export type Netlist = {
  /** Title line, one part a line, an operating-point run, the end line. */
  readonly text: string;
  /** The circuit file's name of each node; the reference is `0`. */
  readonly nodes: ReadonlyMap<string, string>;
  /** The circuit file's name of the voltage source or resistor that carries each part's amps. */
  readonly parts: ReadonlyMap<string, string>;
};

/**
 * The circuit in the common SPICE form, so that any simulator can be asked the same question. A source
 * with inner ohms appears as two parts in series.
 */
export function netlistOf(network: Network, title: string): Parsed<Netlist> {
  const parsed = plainOf(network);
  if (parsed.kind === 'bad') return parsed;
  const plain = parsed.value;
  const nodes = new Map(
    [...plain.nodes].map(([name, at]): [string, string] => [name, at === 0 ? '0' : `n${at}`]),
  );
  const node = (name: string): string => nodes.get(name) ?? '0';
  const parts = new Map<string, string>();
  const note = (id: string, letter: string): string => {
    const name = `${letter}${parts.size + 1}`;
    parts.set(id, name);
    return name;
  };
  const branches = plain.branches.flatMap(({ id, from, to, siemens, volts }) => {
    const name = note(id, 'R');
    const remark = `* ${name}: ${plainText(id)}`;
    if (volts === 0) return [remark, `${name} ${node(from)} ${node(to)} ${1 / siemens}`];
    const inner = `e${parts.size}`;
    return [
      remark,
      `${name} ${node(from)} ${inner} ${1 / siemens}`,
      `V${name} ${inner} ${node(to)} DC ${volts}`,
    ];
  });
  const holds = plain.holds.map(
    ({ id, from, to, volts }) => `${note(id, 'V')} ${node(from)} ${node(to)} DC ${volts}`,
  );
  const pushes = plain.pushes.map(
    ({ id, from, to, amps }) => `${note(id, 'I')} ${node(from)} ${node(to)} DC ${amps}`,
  );
  const names = [...nodes].map(([name, short]) => `* ${short} = ${plainText(name)}`);
  const lines = [plainText(title), ...names, ...branches, ...holds, ...pushes, '.op', '.end'];
  return good({ text: `${lines.join('\n')}\n`, nodes, parts });
}

/** Names come from files: only what cannot start a new line or a command goes into the listing. */
function plainText(text: string): string {
  return text.replaceAll(/[^\p{L}\p{N} .,:;_()+>/-]/gu, '?').slice(0, 120);
}
