import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { trees } from '../../../src/commands/trees/trees.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';

const shop = (...words: readonly string[]) => runCommand(trees, ['shop', ...words]);

test('trees shop without words lists what there is, each line readable at 80 columns', async () => {
  const { code, out } = await shop();
  const lines = out.trim().split('\n');

  expect(code).toBe(0);
  expect(lines.filter((line) => line.length > 80)).toEqual([]);
  expect(new Set(lines.map((line) => line.split(' ')[0]))).toEqual(
    new Set(['caution', 'tool', 'access', 'fact', 'book', 'unit']),
  );
});

test('trees shop WORDS shows what has all of them, in whatever kind', async () => {
  const { out } = await shop('ammeter');

  expect(out).toMatch(/^caution +ammeter-live +Dash ammeter is live: /m);
  expect(out).toMatch(/^fact +feed-meter +ammeter \| /m);
  expect((await shop('ammeter', 'dash')).out).not.toMatch(/^tool/m);
  expect((await shop('AMMETER')).out).toBe(out);
});

test('trees shop finds a unit by the way it is typed, with the name of its quantity', async () => {
  expect((await shop('megohm')).out).toMatch(/^unit +Mohm +of "resistance": megohm/);
});

test('trees shop finds words from their beginning only', async () => {
  const { out } = await shop('rake');

  expect(out).not.toMatch(/brake/);
});

test('trees shop --json gives the whole meaning', async () => {
  const { out } = await shop('batt-gas', '--json');

  expect(JSON.parse(out)).toEqual([
    { kind: 'caution', id: 'batt-gas', meaning: 'Battery gas: any test or charge at the battery' },
  ]);
});

test('trees shop shows what the folder of --trees adds', async () => {
  const folder = scratch();
  const more = {
    format: 1,
    facts: { relay: { ask: 'A relay?', values: { no: 'no', yes: 'yes' } } },
  };
  writeFileSync(join(folder, 'shop.json'), JSON.stringify(more));

  expect((await shop('relay', '--trees', folder)).out).toMatch(
    /^fact +relay +no \| yes: A relay\?$/m,
  );
});

test('trees shop tells words that nothing has', async () => {
  const { code, err } = await shop('zeppelin');

  expect(code).toBe(2);
  expect(err).toMatch(/Nothing in the shop has all of these words: zeppelin\./);
});
