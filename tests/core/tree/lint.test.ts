import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Problem } from '../../../src/core/problem.ts';
import { lintLibrary, lintTree } from '../../../src/core/tree/lint.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { parseShop, parseTree, parseTreeValue } from '../../../src/core/tree/parse.ts';
import { lintFaults } from '../../helpers/lint-faults.ts';
import { planted, type Fault } from '../../helpers/plant.ts';
import { smallShop } from '../../helpers/tree.ts';

/** The small tree with the words that a whole tree has, so that only what is planted is told. */
const whole: readonly Fault[] = [
  ['causes.fuse.where', 'Fuse box'],
  ['causes.fuse.shows', 'Dark glass'],
  ['causes.wire.where', 'Loom'],
  ['causes.wire.shows', 'No volts'],
  ['checks.lamp.how', ['Switch on.']],
  ['checks.look.how', ['Pull it out, look through it.']],
  ['checks.volts.how', ['Meter to the lamp.']],
  ['checks.volts.healthy', '12 V or more'],
];

const parsed = (...faults: readonly Fault[]): Tree => {
  const tree = parseTreeValue(planted(...whole, ...faults), 'small.json', smallShop);
  if (tree.kind === 'bad') throw new Error(JSON.stringify(tree.problems));
  return tree.value;
};
const codes = (problems: readonly Problem[]): readonly string[] =>
  problems.map(({ code, path }) => `${code} ${path ?? ''}`);
const linted = (...faults: readonly Fault[]) =>
  codes(lintTree(parsed(...faults), 'small.json', ['no-light', 'no-crank']));

test.each(lintFaults)('%s is told, and nothing else', (_, faults, expected) => {
  expect(linted(...faults)).toEqual(expected);
});

test('every problem has its file, its message and a way to mend it', () => {
  for (const [, faults] of lintFaults)
    for (const problem of lintTree(parsed(...faults), 'small.json'))
      expect(problem).toMatchObject({
        file: 'small.json',
        message: expect.stringMatching(/./),
        mend: expect.stringMatching(/./),
      });
});

test('without a library another tree is taken as it is', () => {
  const tree = parsed(['checks.volts.results.0.next', 'tree:no-brake']);

  expect(codes(lintTree(tree, 'small.json'))).toEqual([]);
});

test('the brake tree never says to drive', () => {
  const brakes = parsed(['id', 'brakes'], ['checks.lamp.how', ['Drive on; listen.']]);
  const other = parsed(['id', 'noise'], ['checks.lamp.how', ['Drive on; listen.']]);

  expect(codes(lintTree(brakes, 'brakes.json'))).toEqual(['brakes-drive ']);
  expect(codes(lintTree(other, 'noise.json'))).toEqual([]);
});

describe('a library', () => {
  test('one name with other results is told at the second tree', () => {
    const other = parsed(
      ['id', 'dim'],
      ['checks.look.results.0.id', 'sound'],
      ['checks.volts.after', {}],
    );

    expect(codes(lintLibrary([parsed(), other]))).toEqual(['check-differs checks.look.results']);
    expect(lintLibrary([parsed(), other])[0]).toMatchObject({ file: 'dim.json' });
    expect(lintLibrary([parsed(), parsed()])).toEqual([]);
  });

  test('the trees we ship have nothing to mend', () => {
    const shop = parseShop(readFileSync('trees/shop.json', 'utf8'), 'shop.json');
    const names = readdirSync('trees').filter(
      (name) => name.endsWith('.json') && !/^shop|schema/.test(name),
    );
    const trees = names.map((name) => {
      const tree = parseTree(
        readFileSync(`trees/${name}`, 'utf8'),
        name,
        shop.kind === 'good' ? shop.value : undefined,
      );
      if (tree.kind === 'bad') throw new Error(JSON.stringify(tree.problems));
      return tree.value;
    });

    expect(trees.length).toBeGreaterThan(10);
    expect(
      trees.flatMap((tree) =>
        codes(
          lintTree(
            tree,
            tree.id,
            trees.map(({ id }) => id),
          ),
        ),
      ),
    ).toEqual([]);
    expect(codes(lintLibrary(trees))).toEqual([]);
  });
});
