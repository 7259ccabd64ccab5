/** What a tree calls itself. */
export type Heading = { readonly id: string; readonly title: string };

const tokens = /"(?:[^"\\]|\\.)*"|[{}[\]:,]/gs;
const deeper: Readonly<Record<string, number>> = { '{': 1, '[': 1, '}': -1, ']': -1 };

/**
 * Reads the id and the title of a tree from the beginning of its text, without the rest of it: a
 * list of many trees needs no more. Nothing else in the text is judged.
 * @returns undefined where the two do not both stand there
 */
export function headingOf(start: string): Heading | undefined {
  let id: string | undefined;
  let title: string | undefined;
  for (const [key, value] of outermostTexts(start)) {
    if (key === 'id') id = value;
    if (key === 'title') title = value;
    if (id !== undefined && title !== undefined) return { id, title };
  }
  return undefined;
}

/** Keys of the outermost object whose value is a text, with that text, as far as it is whole. */
function* outermostTexts(start: string): Generator<readonly [key: string, value: string]> {
  let depth = 0;
  let key: string | undefined;
  let last = '';
  for (const [token] of start.matchAll(tokens)) {
    depth += deeper[token] ?? 0;
    if (depth === 1 && key !== undefined && token.startsWith('"'))
      yield [textOf(key), textOf(token)];
    if (depth === 1 && ':,'.includes(token)) key = token === ':' ? last : undefined;
    last = token;
  }
}

/** A string as it reads; one with marks that JSON does not allow is kept as written. */
function textOf(quoted: string): string {
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted;
  }
}
