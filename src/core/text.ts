/** Marks that turn or hide text: shown by their code point instead. */
const hidden =
  /[\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e0fff}]/gu;

const codePoint = (mark: string): string =>
  `<U+${(mark.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}>`;

const picture = (mark: string): string => String.fromCharCode(0x2400 + mark.charCodeAt(0));

/** Most text by far; it needs nothing, and the expressions below are slow to set up. */
const plain = /^[\x20-\x7e]*$/;

/**
 * Makes text from a file or a person safe to show: control characters become their pictures,
 * marks that turn or hide text their code point, and towers of combining marks are cut. Replaces
 * and never strips, since stripping can put a live escape sequence together from two dead halves.
 */
export function clean(text: string): string {
  if (plain.test(text)) return text;
  return (
    text
      .toWellFormed()
      .replace(/\r\n?|[\u2028\u2029\u0085\v\f]/g, '\n')
      // oxlint-disable-next-line no-control-regex -- control characters are what is looked for
      .replace(/[\0-\x08\x0e-\x1f]/g, picture)
      .replace(/\x7f/g, '\u2421')
      .replace(/[\x80-\x9f]/g, '\ufffd')
      .replace(/[\ufe0e\ufe0f]/g, '')
      .replace(/(\p{M}{4})\p{M}+/gu, '$1')
      .replace(hidden, codePoint)
  );
}

/** The same on one line, with its spaces as they are: for text laid out in columns. */
export const cleanRow = (text: string): string => clean(text).replace(/[\n\t]+/g, ' ');

/** The same on one line, white space folded. */
export const cleanLine = (text: string): string => clean(text).replace(/\s+/g, ' ').trim();

/** Signs that JSON leaves as they are and that drive or deceive a terminal. */
const unsafeInJson =
  /[\x7f-\x9f\u2028\u2029\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e0fff}]/gu;

/** A value as JSON that is safe on a terminal: the same value, with unsafe signs written as escapes. */
export const safeJson = (value: unknown, indent?: number): string =>
  JSON.stringify(value, null, indent).replace(unsafeInJson, (sign) =>
    [...Array(sign.length).keys()]
      .map((at) => `\\u${sign.charCodeAt(at).toString(16).padStart(4, '0')}`)
      .join(''),
  );

/** `1 check`, `3 checks`. */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${number} ${number === 1 ? one : many}`;
