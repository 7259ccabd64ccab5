import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { trees } from '../../../src/commands/trees/trees.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';

const run = (...args: readonly string[]) => runCommand(trees, ['plan', ...args]);

/** One cause and nothing unlisted: a test of 2 minutes, a look of 7, a repair of 30. */
const lamp = {
  format: 1,
  id: 'lamp',
  title: 'No light',
  complaint: { say: 'It stays dark.', confirm: 'lamp' },
  start: 'look',
  alsoLikely: 0,
  unlisted: 0,
  causes: { fuse: { name: 'Fuse burnt', odds: 100, repair: { do: ['New fuse.'], minutes: 30 } } },
  checks: {
    lamp: {
      kind: 'try',
      ask: 'Does it light?',
      minutes: 2,
      results: [
        { id: 'lit', label: 'it lights', next: 'stop', reason: 'It lights.' },
        { id: 'dark', label: 'it stays dark', next: 'look' },
      ],
    },
    look: {
      kind: 'look',
      ask: 'Is the fuse whole?',
      minutes: 7,
      results: [
        { id: 'whole', label: 'whole', next: 'stop', reason: 'Look further.' },
        { id: 'burnt', label: 'burnt', next: 'cause:fuse' },
      ],
      background: [0.98, 0.02],
      points: { fuse: [0.05, 0.95] },
    },
  },
};

function folderOf(...all: readonly { readonly id: string }[]): string {
  const folder = scratch();
  for (const tree of all) writeFileSync(join(folder, `${tree.id}.json`), JSON.stringify(tree));
  return folder;
}

test('a small tree is priced exactly, in columns that stand below one another', async () => {
  const { code, out, err } = await run('--trees', folderOf(lamp, { ...lamp, id: 'other-lamp' }));

  // By hand: test 2, repair 30, proof 2; the own way looks first, for 7, and mends either way.
  expect([code, err]).toEqual([0, '']);
  expect(out.split('\n')).toEqual([
    'Expected minutes to a proven repair: exact, or with ± standard error',
    'from 200 hidden vehicles (seed 20260411), the same for both ways. Needless:',
    'repairs of what was sound, a job.',
    'tree              advised    own way       more  odds only   needless    own way',
    'lamp                   34         41          7         34          -          -',
    'other-lamp             34         41          7         34          -          -',
    '',
  ]);
});

test('--json says how each cost was found: a list of all trees, or the one that was named', async () => {
  const folder = folderOf(lamp);
  const exact = (minutes: number) => ({ by: 'exact', minutes });

  const all = JSON.parse((await run('--trees', folder, '--json')).out) as readonly unknown[];
  const one: unknown = JSON.parse((await run('lamp', '--trees', folder, '--json')).out);

  expect(all).toEqual([one]);
  expect(one).toMatchObject({
    tree: 'lamp',
    policies: {
      advised: exact(expect.closeTo(34, 9) as number),
      ownWay: exact(expect.closeTo(41, 9) as number),
      oddsOnly: exact(expect.closeTo(34, 9) as number),
    },
  });
});

type Costs = Record<
  string,
  { by: string; minutes: number; error?: number; needless?: number; more?: number }
>;

test('a tree of the usual size is simulated: the same by one seed, other vehicles by another', async () => {
  const costs = async (seed: string): Promise<Costs> => {
    const { out } = await run('no-crank', '--runs', '4', '--seed', seed, '--json');
    return (JSON.parse(out) as { policies: Costs }).policies;
  };
  const [first, again, other] = [await costs('1'), await costs('1'), await costs('2')];

  expect(again).toEqual(first);
  expect(other['ownWay']).not.toEqual(first['ownWay']);
  expect(first['ownWay']).toMatchObject({ by: 'simulated' });
  expect(first['ownWay']?.error).toBeGreaterThan(0);
  expect(first['ownWay']?.needless).toBeGreaterThanOrEqual(0);
  // The same vehicles for both: the mean of the differences is the difference of the means.
  const minutes = (name: string): number => first[name]?.minutes ?? NaN;
  expect(first['ownWay']?.more).toBeCloseTo(minutes('ownWay') - minutes('advised'), 9);
  // Repairs by odds have a closed form for any tree, whatever the vehicles.
  expect(first['oddsOnly']).toEqual({ by: 'exact', minutes: other['oddsOnly']?.minutes });
});

test.each([
  ['one run, which has no standard error', ['--runs', '1'], /whole numbers, runs at least 2/],
  ['runs that are no number', ['--runs', 'many'], /whole numbers, runs at least 2/],
  ['half a seed', ['--seed', '0.5'], /whole numbers/],
  ['a tree that is not there', ['no-cranck'], /no tree "no-cranck".*no-crank/],
  ['a folder that is not there', ['--trees', 'nowhere'], /no folder of trees/],
])('%s is refused', async (_, args, words) => {
  const { code, out, err } = await run(...args);

  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(words);
});
