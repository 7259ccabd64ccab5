import { expect, test } from 'vitest';
import { trusted } from '../../../../src/core/problem.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { drive } from '../../../helpers/drive/drive.ts';
import { Script } from '../../../helpers/drive/script.ts';
import { rowOf } from '../../../helpers/row.ts';
import { smallShop } from '../../../helpers/tree.ts';

// Led by the advice alone, from the row's numbers and not by the tree's own way.
test.each([4, 8, 16])('the advice finds one of %i alike in about their logarithm', (many) => {
  const { names, tree } = rowOf(many);
  const row = trusted(parseTreeValue(tree, 'row.json', smallShop));

  const probes = names.map((name) => {
    const script = Script.parse({
      tree: 'row',
      vehicle: `one with ${name}`,
      causes: [name],
      shows: { burns: 'burns' },
      on: { pull: { [name]: name } },
      master: 8,
    });
    const { steps, mended } = drive(
      { name: `row-${name}`, script },
      { tree: row, shop: smallShop },
      'quicker',
    );
    expect(mended).toEqual([name]);
    return steps.filter(({ id, advised }) => id.startsWith('pull') && advised).length;
  });

  const mean = probes.reduce((all, one) => all + one, 0) / many;
  expect(Math.min(...probes)).toBeGreaterThan(0);
  expect(mean).toBeLessThanOrEqual(Math.log2(many) + 1);
});
