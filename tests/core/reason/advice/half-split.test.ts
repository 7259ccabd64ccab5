import { expect, test } from 'vitest';
import { trusted } from '../../../../src/core/problem.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { drive } from '../../../helpers/drive/drive.ts';
import { Script } from '../../../helpers/drive/script.ts';
import { smallShop } from '../../../helpers/tree.ts';

/** So many fuses in a row, each with one thing on it that may burn it, all as likely and as near. */
const rowOf = (many: number) => {
  const names = Array.from({ length: many }, (_, index) => `thing-${index + 1}`);
  return {
    names,
    tree: {
      format: 2,
      id: 'row',
      title: 'One of a row',
      complaint: { say: 'It burns.', confirm: 'burns' },
      start: 'pull',
      unlisted: 0,
      causes: Object.fromEntries(
        names.map((name) => [
          name,
          { name, odds: 10, repair: { do: ['Mend it.'], minutes: 30, part: 'small' } },
        ]),
      ),
      checks: {
        burns: {
          kind: 'try',
          ask: 'Does it burn?',
          minutes: 1,
          results: [
            { id: 'holds', label: 'holds', next: 'stop', reason: 'It holds.' },
            { id: 'burns', label: 'burns', next: 'pull' },
          ],
          'shows-with': Object.fromEntries(names.map((name) => [name, { always: 'burns' }])),
        },
      },
      branches: {
        pull: {
          probe: {
            kind: 'try',
            ask: 'These out: does it hold?',
            how: ['Out together: {these}.'],
            healthy: 'It burns all the same.',
            minutes: 3,
            elsewhere: { label: 'burns' },
            here: { label: 'holds' },
            source: 'common practice, no source',
          },
          of: Object.fromEntries(
            names.map((name) => [
              name,
              // No name may hold another: the driver reads in the step which are out.
              { name: `fuse <${name}>`, minutes: 0, hangs: { [name]: 100 }, next: `cause:${name}` },
            ]),
          ),
          none: { next: 'stop', reason: 'None of them.' },
        },
      },
    },
  };
};

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
