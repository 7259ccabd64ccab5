import { bad, good, type Parsed, type Problem } from '../problem.ts';

/** Longest tree file, in bytes as in characters. */
export const maxLength = 1_048_576;
const maxDepth = 32;

/** A bracket that is open, with the place reached in it: a key of an object, or one of a list. */
type Level = {
  readonly kind: 'root' | 'object' | 'list';
  readonly path: string;
  /** Undefined in an object where a key is due. */
  key: string | undefined;
  index: number;
};

/** What shapes a JSON text, in its order: each with the bracket it stands in and where it begins. */
type Mark = {
  readonly kind: 'open' | 'key' | 'text';
  /** A string as it reads; the bracket itself of one that opens. */
  readonly words: string;
  readonly level: Level;
  /** Brackets open here. */
  readonly depth: number;
  readonly place: number;
};

/**
 * Reads JSON text that people write by hand: it looks for what the parser proper passes over in
 * silence (a key given twice) or takes without limit (depth, size).
 * @returns the value, or every duplicate key, or the one thing that stopped the reading.
 */
export function parseJson(text: string, file: string): Parsed<unknown> {
  if (text.length > maxLength) return bad(tooLarge(text.length, file));
  const found = keyProblems(text, file);
  if (found.length > 0) return { kind: 'bad', problems: found };
  try {
    return good(JSON.parse(text) as unknown);
  } catch (error) {
    return bad(broken(text, file, error));
  }
}

/** Keys given twice in one object, names that the parser loses, and nesting beyond the limit. */
function keyProblems(text: string, file: string): Problem[] {
  const problems: Problem[] = [];
  const seen = new Map<Level, Set<string>>();
  for (const mark of marksIn(text)) {
    if (mark.kind === 'open' && mark.depth >= maxDepth)
      return [...problems, tooDeep(text, mark.place, file)];
    if (mark.kind !== 'key') continue;
    const keys = seen.get(mark.level) ?? new Set();
    seen.set(mark.level, keys);
    if (keys.has(mark.words)) problems.push(keyTwice(text, mark, file));
    // The reader of maps passes over this name in silence, so what stands there would be lost untold.
    if (mark.words === '__proto__' && mark.depth > 1) problems.push(reserved(text, mark, file));
    keys.add(mark.words);
  }
  return problems;
}

/** What a tree calls itself. */
export type Heading = { readonly id: string; readonly title: string };

/**
 * Reads the id and the title of a tree from the beginning of its text, without the rest of it: a
 * list of many trees needs no more. Nothing else in the text is judged.
 * @returns undefined where the two do not both stand there
 */
export function headingOf(start: string): Heading | undefined {
  let id: string | undefined;
  let title: string | undefined;
  for (const { kind, words, level, depth } of marksIn(start)) {
    if (kind !== 'text' || depth !== 1) continue;
    if (level.key === 'id') id = words;
    if (level.key === 'title') title = words;
    if (id !== undefined && title !== undefined) return { id, title };
  }
  return undefined;
}

const marks = /["[\]{},]/g;
const stringMarks = /["\\]/g;
const afterSpace = /[^ \t\n\r]|$/g;

/** Goes through a text once, broken or cut off as it may be; a string without its end is left out. */
function* marksIn(text: string): Generator<Mark> {
  const levels: Level[] = [{ kind: 'root', path: '', key: undefined, index: 0 }];
  for (let place = next(marks, text, 0); place < text.length; place = next(marks, text, place)) {
    const sign = text.charAt(place);
    const level = levels.at(-1) as Level;
    const at = { level, depth: levels.length - 1, place };
    if (sign === '"') {
      const end = endOfString(text, place);
      if (end > text.length) return;
      const words = wordsOf(text.slice(place, end));
      const kind = isKey(level, text, end) ? 'key' : 'text';
      if (kind === 'key') level.key = words;
      yield { kind, words, ...at };
      place = end;
    } else {
      if (isOpening(sign)) yield { kind: 'open', words: sign, ...at };
      meet(levels, level, sign);
      place += 1;
    }
  }
}

const isOpening = (sign: string): boolean => sign === '{' || sign === '[';

const isKey = ({ kind }: Level, text: string, end: number): boolean =>
  kind === 'object' && text[next(afterSpace, text, end)] === ':';

function meet(levels: Level[], level: Level, sign: string): void {
  if (isOpening(sign)) {
    const kind = sign === '{' ? 'object' : 'list';
    levels.push({ kind, path: pathOf(level), key: undefined, index: 0 });
  } else if (sign === ',') {
    level.index += 1;
    level.key = undefined;
  } else if (levels.length > 1) levels.pop();
}

/** Where a pattern fits next from a place on; the end when it does not. */
function next(pattern: RegExp, text: string, from: number): number {
  pattern.lastIndex = from;
  return pattern.exec(text)?.index ?? text.length;
}

function pathOf({ kind, path, key = '', index }: Level): string {
  if (kind === 'list') return `${path}[${index}]`;
  return path === '' ? key : `${path}.${key}`;
}

function endOfString(text: string, start: number): number {
  let place = next(stringMarks, text, start + 1);
  while (text[place] === '\\') place = next(stringMarks, text, place + 2);
  return place + 1;
}

/** A string as it will be read, escapes and all; as written when it is no proper string. */
function wordsOf(quoted: string): string {
  if (!quoted.includes('\\')) return quoted.slice(1, -1);
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted.slice(1, -1);
  }
}

const lineAt = (text: string, place: number): number => text.slice(0, place).split('\n').length;

const keyTwice = (text: string, { words, level, place }: Mark, file: string): Problem => ({
  code: 'key-twice',
  file,
  path: pathOf(level),
  message: `The key "${words}" stands twice in one object (line ${lineAt(text, place)}).`,
  mend: 'Keep one of the two.',
});

const reserved = (text: string, { level, place }: Mark, file: string): Problem => ({
  code: 'reserved-name',
  file,
  path: pathOf(level),
  message: `The name "__proto__" cannot be used (line ${lineAt(text, place)}).`,
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

const tooDeep = (text: string, place: number, file: string): Problem => ({
  code: 'nested-too-deep',
  file,
  message: `Brackets are nested more than ${maxDepth} deep (line ${lineAt(text, place)}).`,
  mend: 'A tree is flat: a map of causes and a map of checks.',
});

function broken(text: string, file: string, error: unknown): Problem {
  const told = error instanceof Error ? error.message : String(error);
  const position = /position (\d+)/.exec(told)?.[1];
  const line = position === undefined ? lineAt(text, text.length) : lineAt(text, Number(position));
  return {
    code: 'not-json',
    file,
    message: `This is not JSON from line ${line} on.`,
    mend: 'Look there for a missing comma, bracket or quote (NaN and comments are not JSON).',
  };
}
