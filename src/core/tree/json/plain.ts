/** A string of JSON text; the second group is there where it is a key. */
const strings = /"(?:[^"\\]|\\.)*"(\s*:)?/g;

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
  let written = 0;
  for (const [, colon] of text.matchAll(strings)) if (colon !== undefined) written += 1;
  // Of a key given twice the value has only one.
  return written === keysOf(value, maxDepth) ? { value } : undefined;
}

/** How many keys a value has in all; NaN where it is deeper than that. */
function keysOf(value: unknown, depth: number): number {
  if (typeof value !== 'object' || value === null) return 0;
  if (depth === 0) return NaN;
  const parts: readonly unknown[] = Object.values(value);
  const own = Array.isArray(value) ? 0 : parts.length;
  return parts.reduce<number>((all, part) => all + keysOf(part, depth - 1), own);
}
