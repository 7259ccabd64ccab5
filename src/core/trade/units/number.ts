/** A number at the start of a text and what stands behind it. */
export type NumberFound = {
  readonly value: number;
  readonly rest: string;
  /** The other thing it may mean: `1,250` and `1.250` are 1.25 here and 1250 there. */
  readonly grouped?: Grouped;
};

/** The thousands that a mark with three digits behind it may stand for. */
export type Grouped = { readonly value: number; readonly mark: ',' | '.' };

const gauge = /^([1-4])\/0(.*)$/;
const zeros = /^(0{1,4})(?![\d.,/])(.*)$/;
const fraction = /^([+-]?)(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)(.*)$/;
const groups = /^([+-]?)([1-9]\d{0,2}(?:,\d{3}){2,}|[1-9]\d{0,2}(?:,\d{3})+\.\d+)(.*)$/;
const blanks = /^([+-]?)([1-9]\d{0,2}(?: \d{3})+)([.,]\d+)?(?![\d.,])(.*)$/;
const unclear = /^([+-]?)([1-9]\d{0,2})([.,])(\d{3})(?![\d.,e])(.*)$/i;
const plain = /^([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+)(e[+-]?\d+)?(.*)$/i;

const written: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
]);

/**
 * Reads a number as people write it: `15`, `12,4`, `.5`, `1e3`, `1,234,567`, `5 200`, `1/2`,
 * `1 1/8`, `1½`.
 * With `wireGauge`, `2/0` and `00` are the gauge sizes below zero (-1). Undefined when the text
 * does not begin with one number; a number too large to hold comes back as Infinity.
 */
export function readNumber(text: string, wireGauge = false): NumberFound | undefined {
  const clean = plainMarks(text);
  const found = wireGauge ? (readGauge(clean) ?? readAny(clean)) : readAny(clean);
  // What follows must be a unit: a further digit, point or sign is a slip of the finger.
  return found === undefined || /^[\d.,+/-]/.test(found.rest) ? undefined : found;
}

/** Minus signs, blanks and fractions as a keyboard has them. */
function plainMarks(text: string): string {
  return text
    .replaceAll(/[\u2212\u2013]/g, '-')
    .replaceAll(/[\u00a0\u2009\u202f]/g, ' ')
    .replaceAll('\u2044', '/')
    .replaceAll(/(\d?)\s*([½¼¾⅓⅔⅛⅜⅝⅞])/g, (_, whole: string, sign: string) =>
      `${whole} ${written.get(sign)} `.replace(/^ /, ''),
    )
    .trim();
}

function readAny(text: string): NumberFound | undefined {
  return (
    readFraction(text) ??
    readGroups(text) ??
    readBlanks(text) ??
    readUnclear(text) ??
    readPlain(text)
  );
}

function readGauge(text: string): NumberFound | undefined {
  const bare = text.replace(/^(?:awg|no\.?|#)\s*/i, '');
  const slash = gauge.exec(bare);
  if (slash !== null) return { value: 1 - Number(slash[1]), rest: (slash[2] ?? '').trim() };
  const long = zeros.exec(bare);
  if (long === null) return bare === text ? undefined : readPlain(bare);
  return { value: 1 - (long[1] ?? '').length, rest: (long[2] ?? '').trim() };
}

function readFraction(text: string): NumberFound | undefined {
  const parts = fraction.exec(text);
  if (parts === null) return undefined;
  const [, sign, whole = '0', top, bottom, rest = ''] = parts;
  const size = Number(whole) + Number(top) / Number(bottom);
  const value = Number(bottom) === 0 ? Number.POSITIVE_INFINITY : size;
  return { value: signed(sign, value), rest: rest.trim() };
}

function readGroups(text: string): NumberFound | undefined {
  const parts = groups.exec(text);
  if (parts === null) return undefined;
  const [, sign, digits = '', rest = ''] = parts;
  return { value: signed(sign, Number(digits.replaceAll(',', ''))), rest: rest.trim() };
}

/** Thousands parted by blanks: `5 200`. */
function readBlanks(text: string): NumberFound | undefined {
  const parts = blanks.exec(text);
  if (parts === null) return undefined;
  const [, sign, digits = '', decimals = '', rest = ''] = parts;
  const number = Number(digits.replaceAll(' ', '') + decimals.replace(',', '.'));
  return { value: signed(sign, number), rest: rest.trim() };
}

function readUnclear(text: string): NumberFound | undefined {
  const parts = unclear.exec(text);
  if (parts === null) return undefined;
  const [, sign, before, mark, after, rest = ''] = parts;
  const value = signed(sign, Number(`${before}.${after}`));
  const thousands = signed(sign, Number(`${before}${after}`));
  return {
    value,
    grouped: { value: thousands, mark: mark === ',' ? ',' : '.' },
    rest: rest.trim(),
  };
}

function readPlain(text: string): NumberFound | undefined {
  const parts = plain.exec(text);
  if (parts === null) return undefined;
  const [, sign, digits = '', exponent = '', rest = ''] = parts;
  return {
    value: signed(sign, Number(digits.replace(',', '.') + exponent)),
    rest: rest.trim(),
  };
}

function signed(sign: string | undefined, value: number): number {
  return sign === '-' ? -value : value;
}
