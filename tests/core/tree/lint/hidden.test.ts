import { expect, test } from 'vitest';
import { trusted } from '../../../../src/core/problem.ts';
import { lintTree } from '../../../../src/core/tree/lint/lint.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { shippedTrees } from '../../../helpers/library.ts';
import { planted, type Fault } from '../../../helpers/plant.ts';

const hidden = (...faults: readonly Fault[]) => {
  const tree = trusted(
    parseTreeValue(
      planted(
        ['format', 2],
        ['checks.volts.background', undefined],
        ['checks.volts.points', {}],
        ...faults,
      ),
      'small.json',
    ),
  );
  return lintTree(tree, 'small.json').filter(({ code }) => code === 'result-hidden');
};

test('a share that a later result hides asks for the order of the two', () => {
  const [problem] = hidden(
    ['checks.volts.sound', { low: 2, dead: 10 }],
    ['checks.volts.shows-with', { wire: { low: 98 } }],
  );
  expect(problem).toMatchObject({
    path: 'checks.volts.shows-with.wire.low',
    mend: 'With both there, is "low" what you see? Then list it after "dead".',
  });
});

test.each([
  ['the later one is rare', { low: 2, dead: 1 }, { low: 98 }],
  ['the share is of the last result', { low: 10, dead: 1 }, { dead: 98 }],
  ['no healthy share is left', { low: 2, dead: 1 }, { dead: 100 }],
])('none is asked where %s', (_, sound, wire) => {
  expect(hidden(['checks.volts.sound', sound], ['checks.volts.shows-with', { wire }])).toEqual([]);
});

test('no shipped tree has one', () => {
  const told = shippedTrees().flatMap((tree) =>
    lintTree(tree, tree.id).filter(({ code }) => code === 'result-hidden'),
  );
  expect(told).toEqual([]);
});
