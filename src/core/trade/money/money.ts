import { bearersOf, minorDigits } from './currencies.ts';

/** An exact amount of money: a whole number of the smallest unit of its currency. */
export type Money = {
  /** An ISO 4217 code, a sign that several currencies share (`$`, `£`), or empty where none was said. */
  readonly currency: string;
  readonly minor: bigint;
};

/** Digits behind the point where the currency is not known by its code. */
const usualDigits = 2;

const digitsOf = (currency: string): number => minorDigits(currency) ?? usualDigits;

const form =
  /^(?<before>\p{Sc}|[A-Za-z]{3})?\s*(?<amount>\d[\d.,'’\s]*?)\s*(?<after>\p{Sc}|[A-Za-z]{3})?$/u;

/**
 * Reads an amount as typed: `12.40`, `12,40 EUR`, `€12`, `$1,250.00`, `1 250,50`. Undefined for what is
 * no amount, is finer than the smallest unit (`1.789` in EUR), or can be read in two ways (`1,234`).
 * @param own the currency of the job, which a bare number is in, and a sign that it bears
 */
export function parseMoney(text: string, own = ''): Money | undefined {
  if (text.length > 40) return undefined;
  const { before, amount = '', after } = form.exec(text.trim())?.groups ?? {};
  const currency = currencyOf([before, after], own);
  if (currency === undefined) return undefined;
  const minor = parseAmount(amount, digitsOf(currency));
  return minor === undefined ? undefined : { currency, minor };
}

/** Reads a currency as a person chooses it: a code in any case, or a sign; undefined for neither. */
export function parseCurrency(text: string): string | undefined {
  const typed = text.trim();
  return typed === '' ? '' : named(typed, '');
}

/** The currency said before and behind an amount; both only where the code bears the sign: `$5 CAD`. */
function currencyOf(said: readonly (string | undefined)[], own: string): string | undefined {
  const [one, other] = said.filter((part) => part !== undefined);
  if (one === undefined) return own;
  if (other === undefined) return named(one, own);
  const [sign, code] = bearersOf(one).length > 0 ? [one, other] : [other, one];
  return bearersOf(sign).includes(code.toUpperCase()) ? code.toUpperCase() : undefined;
}

function named(word: string, own: string): string | undefined {
  const code = word.toUpperCase();
  if (minorDigits(code) !== undefined) return code;
  const bearers = bearersOf(word);
  if (bearers.includes(own)) return own;
  if (bearers.length === 1) return bearers[0];
  // The minor units of those that share it must be the same for it to stand by itself: a yen has none.
  return bearers.length > 1 && word !== '¥' ? word : undefined;
}

/** Digits with a point or a comma, thousands parted or not, as a whole number of the minor unit. */
function parseAmount(text: string, digits: number): bigint | undefined {
  const plain = /^(?<whole>\d+)(?:(?<point>[.,])(?<parts>\d+))?$/.exec(text)?.groups;
  if (plain === undefined) return parseGrouped(text, digits);
  const { whole = '', point, parts = '' } = plain;
  if (parts.length !== 3 || whole.length > 3) return inMinor(whole, parts, digits);
  // Three digits behind the only point or comma: thousands where the currency has no parts; parts where
  // it has three and a point parts them; else it can be either.
  if (digits === 0) return parseGrouped(text, digits);
  return digits >= 3 && (point === '.' || whole === '0')
    ? inMinor(whole, parts, digits)
    : undefined;
}

const grouped = /^\d{1,3}(?<group>[.,'’\s])\d{3}(?:\k<group>\d{3})*(?:(?<point>[.,])\d+)?$/u;

function parseGrouped(text: string, digits: number): bigint | undefined {
  const { group, point } = grouped.exec(text)?.groups ?? {};
  if (group === undefined || group === point) return undefined;
  const [whole = '', parts = ''] = point === undefined ? [text] : splitLast(text, point);
  return inMinor(whole.replaceAll(/\D/gu, ''), parts, digits);
}

const splitLast = (text: string, point: string): readonly string[] => {
  const at = text.lastIndexOf(point);
  return [text.slice(0, at), text.slice(at + 1)];
};

const inMinor = (whole: string, parts: string, digits: number): bigint | undefined =>
  parts.length > digits ? undefined : BigInt(`${whole}${parts.padEnd(digits, '0')}`);

/** So many of the same price. */
export const times = ({ currency, minor }: Money, count: number): Money => ({
  currency,
  minor: minor * BigInt(count),
});

/** Sums by currency, in the order in which the currencies come up; amounts of two are never added. */
export function totalsOf(amounts: readonly Money[]): readonly Money[] {
  const sums = new Map<string, bigint>();
  for (const { currency, minor } of amounts) sums.set(currency, (sums.get(currency) ?? 0n) + minor);
  return [...sums].map(([currency, minor]) => ({ currency, minor }));
}

/** `12.40 EUR`, `$12.40`, `1250 JPY`; without a word where no currency was said. */
export function showMoney({ currency, minor }: Money): string {
  const digits = digitsOf(currency);
  const sign = minor < 0n ? '-' : '';
  const all = String(minor < 0n ? -minor : minor).padStart(digits + 1, '0');
  const amount = digits === 0 ? all : `${all.slice(0, -digits)}.${all.slice(-digits)}`;
  if (currency === '') return `${sign}${amount}`;
  return minorDigits(currency) === undefined
    ? `${sign}${currency}${amount}`
    : `${sign}${amount} ${currency}`;
}
