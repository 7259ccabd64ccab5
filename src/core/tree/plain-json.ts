/** A value wrapped, so that a JSON `null` differs from no answer. */
type Read = { readonly value: unknown };

/** A key in JSON text is a string with a colon behind it. */
const keyEnd = /"[ \t\n\r]*:/g;

/**
 * Reads JSON text that is plainly sound: no key given twice, no name that the parser loses, no deeper
 * than allowed. A parsed object has each key once; as many as the text has places where a key could
 * end means that none was dropped. A text that looks so within a string has one place too many.
 * @returns undefined for text that has to be looked at place by place.
 */
export function parsePlain(text: string, maxDepth: number): Read | undefined {
  if (text.includes('__proto__') || text.includes('\\u')) return undefined;
  const value = parsed(text);
  if (value === undefined) return undefined;
  return keysIn(value, maxDepth) === keyEndsIn(text) ? { value } : undefined;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function keyEndsIn(text: string): number {
  let count = 0;
  keyEnd.lastIndex = 0;
  while (keyEnd.test(text)) count += 1;
  return count;
}

/** Keys of a value and of all that it holds; not a number where it is nested deeper than allowed. */
function keysIn(value: unknown, depth: number): number {
  if (typeof value !== 'object' || value === null) return 0;
  if (depth === 0) return Number.NaN;
  const parts: readonly unknown[] = Array.isArray(value) ? value : Object.values(value);
  let count = parts === value ? 0 : parts.length;
  for (const part of parts) if (typeof part === 'object') count += keysIn(part, depth - 1);
  return count;
}
