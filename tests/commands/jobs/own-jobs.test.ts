import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { advise } from '../../../src/commands/advise.ts';
import { open } from '../../../src/commands/open.ts';
import { write } from '../../../src/commands/write.ts';
import { readSession } from '../../../src/store/recover.ts';
import { runCommand } from '../../helpers/commands.ts';
import { shippedTree } from '../../helpers/library.ts';
import { exampleShop } from '../../helpers/shop-folder.ts';

/** The examples, with the setting as it is wanted, and the file of a new job begun there. */
async function begun(ownJobs: 'on' | 'off') {
  const folder = exampleShop();
  mkdirSync(join(folder, 'settings'));
  writeFileSync(join(folder, 'settings', 'settings.json'), JSON.stringify({ ownJobs }));
  const ran = await runCommand(open, ['no-supply', '--vehicle', 'Mill truck'], { folder });
  const file = ran.out.trim();
  const read = readSession(readFileSync(file), file);
  if (read.kind === 'bad') throw new Error(JSON.stringify(read.problems));
  return { folder, file, err: ran.err, tree: read.value.header.trees['no-supply'] };
}

test('off, as it comes: a new job has the tree as it was written', async () => {
  const { tree, err } = await begun('off');

  expect(tree?.counted).toBeUndefined();
  expect(err).not.toContain('from your');
});

test('on: a new job has the tree moved to the two jobs proven, and says so', async () => {
  const { tree, err } = await begun('on');
  const written = shippedTree('no-supply');
  const sum = Object.values(written.causes).reduce((all, { odds }) => all + odds, 0);
  const before = written.causes['bulkhead']?.odds ?? 0;

  expect(err).toContain('Odds and minutes: from your 2 jobs.');
  expect(tree?.counted).toMatchObject({ jobs: 2, weight: 40, unlisted: written.unlisted });
  // One of the two was the bulkhead connector: (40 x odds + total) / 42.
  expect(tree?.causes['bulkhead']?.odds).toBeCloseTo(
    (40 * before + sum + written.unlisted) / 42,
    12,
  );
});

test('the advice and the account of such a job read the record alone', async () => {
  const { folder, file } = await begun('on');
  const advised = await runCommand(advise, [file, '--json'], { folder });
  const told = await runCommand(advise, [file], { folder });
  writeFileSync(join(folder, 'settings', 'settings.json'), '{}');
  const elsewhere = await runCommand(advise, [file, '--json'], { folder });
  const account = await runCommand(write, [file, '--length', 'line'], { folder });

  expect(JSON.parse(advised.out)).toMatchObject({ ownJobs: { jobs: 2, treeWeighs: 40 } });
  expect(told.out).toContain("Odds from your 2 jobs, the tree's own weighing as 40;");
  expect(elsewhere.out).toBe(advised.out);
  expect(account.code).toBe(0);
});
