import { describe, expect, test } from 'vitest';
import { trusted } from '../../../../src/core/problem.ts';
import { factsAsked, fitTree } from '../../../../src/core/tree/fit.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { nextOf } from '../../../../src/core/tree/way/next.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { nextOnWay } from '../../../../src/core/tree/way/way.ts';
import { planted, told, type Fault } from '../../../helpers/plant.ts';
import { smallShop } from '../../../helpers/tree.ts';

const base: readonly Fault[] = [
  ['format', 2],
  ['checks.lamp.shows-with', { fuse: { always: 'dark' }, wire: { dark: 'mostly' } }],
  ['checks.look.background', undefined],
  ['checks.look.points', {}],
  ['checks.volts.background', undefined],
  ['checks.volts.points', {}],
];
const parse = (...faults: readonly Fault[]) =>
  parseTreeValue(planted(...base, ...faults), 'small.json', smallShop);
const treeWith = (...faults: readonly Fault[]): Tree => trusted(parse(...faults));
const toThree = (row: readonly number[] | undefined) => row?.map((one) => Number(one.toFixed(3)));

/** The bands of the small tree's reading taken out, so that limits can say them. */
const unbanded = [0, 1, 2].flatMap((index): Fault[] => [
  [`checks.volts.results.${index}.from`, undefined],
  [`checks.volts.results.${index}.below`, undefined],
]);

describe('chances by name', () => {
  test('what is left of a hundred goes to the healthy result', () => {
    const tree = treeWith(['checks.volts.sound', { low: 5, dead: 2 }]);
    expect(toThree(tree.checks['volts']?.background)).toEqual([0.93, 0.05, 0.02]);
  });

  test('one number is spread over the bad results, and three are bad where nothing is said', () => {
    const one = treeWith(['checks.volts.sound', 10]).checks['volts'];
    expect(toThree(one?.background)).toEqual([0.9, 0.05, 0.05]);
    expect(toThree(treeWith().checks['volts']?.background)).toEqual([0.97, 0.015, 0.015]);
  });

  test('no sound vehicle is sure to show good, and no cause is sure to be seen', () => {
    const sure = treeWith(
      ['checks.look.sound', { burnt: 0 }],
      ['checks.look.shows-with', { fuse: { burnt: 100 } }],
    ).checks['look'];
    expect(sure?.background?.[1]).toBeCloseTo(0.005, 9);
    expect(sure?.points['fuse']?.[0]).toBeCloseTo(0.005 * 0.995, 9);
  });

  test('words stand for percents, and come to 97 at most', () => {
    const row = (shares: unknown) =>
      toThree(
        treeWith(['checks.volts.shows-with', { wire: shares }]).checks['volts']?.points['wire'],
      );
    expect(row({ dead: 'mostly' })).toEqual([0.197, 0.003, 0.8]);
    expect(row({ dead: 'always', low: 'half' })?.[2]).toBeCloseTo((97 * 0.97) / 1.47 / 100, 2);
    expect(row({ full: 'half', dead: 'half' })?.[2]).toBe(0.5);
  });

  test('a row never looks healthier than a sound vehicle: what is hidden goes to what hides it', () => {
    const check = treeWith(
      ['checks.volts.sound', { low: 3, dead: 10 }],
      ['checks.volts.shows-with', { wire: { low: 100 } }],
    ).checks['volts'];
    // One in ten sound vehicles reads dead, and dead hides low.
    expect(toThree(check?.points['wire'])?.[2]).toBe(0.1);
  });

  test("in the complaint's own test a result may be certain, and the unlisted shows any bad one", () => {
    const points = treeWith().checks['lamp']?.points;
    expect(points).toEqual({
      fuse: [0, 1],
      wire: [0.2, 0.8].map((one) => expect.closeTo(one)),
      unlisted: [0, 1],
    });
  });

  test.each([
    [
      'a name that is no result',
      ['checks.volts.sound', { flat: 2 }],
      'unknown-result checks.volts.sound',
    ],
    [
      'a name that is no cause',
      ['checks.volts.shows-with', { belt: { low: 9 } }],
      'unknown-cause checks.volts.shows-with.belt',
    ],
    [
      'more than a hundred',
      ['checks.volts.sound', { low: 70, dead: 50 }],
      'over-a-hundred checks.volts.sound',
    ],
    [
      'a sound vehicle with the complaint',
      ['checks.lamp.sound', { dark: 2 }],
      'sound-on-complaint checks.lamp.sound',
    ],
    [
      'certain elsewhere',
      ['checks.volts.shows-with', { wire: { always: 'low' } }],
      'certain-elsewhere checks.volts.shows-with.wire',
    ],
    ['said twice', ['checks.volts.background', [0.9, 0.05, 0.05]], undefined],
  ] as const)('%s is told', (_, fault, expected) => {
    expect(told(parse(fault as unknown as Fault))).toEqual(
      expected === undefined ? [] : [expected],
    );
  });
});

