import { describe, expect, test } from 'vitest';
import { problemsOf, trusted } from '../../../../src/core/problem.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { fileOf } from '../../../../src/core/tree/written/settle.ts';
import { branched, fourFuses } from '../../../helpers/branched.ts';
import { shippedTrees } from '../../../helpers/library.ts';
import { planted, type Fault } from '../../../helpers/plant.ts';
import { smallShop } from '../../../helpers/tree.ts';

const parse = (...faults: readonly Fault[]) =>
  parseTreeValue(planted(...branched(), ...faults), 'small.json', smallShop);
const codes = (...faults: readonly Fault[]) =>
  problemsOf(parse(...faults)).map(({ code, path }) => `${code} ${path}`);

describe('branches as checks', () => {
  const tree = trusted(parse());

  test('stand for probes that part some of them, and a look at each that has no way of its own', () => {
    expect(Object.keys(tree.checks).filter((id) => id.startsWith('pull'))).toEqual([
      'pull',
      'pull-one',
      'pull-at-one',
      'pull-at-two',
      'pull-three',
      'pull-at-three',
      'pull-four',
    ]);
  });

  test('are told apart in a list by the first and the last that they part', () => {
    const names = Object.entries(fourFuses.of).map(([id, one]) => [id, { ...one, short: id }]);
    const row = trusted(
      parse(
        ['branches.pull.of', Object.fromEntries(names)],
        ['branches.pull.none.share', 90],
        ['branches.pull.probe.minutes', 60],
      ),
    );

    expect(tree.checks['pull']?.ask).toBe('Out, first fuse and second fuse: is the short gone?');
    expect(tree.checks['pull-one']?.ask).toBe('Out, first fuse: is the short gone?');
    expect(row.checks['pull']?.ask).toBe('Out, one to four (4): is the short gone?');
  });

  test('say which they part, and wait for what parted before', () => {
    const { pull, 'pull-one': first, 'pull-at-two': look } = tree.checks;

    expect(pull?.how).toEqual(['Out together: the first fuse and the second fuse.']);
    expect(pull?.minutes).toBe(2.5);
    expect(pull?.results.map(({ next }) => next)).toEqual(['pull-three', 'pull-one']);
    expect(first?.results[1]?.told).toBe('it went with the first fuse');
    expect(first?.after).toEqual({ pull: ['here'] });
    expect(look?.after).toEqual({ pull: ['here'], 'pull-one': ['elsewhere'] });
  });

  test('show a cause by its share of what is still open', () => {
    const shown = (check: string, cause: string) => tree.checks[check]?.points[cause]?.[1];

    // On 80 of a hundred it is on the first two; of these on half on the first.
    expect(shown('pull', 'fuse')).toBeCloseTo(0.97 * 0.8, 2);
    expect(shown('pull-one', 'fuse')).toBeCloseTo(0.97 * 0.5, 2);
    expect(shown('pull-three', 'wire')).toBeCloseTo(0.97 * 0.5, 2);
    expect(shown('pull-four', 'wire')).toBeCloseTo(0.97 * 0.8, 2);
    expect(tree.checks['pull-one']?.points['wire']).toBeUndefined();
  });

  test('lead on to the look, to a way of their own, or past them', () => {
    const nexts = (check: string) => tree.checks[check]?.results.map(({ next }) => next);

    expect(nexts('pull-three')).toEqual(['pull-four', 'pull-at-three']);
    expect(nexts('pull-four')).toEqual(['volts', 'cause:wire']);
  });

  test('are looked at for what hangs there alone', () => {
    const look = tree.checks['pull-at-one'];

    expect(look?.how).toEqual(['Follow the first fuse.']);
    expect(look?.results.map(({ id }) => id)).toEqual(['fine', 'burnt']);
    expect(look?.background?.map((one) => Number(one.toFixed(2)))).toEqual([0.98, 0.02]);
    expect(Object.keys(look?.points ?? {})).toEqual(['fuse']);
  });

  test('stay a block in the file that is written down', () => {
    const file = fileOf(tree);

    expect(Object.keys(file.branches ?? {})).toEqual(['pull']);
    expect(Object.keys(file.checks)).not.toContain('pull');
    expect(trusted(parseTreeValue(file, 'small.json', smallShop)).checks).toEqual(tree.checks);
  });
});

