import { describe, expect, test } from 'vitest';
import { gatesOf, gatesOfRepair, shut } from '../../../src/core/tree/way/gates.ts';
import { fitTree } from '../../../src/core/tree/fit.ts';
import { bandOf } from '../../../src/core/tree/judge.ts';
import { byTheBook } from '../../../src/core/tree/limits.ts';
import { lintTree } from '../../../src/core/tree/lint/lint.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { parseTreeValue } from '../../../src/core/tree/parse.ts';
import { planted, told, type Fault } from '../../helpers/plant.ts';
import type { Shop } from '../../../src/core/tree/shop.ts';
import { smallShop, smallTree, waitingChecks } from '../../helpers/tree.ts';

const safeguards = [
  { before: { key: ['run'] }, check: 'look', shows: ['whole'], else: 'It would burn again.' },
];
const two = (change: Readonly<Record<string, unknown>> = {}): Tree =>
  smallTree({ format: 2, checks: waitingChecks(), ...change });

const waiting: Fault = ['checks.volts.after', { look: ['whole'] }];

/** The small tree in the second format with faults planted, read. */
const parse = (faults: readonly Fault[], shop = smallShop) =>
  parseTreeValue(planted(['format', 2], ...faults), 'small.json', shop);

function read(...faults: readonly Fault[]): Tree {
  const parsed = parse(faults);
  if (parsed.kind === 'bad') throw new Error(JSON.stringify(parsed.problems));
  return parsed.value;
}

describe('safeguards', () => {
  test('come before the steps whose standing they name, and before no others', () => {
    const tree = two({ safeguards });

    expect(gatesOf(tree, 'volts')).toEqual([
      { kind: 'safeguard', check: 'look', results: ['whole'], otherwise: 'It would burn again.' },
      { kind: 'after', check: 'look', results: ['whole'] },
    ]);
    expect(gatesOf(tree, 'lamp')).toEqual([]);
  });

  test('"running" stands for every way in which an engine runs', () => {
    const running = [{ ...safeguards[0], before: { engine: ['running'] } }];
    const tree = read(['safeguards', running], waiting, [
      'checks.volts.standing',
      { engine: 'fast-idle' },
    ]);

    expect(gatesOf(tree, 'volts').map(({ kind }) => kind)).toEqual(['safeguard', 'after']);
  });

  test('bind repairs by their standing', () => {
    const off = [{ ...safeguards[0], before: { battery: ['disconnected'] } }];

    expect(gatesOfRepair(two({ safeguards: off }), 'wire')).toHaveLength(1);
    expect(gatesOfRepair(two({ safeguards: off }), 'fuse')).toEqual([]);
  });

  test('are shut until their check shows one of their results', () => {
    const gates = gatesOf(two({ safeguards }), 'volts');

    expect(shut(gates, () => undefined)).toHaveLength(2);
    expect(shut(gates, () => 'burnt')).toHaveLength(2);
    expect(shut(gates, () => 'whole')).toEqual([]);
  });

  test('go with the check and the vehicle they are for', () => {
    const manual = [{ ...safeguards[0], when: { choke: 'manual' } }];
    const tree = two({ safeguards: manual });

    expect(fitTree(tree, { choke: 'automatic' }).safeguards).toEqual([]);
    expect(fitTree(tree, { choke: 'manual' }).safeguards).toHaveLength(1);
  });
});

