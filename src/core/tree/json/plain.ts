/**
 * The value of a text that is JSON and nothing else, far quicker than by its places. Undefined where
 * there is anything to tell of it: a mistake, a comment, a key twice, a reserved name, too deep.
 */
export function plainJson(text: string, maxDepth: number): { readonly value: unknown } | undefined {
  if (text.includes('__proto__') || text.includes('\\u')) return undefined;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  // Of a key given twice the value has only one.
  return keysWritten(text) === keysOf(value, maxDepth) ? { value } : undefined;
}

const [backslash, colon, space] = [92, 58, 32];

/** How many keys stand in a text that is JSON: strings with a colon behind them. */
function keysWritten(text: string): number {
  let keys = 0;
  for (let begin = text.indexOf('"'); begin >= 0;) {
    let next = endOfString(text, begin) + 1;
    // All white space of JSON comes before the signs.
    while (text.charCodeAt(next) <= space) next += 1;
    if (text.charCodeAt(next) === colon) keys += 1;
    begin = text.indexOf('"', next);
  }
  return keys;
}

/** The quote that ends a string: one with no backslash of its own before it. */
function endOfString(text: string, begin: number): number {
  for (let end = text.indexOf('"', begin + 1); ; end = text.indexOf('"', end + 1)) {
    let slashes = 0;
    while (text.charCodeAt(end - 1 - slashes) === backslash) slashes += 1;
    if (slashes % 2 === 0) return end;
  }
}

/** How many keys a value has in all; NaN where it is deeper than that. */
function keysOf(value: unknown, depth: number): number {
  if (typeof value !== 'object' || value === null) return 0;
  if (depth === 0) return NaN;
  let keys = Array.isArray(value) ? 0 : Object.keys(value).length;
  for (const part of Array.isArray(value) ? value : Object.values(value))
    if (typeof part === 'object') keys += keysOf(part, depth - 1);
  return keys;
}
