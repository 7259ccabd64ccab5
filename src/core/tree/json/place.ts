import { parseTree as parseNodes, type Node } from 'jsonc-parser';
import type { Parsed, Problem } from '../../problem.ts';

/** A place in a text, both counted from 1, the column in UTF-16 units. */
export type Place = { readonly line: number; readonly column: number };

/** Tells the line and column of any offset of a text. */
export function linesOf(text: string): (offset: number) => Place {
  const starts = [0, ...Array.from(text.matchAll(/\r\n?|\n/g), (end) => end.index + end[0].length)];
  return (offset) => {
    const after = starts.findIndex((start) => start > offset);
    const line = after < 0 ? starts.length : after;
    return { line, column: offset - (starts[line - 1] ?? 0) + 1 };
  };
}

/** Comments and a comma before a closing bracket are taken as they are. */
export const options = { allowTrailingComma: true } as const;

/**
 * Gives each problem that names a JSON path the line and column of it: where its key stands, or the
 * value itself in a list; of a path that is not there, the nearest place around it that is.
 */
export function placed<P extends Problem>(text: string, problems: readonly P[]): P[] {
  if (problems.every(({ line, path }) => line !== undefined || path === undefined))
    return [...problems];
  const root = parseNodes(text, [], options);
  const at = linesOf(text);
  const keysOf = keysOnce();
  return problems.map((problem) =>
    problem.line !== undefined || problem.path === undefined || root === undefined
      ? problem
      : { ...problem, ...at(offsetOf(root, problem.path, keysOf)) },
  );
}

/** What was read from a text, or all that is wrong with it, each in its place. */
export const withPlaces = <T>(text: string, parsed: Parsed<T>): Parsed<T> =>
  parsed.kind === 'good' ? parsed : { kind: 'bad', problems: placed(text, parsed.problems) };

/** Where a JSON path, written as people write it, begins in a text. */
function offsetOf(root: Node, path: string, keysOf: KeysOf): number {
  let [node, offset, rest] = [root, root.offset, path];
  while (rest !== '') {
    const step = stepAlong(keysOf(node), rest.startsWith('.') ? rest.slice(1) : rest);
    if (step === undefined) return offset;
    offset = step.child.offset;
    rest = step.rest;
    const next = node.type === 'array' ? step.child : step.child.children?.[1];
    if (next === undefined) return offset;
    node = next;
  }
  return offset;
}

/** The children of a node by their keys; the first where a key stands twice. */
type KeysOf = (node: Node) => ReadonlyMap<string, Node>;

/** Each node is looked through once, however many problems lie in it. */
function keysOnce(): KeysOf {
  const known = new Map<Node, ReadonlyMap<string, Node>>();
  return (node) => {
    const before = known.get(node);
    if (before !== undefined) return before;
    const keys = new Map<string, Node>();
    for (const [index, child] of (node.children ?? []).entries()) {
      const key = node.type === 'array' ? `[${index}]` : String(child.children?.[0]?.value);
      if (!keys.has(key)) keys.set(key, child);
    }
    known.set(node, keys);
    return keys;
  };
}

/** One step along a path; keys may hold a full stop, so the longest that fits is taken. */
function stepAlong(keys: ReadonlyMap<string, Node>, path: string) {
  const ends = [...Array.from(path.matchAll(/[.[]/g), ({ index }) => index), path.length];
  for (const end of ends.toReversed()) {
    const child = keys.get(path.slice(0, end));
    if (child !== undefined) return { child, rest: path.slice(end) };
  }
  return undefined;
}
