import { describe, expect, test } from 'vitest';
import { factsAsked } from '../../../../src/core/tree/fit.ts';
import type { Check } from '../../../../src/core/tree/model.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { lintTree } from '../../../../src/core/tree/lint/lint.ts';
import { planted, told, type Fault } from '../../../helpers/plant.ts';
import { shippedTree } from '../../../helpers/library.ts';
import { readingsTree } from '../../../helpers/readings.ts';
import { smallShop, smallTree } from '../../../helpers/tree.ts';

/** The small tree in the second format with faults planted, read. */
const parse = (faults: readonly Fault[]) =>
  parseTreeValue(planted(['format', 2], ...faults), 'small.json', smallShop);

describe('several readings', () => {
  const one = { name: 'post', quantity: 'voltage', unit: 'V', plausible: [0, 16] };
  const judged = (judge: string, ...readings: readonly unknown[]): readonly Fault[] => [
    ['checks.volts.readings', readings],
    ['checks.volts.judge', judge],
  ];
  const ratio: Fault = [
    'checks.volts.reading',
    { quantity: 'ratio', unit: '%', plausible: [0, 100] },
  ];

  test.each([
    ['a difference of two', judged('difference', one, one)],
    ['a spread of three', judged('spread', one, one, one)],
    ['a share', [...judged('share', one, one), ratio]],
    [
      'a figure that takes a list',
      [
        ...judged('compression-spread', { ...one, quantity: 'pressure', unit: 'psi' }),
        ratio,
        ['checks.volts.each', 'cylinder'],
      ] as Fault[],
    ],
  ])('%s can be judged', (_, faults) => {
    expect(told(parse(faults))).toEqual([]);
  });

  test.each([
    ['one alone', judged('difference', one), 'difference-of-two checks.volts.readings'],
    [
      'two units',
      judged('spread', one, { ...one, unit: 'mV' }),
      'readings-differ checks.volts.readings',
    ],
    ['a share that is no ratio', judged('share', one, one), 'judge-unfit checks.volts.judge'],
    [
      'a spread of something else',
      [...judged('spread', one, one), ratio],
      'judge-unfit checks.volts.judge',
    ],
    ['a word that is no figure', judged('mean', one, one), 'judge-unfit checks.volts.judge'],
    [
      'a figure that asks for more',
      judged('voltage-drop', one, one),
      'judge-unfit checks.volts.judge',
    ],
  ])('%s cannot', (_, faults, expected) => {
    expect(told(parse(faults))).toContain(expected);
  });

  test('one a cylinder asks the vehicle for its cylinders', () => {
    const tree = parse([...judged('lowest', one), ['checks.volts.each', 'cylinder']]);

    expect(tree.kind === 'good' && factsAsked(tree.value)).toContain('cylinders');
    expect(factsAsked(smallTree())).not.toContain('cylinders');
  });
});

test('a label that names a number is told where its limit moves with the book', () => {
  const labelled = (label: string) => {
    const check = readingsTree.checks['idle-vacuum'] as Check;
    const results = check.results.map((one) => (one.id === 'low' ? { ...one, label } : one));
    const checks = { ...readingsTree.checks, 'idle-vacuum': { ...check, results } };
    return lintTree({ ...readingsTree, checks }, 'weak-runner.json').map(({ code }) => code);
  };

  expect(labelled('low: under 16 inHg')).toEqual(['book-label']);
  expect(labelled('low for the book')).toEqual([]);
});

test('a label that the limits make may name their numbers: it moves with them', () => {
  const codes = lintTree(shippedTree('rough-idle'), 'rough-idle.json').map(({ code }) => code);

  expect(shippedTree('rough-idle').checks['vac-level']?.results[0]?.label).toMatch(/\d/);
  expect(codes).not.toContain('book-label');
});

test('the tree that the other tests of readings walk is a sound one', () => {
  expect(lintTree(readingsTree, 'weak-runner.json')).toEqual([]);
});