describe('limits by the book', () => {
  const shop: Shop = {
    ...smallShop,
    book: { idle: { name: 'Idle volts', quantity: 'voltage', unit: 'V' } },
  };
  const low = { from: { book: 'idle', minus: 1, else: 12 }, below: 20 };
  const byBook: Fault = [
    'checks.volts.results',
    [
      { id: 'full', label: 'full', ...low, next: 'cause:wire' },
      { id: 'low', label: 'low', from: 2, below: low.from, next: 'cause:wire' },
      { id: 'dead', label: 'dead', below: 2, next: 'cause:wire' },
    ],
  ];

  test('move with the figure of the book, and stay general where nobody has read it', () => {
    const parsed = parse([byBook], shop);
    if (parsed.kind === 'bad') throw new Error(JSON.stringify(parsed.problems));
    const own = byTheBook(parsed.value, { idle: { value: 14_500, unit: 'mV' } });
    const volts = (tree: Tree) => tree.checks['volts'] as Tree['checks'][string];

    expect(bandOf(volts(parsed.value), 12.5)).toBe(0);
    expect(bandOf(volts(own), 13.4)).toBe(1);
    expect(bandOf(volts(own), 13.5)).toBe(0);
  });

  test('name a figure that the shop has, of the same quantity', () => {
    const wrong: Shop = {
      ...shop,
      book: { idle: { name: 'x', quantity: 'pressure', unit: 'psi' } },
    };

    expect(told(parse([byBook]))).toContain('unknown-book checks.volts.results[0]');
    expect(told(parse([byBook], wrong))).toContain('book-quantity checks.volts.results[0]');
  });
});

test.each([
  [
    'a safeguard of no check',
    'safeguards',
    [{ ...safeguards[0], check: 'loook' }],
    'unknown-check safeguards[0].check',
  ],
  [
    'a safeguard of no result',
    'safeguards',
    [{ ...safeguards[0], shows: ['hole'] }],
    'unknown-result safeguards[0].shows',
  ],
  [
    'a safeguard content with all',
    'safeguards',
    [{ ...safeguards[0], shows: ['whole', 'burnt'] }],
    'safeguard-of-nothing safeguards[0].shows',
  ],
  [
    'a state that is not there',
    'checks.volts.only-while',
    'warm',
    'unknown-state checks.volts.only-while',
  ],
  [
    'a spent state that is not there',
    'causes.wire.repair.spends',
    ['warm'],
    'unknown-state causes.wire.repair.spends[0]',
  ],
  [
    'a cause looked at that is not there',
    'checks.look.looks-at',
    ['fuze'],
    'unknown-cause checks.look.looks-at[0]',
  ],
  [
    'readings without a judge',
    'checks.volts.readings',
    [{ name: 'post', quantity: 'voltage', unit: 'V', plausible: [0, 16] }],
    'readings-without-judge checks.volts.readings',
  ],
  [
    'a judge without readings',
    'checks.volts.judge',
    'spread',
    'readings-without-judge checks.volts.readings',
  ],
  [
    'a reading a cylinder without one reading',
    'checks.volts.each',
    'cylinder',
    'each-of-one checks.volts.each',
  ],
])('%s is told', (_, path, value, expected) => {
  expect(told(parse([[path, value]]))).toContain(expected);
});

test('what the second format brings is refused in the first, and nothing else is', () => {
  const data = planted(['checks.look.told', 'the fuse']);

  expect(told(parseTreeValue(data, 'small.json', smallShop))).toEqual([
    'needs-format-two checks.look.told',
  ]);
});

test.each([
  ['checks.look.told', 'Is the fuse whole?'],
  ['checks.look.told', 'look at the fuse'],
  ['checks.look.told', 'fuse: whole'],
  ['checks.look.told', 'fuse'],
  ['checks.look.results.1.told', 'it was burnt, loose, or gone'],
  ['checks.look.results.1.told', 'it was burnt.'],
  ['causes.fuse.short', 'replace the fuse'],
])('%s: "%s" cannot stand in a sentence', (path, text) => {
  const tree = read([path, text]);

  expect(lintTree(tree, 'small.json').map(({ code }) => code)).toContain('told-form');
});

test.each([
  ['checks.look.told', 'the fuse of the horn'],
  ['checks.look.told', 'whether the fuse was whole'],
  ['checks.look.results.1.told', '{reading} was read'],
  ['causes.fuse.short', 'the fuse'],
])('%s: "%s" can', (path, text) => {
  const tree = read([path, text]);

  expect(lintTree(tree, 'small.json').map(({ code }) => code)).not.toContain('told-form');
});
