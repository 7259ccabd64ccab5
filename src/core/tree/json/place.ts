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
  return problems.map((problem) =>
    problem.line !== undefined || problem.path === undefined || root === undefined
      ? problem
      : { ...problem, ...at(offsetOf(root, problem.path)) },
  );
}

/** What was read from a text, or all that is wrong with it, each in its place. */
export const withPlaces = <T>(text: string, parsed: Parsed<T>): Parsed<T> =>
  parsed.kind === 'good' ? parsed : { kind: 'bad', problems: placed(text, parsed.problems) };

/** Where a JSON path, written as people write it, begins in a text. */
function offsetOf(root: Node, path: string): number {
  let [node, offset, rest] = [root, root.offset, path];
  while (rest !== '') {
    const step = node.children
      ?.map((child, index) => stepTo(child, index, node.type === 'array', rest))
      .filter((one) => one !== undefined)
      .toSorted((one, other) => one.rest.length - other.rest.length)[0];
    if (step === undefined) return offset;
    offset = step.offset;
    rest = step.rest;
    if (step.node === undefined) return offset;
    node = step.node;
  }
  return offset;
}

type Step = { readonly node: Node | undefined; readonly offset: number; readonly rest: string };

/** One step along a path; keys may hold a full stop, so the longest that fits is taken. */
function stepTo(child: Node, index: number, inList: boolean, path: string): Step | undefined {
  const key = inList ? `[${index}]` : String(child.children?.[0]?.value);
  const rest = path.startsWith('.') ? path.slice(1) : path;
  if (!rest.startsWith(key)) return undefined;
  const after = rest.slice(key.length);
  if (after !== '' && !/^[.[]/.test(after)) return undefined;
  return { node: inList ? child : child.children?.[1], offset: child.offset, rest: after };
}
