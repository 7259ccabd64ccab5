import { expect, test } from 'vitest';
import { advise } from '../../src/commands/advise.ts';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { trees } from '../../src/commands/trees/trees.ts';
import { story } from '../../src/commands/story.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

const began = ['--own', 'Wipers stop half way', '--vehicle', 'Orchard van', '--sessions', 's'];

/** A session without a tree after some lines, and what was answered. */
async function job(lines: readonly object[]) {
  const folder = scratch();
  const opened = await runCommand(open, [...began, '--json'], { folder });
  const { path } = JSON.parse(opened.out) as { readonly path: string };
  const entered = await runCommand(enter, [path], {
    folder,
    lines: lines.map((line) => JSON.stringify(line)),
  });
  const answers = entered.out
    .trim()
    .split('\n')
    .map((line): unknown => JSON.parse(line));
  return { folder, path, answers };
}

const lines = [
  { do: 'name-check', test: true, what: 'the wipers on wet glass', bad: 'they stop half way' },
  { do: 'find', check: 'own-wipers-stop-half-way-test', result: 'bad' },
  { do: 'name-check', does: 'measure', what: 'volts at the motor', good: '11 V or more' },
  { do: 'find', check: 'volts-motor', reading: '7,5 V' },
  { do: 'name-cause', name: 'wiper ground rusted', where: 'under the cowl' },
  { do: 'condemn', cause: 'wiper-ground-rusted', text: 'ring terminal rusted through' },
  { do: 'repair', cause: 'wiper-ground-rusted', text: 'new ring terminal' },
  { do: 'prove', result: 'good' },
  { do: 'close' },
];

test('a complaint in own words goes from open to close by the same lines', async () => {
  const { folder, path, answers } = await job(lines);

  expect(answers.map((answer) => (answer as { ok: boolean }).ok)).toEqual(lines.map(() => true));
  const told = await runCommand(story, [path, '--json'], { folder });
  expect(JSON.parse(told.out)).toMatchObject({
    tree: 'own-wipers-stop-half-way',
    named: [{ kind: 'check' }, { kind: 'check', id: 'volts-motor' }, { kind: 'cause' }],
    closed: { as: 'fixed' },
    step: { kind: 'closed' },
  });
});

test('it is advised of nothing, and no number is made up', async () => {
  const { folder, path } = await job(lines.slice(0, 5));
  const words = await runCommand(advise, [path], { folder });
  const json = await runCommand(advise, [path, '--json'], { folder });

  expect([words.code, words.out]).toEqual([
    0,
    'No advice: this job has no tree, and nobody gave odds.\n- named: wiper ground rusted\n',
  ]);
  expect(JSON.parse(json.out)).toMatchObject({
    suspects: [{ cause: 'wiper-ground-rusted', chance: null }],
    next: [],
  });
});

test.each([
  ['both a tree and own words', ['no-crank', ...began]],
  ['neither', ['--vehicle', 'Orchard van']],
  ['own words that say nothing', ['--own', ' ', '--vehicle', 'Orchard van']],
])('open refuses %s', async (_, args) => {
  const { code, err } = await runCommand(open, args);

  expect(code).toBe(2);
  expect(err).toContain('one tree, or the complaint in own words');
});

test('trees from prints a tree of it to finish; a job with a tree has none to give', async () => {
  const { folder, path } = await job(lines);
  const made = await runCommand(trees, ['from', path], { folder });

  expect(made.code).toBe(0);
  expect(JSON.parse(made.out)).toMatchObject({
    format: 2,
    id: 'wipers-stop-half-way',
    causes: { 'wiper-ground-rusted': { odds: null, shows: 'ring terminal rusted through' } },
  });
  const other = await runCommand(open, ['no-supply', '--vehicle', 'Van', '--json'], { folder });
  const { path: walked } = JSON.parse(other.out) as { readonly path: string };
  const refused = await runCommand(trees, ['from', walked], { folder });
  expect([refused.code, refused.err]).toEqual([2, expect.stringContaining('had a tree')]);
});
