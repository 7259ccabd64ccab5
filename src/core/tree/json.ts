import { bad, good, type Parsed, type Problem } from '../problem.ts';
import { parsePlain } from './plain-json.ts';

/** Longest tree file, in bytes as in characters. */
export const maxLength = 1_048_576;
const maxDepth = 32;

/** An open bracket: an object with the keys met so far, or a list with the place reached in it. */
type Level = {
  readonly keys: Set<string> | undefined;
  readonly path: string;
  key: string;
  index: number;
  readonly isRoot?: true;
};

/**
 * Reads JSON text that people write by hand: it looks for what the parser proper passes over in
 * silence (a key given twice) or takes without limit (depth, size). Most files are plainly free of
 * these; only the others are searched for the places.
 * @returns the value, or every duplicate key, or the one thing that stopped the reading.
 */
export function parseJson(text: string, file: string): Parsed<unknown> {
  if (text.length > maxLength) return bad(tooLarge(text.length, file));
  const plain = parsePlain(text, maxDepth);
  if (plain !== undefined) return good(plain.value);
  const found = scan(text, file);
  if (found.length > 0) return { kind: 'bad', problems: found };
  try {
    return good(JSON.parse(text) as unknown);
  } catch (error) {
    return bad(broken(text, file, error));
  }
}

/** One pass over the text: keys given twice in one object, and nesting beyond the limit. */
function scan(text: string, file: string): Problem[] {
  const problems: Problem[] = [];
  const levels: Level[] = [{ keys: undefined, path: '', key: '', index: 0, isRoot: true }];
  for (let place = nextMark(text, 0); place < text.length; place = nextMark(text, place)) {
    const mark = text[place];
    const level = levels.at(-1) as Level;
    if (mark === '"') {
      const end = endOfString(text, place);
      if (level.keys !== undefined && isKey(text, end))
        meetKey(level, text.slice(place, end), {
          text,
          place,
          file,
          problems,
          levels: levels.length,
        });
      place = end;
      continue;
    }
    if ((mark === '{' || mark === '[') && levels.length > maxDepth)
      return [...problems, tooDeep(text, place, file)];
    meetBracket(levels, level, mark);
    place += 1;
  }
  return problems;
}

const marks = /["[\]{},]/g;
const stringMarks = /["\\]/g;

/** Where the next mark that shapes JSON stands, from a place on; the end when there is none. */
function nextMark(text: string, from: number): number {
  marks.lastIndex = from;
  return marks.test(text) ? marks.lastIndex - 1 : text.length;
}

/** Whether a string is a key: the next mark behind it is a colon. */
function isKey(text: string, end: number): boolean {
  let place = end;
  while (place < text.length && ' \t\n\r'.includes(text[place] ?? '')) place += 1;
  return text[place] === ':';
}

function meetBracket(levels: Level[], level: Level, mark: string | undefined): void {
  if (mark === '{' || mark === '[')
    levels.push({
      keys: mark === '{' ? new Set() : undefined,
      path: pathOf(level),
      key: '',
      index: 0,
    });
  if ((mark === '}' || mark === ']') && levels.length > 1) levels.pop();
  if (mark === ',') level.index += 1;
}

const pathOf = (level: Level): string => {
  if (level.keys === undefined) return level.isRoot ? '' : `${level.path}[${level.index}]`;
  return level.path === '' ? level.key : `${level.path}.${level.key}`;
};

type Meeting = {
  readonly text: string;
  readonly place: number;
  readonly file: string;
  readonly problems: Problem[];
  /** Brackets open here, the outermost being 2. */
  readonly levels: number;
};

function meetKey(
  level: Level,
  quoted: string,
  { text, place, file, problems, levels }: Meeting,
): void {
  const key = keyOf(quoted);
  level.key = key;
  if (level.keys?.has(key))
    problems.push({
      code: 'key-twice',
      file,
      path: pathOf(level),
      message: `The key "${key}" stands twice in one object (line ${lineAt(text, place)}).`,
      mend: 'Keep one of the two.',
    });
  // The reader of maps passes over this name in silence, so what stands there would be lost untold.
  if (key === '__proto__' && levels > 2)
    problems.push({
      code: 'reserved-name',
      file,
      path: pathOf(level),
      message: `The name "__proto__" cannot be used (line ${lineAt(text, place)}).`,
      mend: 'Give it another name.',
    });
  level.keys?.add(key);
}

/** The key as it will be read, escapes and all; as written when it is no proper string. */
function keyOf(quoted: string): string {
  if (!quoted.includes('\\')) return quoted.slice(1, -1);
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted.slice(1, -1);
  }
}

function endOfString(text: string, start: number): number {
  stringMarks.lastIndex = start + 1;
  while (stringMarks.test(text)) {
    if (text[stringMarks.lastIndex - 1] === '"') return stringMarks.lastIndex;
    stringMarks.lastIndex += 1;
  }
  return text.length + 1;
}

const lineAt = (text: string, place: number): number => text.slice(0, place).split('\n').length;

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