describe('one list of limits', () => {
  const limited = (...faults: readonly Fault[]) =>
    treeWith(...unbanded, ['checks.volts.limits', [12, 2]], ...faults).checks['volts'];

  test('parts the results as they are listed, and gives each its words', () => {
    const check = limited(
      ['checks.volts.results.2.label', 'dead'],
      ['checks.volts.results.0.label', undefined],
    );
    expect(check?.results.map(({ from, below, label }) => [from, below, label])).toEqual([
      [12, undefined, '12 V or more'],
      [2, 12, 'under 12 V'],
      [undefined, 2, 'dead, under 2 V'],
    ]);
    expect(check?.healthy).toBe('12 V or more');
  });

  test('rising limits part them the other way, and bands put the healthy one in the middle', () => {
    const rising = limited(['checks.volts.limits', [2, 12]]);
    expect(rising?.results.map(({ from, below }) => [from, below])).toEqual([
      [undefined, 2],
      [2, 12],
      [12, undefined],
    ]);
    const middle = limited(
      ['checks.volts.limits', [2, 12]],
      ['checks.volts.bands', ['low', 'full', 'dead']],
    );
    expect(middle?.results.map(({ from, below }) => [from, below])).toEqual([
      [2, 12],
      [undefined, 2],
      [12, undefined],
    ]);
  });

  test.each([
    ['too few', ['checks.volts.limits', [12]], 'limits-count checks.volts.limits'],
    ['up and down', ['checks.volts.limits', [12, 12]], 'limits-order checks.volts.limits'],
    [
      'bands of another check',
      ['checks.volts.bands', ['full', 'low']],
      'bands-other checks.volts.bands',
    ],
  ] as const)('%s: told', (_, fault, expected) => {
    const all = told(
      parse(...unbanded, ['checks.volts.limits', [12, 2]], fault as unknown as Fault),
    );
    expect(all).toContain(expected);
  });
});

describe('a fact that flips what it flips', () => {
  const manual = { when: { choke: 'manual' }, is: { dead: 60 } };
  const tree = treeWith(
    ['checks.volts.shows-with', { wire: [manual, { dead: 20 }] }],
    ['causes.fuse.odds', [{ when: { choke: 'manual' }, is: 5 }, 50]],
    ['checks.volts.minutes', [{ when: { choke: 'manual' }, is: 9 }, 3]],
  );

  test('the plain value holds where nobody knows, and the other where the fact is so', () => {
    const dead = (one: Tree) => one.checks['volts']?.points['wire']?.[2]?.toFixed(3);
    expect(factsAsked(tree)).toContain('choke');
    expect([dead(tree), tree.causes['fuse']?.odds, tree.checks['volts']?.minutes]).toEqual([
      '0.200',
      50,
      3,
    ]);
    const known = fitTree(tree, { choke: 'manual' });
    expect([dead(known), known.causes['fuse']?.odds, known.checks['volts']?.minutes]).toEqual([
      '0.600',
      5,
      9,
    ]);
    expect(dead(fitTree(tree, { choke: 'automatic' }))).toBe('0.200');
  });

  test('a plain value that is not last is told', () => {
    const faults = parse(['causes.fuse.odds', [{ when: { choke: 'manual' }, is: 5 }, 50, 20]]);
    expect(told(faults)).toEqual(['plain-not-last causes.fuse.odds']);
  });
});

describe('next by what is known', () => {
  const leads = [{ if: { lamp: ['dark'], look: ['whole'] }, go: 'cause:fuse' }, 'cause:wire'];
  const tree = treeWith(['checks.volts.results.2.next', leads]);
  const dead = tree.checks['volts']?.results[2];

  test('the first lead whose checks have all shown what it asks for, else the plain one', () => {
    const shown = (known: Readonly<Record<string, string>>) =>
      dead === undefined ? '' : nextOf(dead, (check) => known[check]);
    expect(shown({ lamp: 'dark', look: 'whole' })).toBe('cause:fuse');
    expect(shown({ lamp: 'dark' })).toBe('cause:wire');
  });

  test("the tree's own way follows it", () => {
    const done = (look: number) =>
      [
        { kind: 'shown', check: 'lamp', result: 1 },
        { kind: 'shown', check: 'look', result: look },
        { kind: 'shown', check: 'volts', result: 2 },
      ] as const;
    expect(nextOnWay(tree, done(0))).toEqual({ kind: 'cause', cause: 'fuse' });
    expect(nextOnWay(tree, done(1))).toEqual({ kind: 'cause', cause: 'wire' });
  });

  test('names that lead nowhere, and a list without an end, are told', () => {
    const wrong = [{ if: { lamp: ['dim'], horn: ['x'] }, go: 'cause:horn' }];
    expect(told(parse(['checks.volts.results.2.next', wrong])).toSorted()).toEqual([
      'plain-not-last checks.volts.results[2].next',
      'unknown-cause checks.volts.results[2].next[0]',
      'unknown-check checks.volts.results[2].next[0].if',
      'unknown-result checks.volts.results[2].next[0].if.lamp',
    ]);
  });
});
