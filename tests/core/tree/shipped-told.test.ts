import { expect, test } from 'vitest';
import { shippedShop, shippedTrees } from '../../helpers/library.ts';

test.each(shippedTrees().map((tree) => [tree.id, tree] as const))(
  '%s has told forms for every check, result, cause and access, and says what is bought',
  (_, tree) => {
    const untold = [
      ...Object.entries(tree.checks).flatMap(([id, { told, results }]) => [
        ...(told === undefined ? [id] : []),
        ...results.flatMap((one) => (one.told === undefined ? [`${id}: ${one.id}`] : [])),
      ]),
      ...Object.entries(tree.causes).flatMap(([id, { short, repair }]) =>
        short === undefined || repair.part === undefined ? [id] : [],
      ),
    ];
    const shop = shippedShop();
    const steps = [
      ...Object.values(tree.checks),
      ...Object.values(tree.causes).map(({ repair }) => repair),
    ];
    const opened = steps.flatMap(({ access }) => access);

    expect(untold).toEqual([]);
    expect(opened.filter((id) => shop.accesses[id]?.told === undefined)).toEqual([]);
  },
);

test.each(shippedTrees().map((tree) => [tree.id, tree] as const))(
  '%s says nothing by the number of a note, which no mechanic has',
  (_, tree) => {
    expect(JSON.stringify(tree).match(/\bC\d\d\b/g)).toBeNull();
  },
);
