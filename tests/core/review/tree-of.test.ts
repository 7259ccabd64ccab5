import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { treeOf } from '../../../src/core/review/tree-of.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { lintTree } from '../../../src/core/tree/lint/lint.ts';
import { parseTree } from '../../../src/core/tree/parse.ts';
import { printTree } from '../../../src/core/tree/written/print.ts';
import { readSession } from '../../../src/store/recover.ts';
import { shippedShop } from '../../helpers/library.ts';
import { after } from '../../helpers/story.ts';

const example = 'sessions/examples/2026-10-03-1310-orchard-van-own-wipers-stop-half-way.jsonl';

function exampleTree(): object {
  const read = readSession(readFileSync(example), example);
  if (read.kind === 'bad') throw new Error('the example cannot be read');
  const tree = treeOf(fold(read.value.header, read.value.events));
  if (tree === undefined) throw new Error('the example has no complaint in own words');
  return tree;
}

/** What a mentor might say of it: common practice, no source. */
const numbers: Readonly<Record<string, unknown>> = {
  unlisted: 20,
  'causes.linkage-wipers-dry-stiff.odds': 30,
  'causes.linkage-wipers-dry-stiff.repair.minutes': 40,
  'causes.ground-braid-wiper-motor.odds': 50,
  'checks.own-wipers-stop-half-way-test.shows-with.linkage-wipers-dry-stiff.bad': 90,
  'checks.own-wipers-stop-half-way-test.shows-with.ground-braid-wiper-motor.bad': 90,
  'checks.own-wipers-stop-half-way-test.shows-with.unlisted.bad': 70,
  'checks.bat-rest-volts-here.sound': 5,
  'checks.bat-rest-volts-here.shows-with.linkage-wipers-dry-stiff.half': 5,
  'checks.bat-rest-volts-here.shows-with.linkage-wipers-dry-stiff.low': 2,
  'checks.bat-rest-volts-here.shows-with.linkage-wipers-dry-stiff.cell': 1,
  'checks.bat-rest-volts-here.shows-with.linkage-wipers-dry-stiff.gone': 1,
  'checks.bat-rest-volts-here.shows-with.ground-braid-wiper-motor.half': 5,
  'checks.bat-rest-volts-here.shows-with.ground-braid-wiper-motor.low': 2,
  'checks.bat-rest-volts-here.shows-with.ground-braid-wiper-motor.cell': 1,
  'checks.bat-rest-volts-here.shows-with.ground-braid-wiper-motor.gone': 1,
  'checks.wiper-fuse.sound': 3,
  'checks.wiper-fuse.shows-with.linkage-wipers-dry-stiff.bad': 8,
  'checks.wiper-fuse.shows-with.ground-braid-wiper-motor.bad': 3,
  'checks.volts-wiper-motor-hangs.sound': 3,
  'checks.volts-wiper-motor-hangs.shows-with.linkage-wipers-dry-stiff.low': 10,
  'checks.volts-wiper-motor-hangs.shows-with.ground-braid-wiper-motor.low': 60,
  'checks.look-at-linkage-wipers-dry-stiff.sound': 3,
  'checks.look-at-linkage-wipers-dry-stiff.shows-with.linkage-wipers-dry-stiff.this-is-it':
    'mostly',
  'checks.volts-lost-from-motor.sound': 3,
  'checks.volts-lost-from-motor.shows-with.linkage-wipers-dry-stiff.high': 4,
  'checks.volts-lost-from-motor.shows-with.ground-braid-wiper-motor.high': 'always',
};

/** A value with every place that is left to fill filled by its path. */
function filled(value: unknown, path = ''): unknown {
  if (value === null) return numbers[path];
  if (typeof value !== 'object' || Array.isArray(value)) return value;
  return Object.fromEntries(
    Object.entries(value as object).map(([key, one]: [string, unknown]) => [
      key,
      filled(one, path === '' ? key : `${path}.${key}`),
    ]),
  );
}

test('what a mentor has to fill in is named place by place, and nothing else is wrong', () => {
  const parsed = parseTree(printTree(exampleTree()), 'wipers.json', shippedShop());
  const problems = parsed.kind === 'bad' ? parsed.problems : [];

  expect(problems.map(({ path = '' }) => path).toSorted()).toEqual(Object.keys(numbers).toSorted());
  expect(problems.every(({ message }) => message.includes('here stands null'))).toBe(true);
});

test('with the numbers filled in it passes every check of a tree', () => {
  const text = printTree(filled(exampleTree()) as object);
  const parsed = parseTree(text, 'wipers-stop-half-way.json', shippedShop());
  if (parsed.kind === 'bad') throw new Error(JSON.stringify(parsed.problems, null, 2));

  expect(lintTree(parsed.value, 'wipers-stop-half-way.json', [])).toEqual([]);
});

test('the way it leads is the one that was taken, and the cause is the one that was found', () => {
  expect(exampleTree()).toMatchObject({
    start: 'bat-rest-volts-here',
    checks: {
      'volts-lost-from-motor': {
        results: [{ next: 'stop' }, { next: 'cause:ground-braid-wiper-motor' }],
      },
    },
    causes: {
      'ground-braid-wiper-motor': {
        repair: { minutes: 25, parts: ['ground braid', 'toothed washer'] },
      },
    },
  });
});

test('a job that had a tree has none to be made from it', () => {
  expect(treeOf(after([]).story)).toBeUndefined();
});
