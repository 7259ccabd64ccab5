import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import { CautionPage } from '../../src/screens/cautions.tsx';
import { shippedShop, shippedTree } from '../helpers/library.ts';

const shop = shippedShop();
const leg = { tree: shippedTree('no-supply'), shop, since: 0 };
const all = Object.keys(shop.cautions);

/** Rows between head and foot on the smallest screen we promise, 60 by 20, less the step's title. */
const room = 9;

test.each(all)('%s can be read whole, with what to press, at 60 by 20', (id) => {
  const text = renderToString(<CautionPage cautions={[id, id]} leg={leg} seen={1} />, {
    columns: 60,
  });
  const { text: words = '', defer = '' } = shop.cautions[id] ?? {};
  const flat = text.replace(/\s+/g, ' ');

  expect(text.split('\n').length).toBeLessThanOrEqual(room);
  expect(flat).toContain(words.replace(/\s+/g, ' '));
  expect(flat).toContain(defer);
  expect(flat).toContain('Caution 2 of 3: press 2 when you have read it.');
});

test('a row that is folded begins flush, whatever the row before it ended with', () => {
  for (const columns of [40, 41, 42, 43, 44, 45, 60, 80]) {
    const rows = renderToString(<CautionPage cautions={all.slice(0, 1)} leg={leg} seen={0} />, {
      columns,
    }).split('\n');
    const folded = rows.slice(1).filter((row) => !row.startsWith(' >'));

    expect([columns, folded.filter((row) => !/^ {3}\S/.test(row))]).toEqual([columns, []]);
  }
});
