/** A number at the start of a text and what stands behind it. */
export type NumberFound = {
  readonly value: number;
  readonly rest: string;
  /** The other thing it may mean: `1,250` is 1.25 here and 1250 there. */
  readonly grouped?: number;
};

const gauge = /^([1-4])\/0(.*)$/;
const zeros = /^(0{1,4})(?![\d.,/])(.*)$/;
const fraction = /^([+-]?)(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)(.*)$/;
const groups = /^([+-]?)([1-9]\d{0,2}(?:,\d{3}){2,}|[1-9]\d{0,2}(?:,\d{3})+\.\d+)(.*)$/;
const unclear = /^([+-]?)([1-9]\d{0,2}),(\d{3})(?![\d.,])(.*)$/;
const plain = /^([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+)(e[+-]?\d+)?(.*)$/i;

/**
 * Reads a number as people write it: `15`, `12,4`, `.5`, `1e3`, `1,234,567`, `1/2`, `1 1/8`.
 * With `wireGauge`, `2/0` and `00` are the gauge sizes below zero (-1). Undefined when the text
 * does not begin with one number; a number too large to hold comes back as Infinity.
 */
export function readNumber(text: string, wireGauge = false): NumberFound | undefined {
  const clean = text
    .trim()
    .replaceAll(/[\u2212\u2013]/g, '-')
    .replaceAll(/[\u00a0\u2009\u202f]/g, ' ');
  const found = wireGauge ? (readGauge(clean) ?? readAny(clean)) : readAny(clean);
  // What follows must be a unit: a further digit, point or sign is a slip of the finger.
  return found === undefined || /^[\d.,+/-]/.test(found.rest) ? undefined : found;
}

function readAny(text: string): NumberFound | undefined {
  return readFraction(text) ?? readGroups(text) ?? readUnclear(text) ?? readPlain(text);
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

function readUnclear(text: string): NumberFound | undefined {
  const parts = unclear.exec(text);
  if (parts === null) return undefined;
  const [, sign, before, after, rest = ''] = parts;
  const value = signed(sign, Number(`${before}.${after}`));
  return { value, grouped: signed(sign, Number(`${before}${after}`)), rest: rest.trim() };
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