test.each<[string, readonly Fault[], string]>([
  [
    'a cause that the tree has not',
    [['branches.pull.of.one.hangs', { fuze: 60 }]],
    'unknown-cause branches.pull.of.one.hangs.fuze',
  ],
  [
    'more than a hundred of a hundred',
    [['branches.pull.of.two.hangs', { fuse: 61 }]],
    'branches-over-a-hundred branches.pull.of',
  ],
  [
    'a probe that does not say what it parts',
    [['branches.pull.probe.how', ['Pull them.']]],
    'no-these branches.pull.probe.how',
  ],
  [
    'a branch whose short name is long',
    [['branches.pull.of.one.short', 'the very first fuse of them all']],
    'wrong-shape branches.pull.of.one.short',
  ],
  [
    'a branch with no way on',
    [['branches.pull.look', undefined]],
    'branch-leads-nowhere branches.pull.of.one',
  ],
  [
    'a way to a check that is not there',
    [['branches.pull.of.four.next', 'nowhere']],
    'unknown-check branches.pull',
  ],
  [
    'one branch alone',
    [['branches.pull.of', { one: fourFuses.of.one }]],
    'one-branch branches.pull.of',
  ],
  ['a name that is taken', [['branches', { look: fourFuses }]], 'branch-name-taken branches.look'],
])('%s is told at the block', (_, faults, told) => {
  expect(codes(...faults)).toContain(told);
});

test('a caution that the shop has not is told once, at the block', () => {
  const told = codes(['branches.pull.look.cautions', ['bite']]);

  expect(told).toEqual(['unknown-caution branches.pull']);
});

const meanOf = (numbers: readonly number[]): number =>
  numbers.reduce((sum, one) => sum + one, 0) / numbers.length;

/** Probes on the tree's own way until each branch of a block is known, read from the steps. */
function probesOnWay(tree: Tree, id: string): ReadonlyMap<string, number> {
  const of = Object.entries(fileOf(tree).branches?.[id]?.of ?? {});
  const found = new Map<string, number>();
  const follow = (check: string, open: readonly string[], before: number): void => {
    const { how = [], results = [] } = tree.checks[check] ?? {};
    const isParted = (branch: string): boolean =>
      of.some(([one, { name }]) => one === branch && how.join(' ').includes(name));
    for (const { id: result, next = '' } of results) {
      const left = open.filter((branch) => isParted(branch) === (result === 'here'));
      const [last] = left;
      if (left.length === 1 && last !== undefined) found.set(last, before + 1);
      else follow(next, left, before + 1);
    }
  };
  follow(id, [...of.map(([branch]) => branch), 'none'], 0);
  return found;
}

describe('the branches of the shipped trees', () => {
  const blocks = shippedTrees().flatMap((tree) =>
    Object.entries(fileOf(tree).branches ?? {}).map(([id, { of }]) => ({ tree, id, of })),
  );

  test.each(blocks.map((one) => [`${one.tree.id} ${one.id}`, one] as const))(
    '%s: the branch with the fault is found in about the logarithm of their number',
    (_, { tree, id, of }) => {
      const counts = probesOnWay(tree, id);
      const weightOf = (branch: string): number =>
        Object.entries(of[branch]?.hangs ?? {}).reduce(
          (sum, [cause, share]) => sum + (tree.causes[cause]?.odds ?? 0) * share,
          0,
        );
      const branches = Object.keys(of);
      const total = branches.reduce((sum, branch) => sum + weightOf(branch), 0);
      const mean = branches.reduce(
        (sum, branch) => sum + (weightOf(branch) * (counts.get(branch) ?? Infinity)) / total,
        0,
      );

      expect(mean).toBeLessThanOrEqual(Math.log2(branches.length) + 1);
    },
  );

  test('so is it over all of them, each counted alike', () => {
    const all = blocks.flatMap(({ tree, id, of }) =>
      Object.keys(of).map((branch) => ({
        probes: probesOnWay(tree, id).get(branch) ?? Infinity,
        most: Math.log2(Object.keys(of).length) + 1,
      })),
    );

    expect(all.length).toBeGreaterThan(12);
    expect(meanOf(all.map((one) => one.probes))).toBeLessThanOrEqual(
      meanOf(all.map((one) => one.most)),
    );
  });
});
