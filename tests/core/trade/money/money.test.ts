import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { currencyCodes, minorDigits } from '../../../../src/core/trade/money/currencies.ts';
import {
  parseCurrency,
  parseMoney,
  showMoney,
  times,
  totalsOf,
} from '../../../../src/core/trade/money/money.ts';

const shown = (text: string, own?: string): string => {
  const money = parseMoney(text, own);
  return money === undefined ? 'not counted' : showMoney(money);
};

describe('an amount as it is typed', () => {
  test.each([
    ['12.40', '', '12.40'],
    ['12,40', 'EUR', '12.40 EUR'],
    ['12.4', 'EUR', '12.40 EUR'],
    ['12', 'EUR', '12.00 EUR'],
    ['12,40 EUR', '', '12.40 EUR'],
    ['EUR 12,40', 'USD', '12.40 EUR'],
    ['12.40 eur', '', '12.40 EUR'],
    ['€12.40', '', '12.40 EUR'],
    ['12.40 €', '', '12.40 EUR'],
    ['$3.50', '', '$3.50'],
    ['$3.50', 'EUR', '$3.50'],
    ['$3.50', 'CAD', '3.50 CAD'],
    ['$3.50 AUD', '', '3.50 AUD'],
    ['£7', 'GBP', '7.00 GBP'],
    ['¥1200', 'JPY', '1200 JPY'],
    ['1,250.00 USD', '', '1250.00 USD'],
    ['1.250,00 EUR', '', '1250.00 EUR'],
    ['1 250,50', 'EUR', '1250.50 EUR'],
    ["1'250.50", 'CHF', '1250.50 CHF'],
    ['1,234,567', 'USD', '1234567.00 USD'],
    ['1,200 JPY', '', '1200 JPY'],
    ['1.250 KWD', '', '1.250 KWD'],
    ['0,125 KWD', '', '0.125 KWD'],
    ['12345678901234567890.12', 'EUR', '12345678901234567890.12 EUR'],
  ])('%s in a job in "%s" is %s', (text, own, words) => {
    expect(shown(text, own)).toBe(words);
  });

  test.each([
    ['a price of fuel, finer than a cent, or thousands', '1.789', 'EUR'],
    ['thousands, or finer than a cent', '1,234', 'USD'],
    ['thousands, or thousandths', '1,250 KWD', ''],
    ['parts of what has none', '12.40 JPY', ''],
    ['three decimals', '0.125', 'EUR'],
    ['a word', 'about a tenner', 'EUR'],
    ['a code that is none', '12.40 XYZ', ''],
    ['a sign that two bear, with other parts each', '¥1200', 'EUR'],
    ['a sign and a code that does not bear it', '€5 USD', ''],
    ['two points', '1.2.3', 'EUR'],
    ['groups that are no thousands', '12,34,56', 'EUR'],
    ['less than nothing', '-3', 'EUR'],
    ['nothing', '', 'EUR'],
  ])('%s is not counted: "%s" in "%s"', (_, text, own) => {
    expect(shown(text, own)).toBe('not counted');
  });

  test('a currency is chosen by code or sign', () => {
    expect(['eur', '€', '$', '', 'EURO', '?'].map(parseCurrency)).toEqual([
      'EUR',
      'EUR',
      '$',
      '',
      undefined,
      undefined,
    ]);
  });
});

/**
 * The minor units of currencies, held against the tables of the runtime (CLDR), which leave the cents
 * away where they are no longer in use: these are named, with what ISO 4217 says.
 */
test('a currency has the minor unit that ISO 4217 gives it', () => {
  const known = new Set(Intl.supportedValuesOf('currency'));
  const other = currencyCodes.filter((currency) => {
    const { maximumFractionDigits } = new Intl.NumberFormat('en', {
      style: 'currency',
      currency,
    }).resolvedOptions();
    return known.has(currency) && maximumFractionDigits !== minorDigits(currency);
  });

  expect(other.toSorted().join(' ')).toBe(
    'AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SOS SYP YER',
  );
  // ISO 4217, list one, read on the day the table was made.
  expect(['JPY', 'KRW', 'EUR', 'USD', 'HUF', 'IQD', 'KWD', 'TND', 'CLF'].map(minorDigits)).toEqual([
    0, 0, 2, 2, 2, 3, 3, 3, 4,
  ]);
});

/** A price as a fraction over the minor units of a whole, worked out without the text. */
const price = fc.record({
  currency: fc.constantFrom('EUR', 'JPY', 'KWD', 'USD'),
  whole: fc.bigInt({ min: 0n, max: 10n ** 15n }),
  part: fc.integer({ min: 0, max: 999 }),
  count: fc.integer({ min: 1, max: 9999 }),
  point: fc.constantFrom('.', ','),
});

test('a sum is that of exact fractions, whatever is added', () => {
  fc.assert(
    fc.property(fc.array(price, { maxLength: 30 }), (prices) => {
      const sums = new Map<string, bigint>();
      const amounts = prices.map(({ currency, whole, part, count, point }) => {
        const digits = { EUR: 2, JPY: 0, KWD: 3, USD: 2 }[currency] ?? 2;
        const base = 10n ** BigInt(digits);
        const parts = BigInt(part) % base;
        // All prices over the same denominator of a thousand: no digits are taken from a text.
        const thousandths = (whole * 1000n + (parts * 1000n) / base) * BigInt(count);
        sums.set(currency, (sums.get(currency) ?? 0n) + thousandths);
        const decimals =
          digits === 0
            ? ''
            : `${currency === 'KWD' ? '.' : point}${String(parts).padStart(digits, '0')}`;
        const money = parseMoney(`${whole}${decimals} ${currency}`);
        if (money === undefined) throw new Error(`not read: ${whole}${decimals} ${currency}`);
        return times(money, count);
      });

      const totals = totalsOf(amounts);

      expect(totals.map(({ currency }) => currency)).toEqual([...sums.keys()]);
      for (const { currency, minor } of totals) {
        const base = 10n ** BigInt(minorDigits(currency) ?? 0);
        expect(minor * 1000n).toBe((sums.get(currency) ?? -1n) * base);
      }
    }),
    { seed: 4217 },
  );
});

test('what is shown is read back as the same', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('EUR', 'JPY', 'CLF', '$', '£', ''),
      fc.bigInt({ min: 0n, max: 10n ** 12n }),
      (currency, minor) => {
        const money = { currency, minor };

        expect(parseMoney(showMoney(money))).toEqual(money);
      },
    ),
    { seed: 4217 },
  );
});
