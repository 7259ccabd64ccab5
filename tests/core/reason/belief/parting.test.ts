import fc from 'fast-check';
import { expect, test } from 'vitest';
import { at } from '../../../../src/core/at.ts';
import {
  partedBy,
  type Parting,
  type Weighed,
} from '../../../../src/core/reason/belief/parting.ts';
import { freshInput } from '../../../../src/core/reason/belief/evidence.ts';
import { makeModel, rowsOfCheck } from '../../../../src/core/reason/belief/model.ts';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import { gradeOf, grades, suspectFrom } from '../../../../src/core/reason/grade.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { shippedTrees } from '../../../helpers/library.ts';
import { smallTree, smallTreeData } from '../../../helpers/tree.ts';
import { randomTree } from '../random-trees.ts';

/** The small tree, with a third cause that shows any of the three results of its measured check. */
function lamp() {
  const data = smallTreeData();
  const switch_ = {
    name: 'Switch comes and goes',
    odds: 20,
    repair: { do: ['New switch.'], minutes: 20 },
  };
  return smallTree({
    causes: { ...data.causes, switch: switch_ },
    checks: {
      ...data.checks,
      volts: {
        ...data.checks.volts,
        points: { wire: [0.05, 0.15, 0.8], switch: [0.5, 0.1, 0.4] },
      },
    },
  });
}

// By hand: alone, the fuse shows what a sound lamp shows (97, 2, 1 of 100); the wire 5, 15, 80; the
// switch 50, 10, 40. Cut behind "full": fuse 97 there, wire 95 beyond, the switch 50 to 50.
test('who shows what else stands apart, and who shows both stands on neither side', () => {
  const parting = partedBy(lamp(), 'volts', [
    ['wire', 0.5],
    ['fuse', 0.3],
    ['switch', 0.2],
  ]);

  expect(parting).toEqual({
    sides: [
      { results: ['low', 'dead'], told: ['low', 'dead'], suspects: ['wire'] },
      { results: ['full'], told: ['full'], suspects: ['fuse'] },
    ],
    eitherWay: ['switch'],
  });
});

test('the surest suspect stands on the first side', () => {
  const parting = partedBy(lamp(), 'volts', [
    ['fuse', 0.5],
    ['wire', 0.3],
  ]);

  expect(parting?.sides.map(({ suspects }) => suspects)).toEqual([['fuse'], ['wire']]);
});

test('a result that none of a side shows on a tenth of its vehicles is not told for it', () => {
  // The fuse alone shows whole 5, burnt 95 of 100; the wire 98 and 2.
  const parting = partedBy(lamp(), 'look', [
    ['fuse', 0.6],
    ['wire', 0.4],
  ]);

  expect(parting?.sides).toEqual([
    { results: ['burnt'], told: ['burnt'], suspects: ['fuse'] },
    { results: ['whole'], told: ['whole'], suspects: ['wire'] },
  ]);
});

test.each([
  ['one suspect alone', [['wire', 0.9]]],
  ['none', []],
] as const)('nothing is parted where there is %s', (_, suspects) => {
  expect(partedBy(lamp(), 'volts', suspects)).toBeUndefined();
});

test('a check that the tree does not have parts nothing: that is a fault of the program', () => {
  expect(() => partedBy(lamp(), 'none', [])).toThrow(RangeError);
});

/** The chance of some results on a vehicle with one cause alone, from the running totals. */
function shareOf(tree: Tree, check: string, cause: string, ids: readonly string[]) {
  const { background, links } = rowsOfCheck(tree, check, [cause]);
  const totals = background.map((total, index) => total * (links[0]?.[index] ?? 1));
  return (tree.checks[check]?.results ?? []).reduce(
    (all, { id }, index) =>
      ids.includes(id) ? all + at(totals, index) - (totals[index - 1] ?? 0) : all,
    0,
  );
}

/** What is wrong with the partings of a tree: nothing. */
function faultsOf(tree: Tree, suspects: readonly Weighed[]): readonly string[] {
  return Object.keys(tree.checks).flatMap((check) => {
    const parting = partedBy(tree, check, suspects);
    return parting === undefined ? [] : faultsIn(tree, check, suspects, parting);
  });
}

function faultsIn(
  tree: Tree,
  check: string,
  suspects: readonly Weighed[],
  { sides, eitherWay }: Parting,
): readonly string[] {
  const standing = [...sides.flatMap((side) => side.suspects), ...eitherWay].toSorted();
  const all = suspects.map(([id]) => id).toSorted();
  const results = sides.flatMap((side) => side.results);
  const pairs = sides.flatMap((side) =>
    side.suspects.flatMap((one) =>
      sides
        .filter((other) => other !== side)
        .flatMap((other) => other.suspects.map((two) => ({ one, two, shown: side.results }))),
    ),
  );
  const weak = pairs.filter(
    ({ one, two, shown }) =>
      shareOf(tree, check, one, shown) < 2 * shareOf(tree, check, two, shown) - 1e-9,
  );
  return [
    ...(standing.join() === all.join() ? [] : [`${check}: not each suspect stands once`]),
    ...(sides.length > 1 ? [] : [`${check}: one side alone`]),
    ...(new Set(results).size === results.length ? [] : [`${check}: a result on two sides`]),
    ...weak.map(({ one, two }) => `${check}: ${one} and ${two} are not parted two to one`),
  ];
}

const anySeed = fc.integer({ min: 0, max: 2 ** 31 - 1 });

test('every suspect stands on one side or shows either way, and sides are parted two to one', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const tree = randomTree(seed, { causes: 6, checks: 5, links: 0.5 });
      const suspects = Object.keys(tree.causes).map((id, index): Weighed => [
        id,
        0.9 / (index + 1),
      ]);
      expect(faultsOf(tree, suspects)).toEqual([]);
    }),
    { seed: 20_260_411, numRuns: 100 },
  );
});

test('so it is on the shipped trees before anything was found', () => {
  const faults = shippedTrees().flatMap((tree) => {
    const model = makeModel(tree);
    const belief = believe(freshInput(model));
    if (belief.kind === 'bad') throw new Error(tree.id);
    const suspects = model.causes
      .map(({ id }, index): Weighed => [id, at(belief.value.chances, index)])
      .filter(([, chance]) => chance >= suspectFrom)
      .toSorted(([, one], [, other]) => other - one);
    return faultsOf(tree, suspects);
  });

  expect(faults).toEqual([]);
});

test.each([
  [1, 'strong'],
  [0.8, 'strong'],
  [0.79, 'likely'],
  [0.5, 'likely'],
  [0.49, 'maybe'],
  [0.1, 'maybe'],
  [0.09, 'faint'],
  [0.01, 'faint'],
  [0.009, 'remote'],
  [0, 'remote'],
] as const)('a chance of %s is %s', (chance, grade) => {
  expect(gradeOf(chance)).toBe(grade);
  expect(grades).toContain(grade);
});
