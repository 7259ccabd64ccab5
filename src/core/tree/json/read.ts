import { parseTree as parseNodes, type Node, type ParseError } from 'jsonc-parser';
import { bad, good, type Parsed, type Problem } from '../../problem.ts';
import { linesOf, options } from './place.ts';
import { plainJson } from './plain.ts';
import { closes, opens, tokensOf } from './tokens.ts';
import { troubleIn } from './trouble.ts';

/** Longest tree file, in bytes as in characters. */
export const maxLength = 1_048_576;
const maxDepth = 32;

/** A text that is being read: itself, what the file is called, and where each offset stands. */
type Source = {
  readonly text: string;
  readonly file: string;
  readonly at: ReturnType<typeof linesOf>;
};

/**
 * Reads JSON that people write by hand: comments and a comma before a closing bracket are taken; a
 * key given twice, a name that would be lost, depth and size beyond a limit are told.
 * @returns the value, or every such key, or the one thing that stopped the reading.
 */
export function parseJson(text: string, file: string): Parsed<unknown> {
  if (text.length > maxLength) return bad(tooLarge(text.length, file));
  const plain = plainJson(text, maxDepth);
  if (plain !== undefined) return good(plain.value);
  const source: Source = { text, file, at: linesOf(text) };
  const deep = tooDeepAt(text);
  if (deep !== undefined) return bad(tooDeep(source, deep));
  const errors: ParseError[] = [];
  const root = parseNodes(text, errors, options);
  const twice = root === undefined ? [] : keyProblems(root, source);
  if (errors.length > 0 || root === undefined)
    return bad({ ...troubleIn(text, errors), code: 'not-json', file });
  return twice.length > 0 ? { kind: 'bad', problems: twice } : good(valueOf(root));
}

/** Where brackets first stand deeper than the limit; the reader itself would go down for ever. */
function tooDeepAt(text: string): number | undefined {
  let depth = 0;
  for (const token of tokensOf(text)) {
    if (opens(token)) depth += 1;
    if (closes(token)) depth -= 1;
    if (depth > maxDepth) return token.offset;
  }
  return undefined;
}

/** What the nodes stand for. A key is always the object's own, whatever it is called. */
function valueOf({ type, value, children = [] }: Node): unknown {
  if (type === 'array') return children.map(valueOf);
  if (type !== 'object') return value;
  return Object.fromEntries(
    children.map(({ children: pair = [] }) => [
      String(pair[0]?.value),
      pair[1] === undefined ? null : valueOf(pair[1]),
    ]),
  );
}

/** A key that stands somewhere: its words, its JSON path and where it begins. */
type Key = {
  readonly name: string;
  readonly path: string;
  readonly offset: number;
  readonly depth: number;
  readonly owner: Node;
};

/** Keys given twice in one object, and names that the reader of maps would pass over in silence. */
function keyProblems(root: Node, source: Source): Problem[] {
  const problems: Problem[] = [];
  const seen = new Map<Node, Map<string, number>>();
  for (const key of keysIn(root)) {
    const first = seen.get(key.owner) ?? new Map<string, number>();
    seen.set(key.owner, first);
    const before = first.get(key.name);
    if (before !== undefined) problems.push(keyTwice(source, key, before));
    if (key.name === '__proto__' && key.depth > 0) problems.push(reserved(source, key));
    if (before === undefined) first.set(key.name, key.offset);
  }
  return problems;
}

/** Every key below a node, in the order of the text. */
function* keysIn(node: Node, path = '', depth = 0): Generator<Key> {
  for (const [index, child] of (node.children ?? []).entries()) {
    if (node.type === 'array') {
      yield* keysIn(child, `${path}[${index}]`, depth + 1);
      continue;
    }
    const [key, value] = child.children ?? [];
    const name = String(key?.value);
    const here = path === '' ? name : `${path}.${name}`;
    yield { name, path: here, offset: child.offset, depth, owner: node };
    if (value !== undefined) yield* keysIn(value, here, depth + 1);
  }
}

const keyTwice = ({ file, at }: Source, { name, path, offset }: Key, first: number): Problem => ({
  code: 'key-twice',
  file,
  path,
  ...at(offset),
  message: `The key "${name}" stands twice in one object, first on line ${at(first).line}.`,
  mend: 'Keep one of the two.',
});

const reserved = ({ file, at }: Source, { path, offset }: Key): Problem => ({
  code: 'reserved-name',
  file,
  path,
  ...at(offset),
  kin: 'id __proto__',
  message: 'The name "__proto__" cannot be used.',
  mend: 'Give it another name.',
});

/** Told before a file is read, by its size on the disk, and of text that came another way. */
export const tooLarge = (length: number, file: string): Problem => ({
  code: 'file-too-large',
  file,
  value: `${Math.round(length / 1024)} KiB`,
  message: `The file is larger than ${maxLength / 1024} KiB, the most a tree may have.`,
  mend: 'Split it into several trees.',
});

const tooDeep = ({ file, at }: Source, offset: number): Problem => ({
  code: 'nested-too-deep',
  file,
  ...at(offset),
  message: `Brackets are nested more than ${maxDepth} deep.`,
  mend: 'A tree is flat: a map of causes and a map of checks.',
});
