import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import {
  leftOutWords,
  moneyWords,
  partsTotalWords,
} from '../../../../src/core/session/costs/words.ts';
import { costsOf } from '../../../../src/core/session/costs/costs.ts';
import { parseMoney, showMoney } from '../../../../src/core/trade/money/money.ts';
import { after, headerFor } from '../../../helpers/story.ts';

const inEuro = { ...headerFor(), currency: 'EUR' };
const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const repair = (parts: string[], cost?: string): Action => ({
  do: 'repair',
  cause: 'fuse',
  parts,
  ...(cost !== undefined && { cost }),
});
const costs = (...actions: readonly Action[]) => costsOf(after([dark, ...actions], inEuro).story);

describe('what a job has cost', () => {
  test('parts of repairs and parts bought apart stand in one list, summed by currency', () => {
    const found = costs(
      repair(['2 x fuse link at 3,50', 'tape at $1.25', '1 x clip (spare)']),
      { do: 'part-bought', part: '3 x bulb at 0.99 EUR' },
      { do: 'part-bought', part: 'brake cleaner', count: 2, price: '4.10', use: 'consumable' },
    );

    expect(
      found.lines.map(({ name, count, sum, use }) => [name, count, sum && showMoney(sum), use]),
    ).toEqual([
      ['fuse link', 2, '7.00 EUR', 'fitted'],
      ['tape', 1, '$1.25', 'fitted'],
      ['clip', 1, undefined, 'spare'],
      ['bulb', 3, '2.97 EUR', 'spare'],
      ['brake cleaner', 2, '8.20 EUR', 'consumable'],
    ]);
    expect(partsTotalWords(found)).toBe('18.17 EUR and $1.25; 1 without a price');
  });

  test('what cannot be read is kept as words and named, not dropped', () => {
    const found = costs(repair(['pump at 1.789'], 'about a tenner'), {
      do: 'part-bought',
      part: 'hose',
      price: 'free',
    });

    expect(leftOutWords(found)).toBe('not counted: "1.789", "free", "about a tenner"');
    expect(found.spent).toEqual([]);
  });

  test('a repair whose cost in all is noted counts by that, and not by its parts as well', () => {
    const found = costs(repair(['link at 3.50'], '40 EUR'), {
      do: 'part-bought',
      part: 'bulb at 1',
    });

    expect(moneyWords(found.parts)).toBe('4.50 EUR');
    expect(moneyWords(found.spent)).toBe('41.00 EUR');
  });

  test('nothing is counted where nothing was noted', () => {
    expect(partsTotalWords(costs(repair(['none'])))).toBe('none noted');
    expect(partsTotalWords(costs({ do: 'repair', cause: 'fuse' }))).toBe('none noted');
  });

  test('a purchase that is taken back does not count', () => {
    expect(costs({ do: 'part-bought', part: 'bulb at 1' }, { do: 'take-back' }).lines).toEqual([]);
  });

  test('in a job without a currency a bare price stands by itself', () => {
    const { story } = after([{ do: 'part-bought', part: 'bulb at 1.10' }]);

    expect(partsTotalWords(costsOf(story))).toBe('1.10');
  });
});

test('the total is the exact sum of what each line says, however many', () => {
  const line = fc.record({
    count: fc.integer({ min: 1, max: 9999 }),
    cents: fc.integer({ min: 0, max: 99_999_999 }),
    comma: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(line, { maxLength: 40 }), (bought) => {
      const story = {
        header: inEuro,
        repairs: [],
        bought: bought.map(({ count, cents, comma }, index) => {
          const [whole, parts] = [Math.floor(cents / 100), String(cents % 100).padStart(2, '0')];
          return {
            n: index + 1,
            stamp: { at: '', run: '', mono: 0, up: 0 },
            part: 'x',
            count,
            price: `${whole}${comma ? ',' : '.'}${parts}`,
            use: 'spare' as const,
          };
        }),
      };
      const cents = bought.reduce((all, one) => all + BigInt(one.count) * BigInt(one.cents), 0n);

      const [total] = costsOf(story).parts;

      expect(total?.minor ?? 0n).toBe(cents);
      expect(total && parseMoney(showMoney(total))).toEqual(total);
    }),
    { seed: 18 },
  );
});
