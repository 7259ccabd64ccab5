import { expect, test } from 'vitest';
import { history } from '../../../src/commands/jobs/history.ts';
import { runCommand } from '../../helpers/commands.ts';
import { exampleShop } from '../../helpers/shop-folder.ts';

test('tells what the complaints of a folder turned out to be', async () => {
  const folder = exampleShop();

  const { out, code } = await runCommand(history, ['no-supply'], { folder });

  expect(code).toBe(0);
  expect(out).toContain('Key turned: nothing at all, no lamps (no-supply): 2 jobs proven');
  expect(out).toMatch(/ 1 {2}50 % \(tree \d+ %\) +Bulkhead connector terminal burnt or green/);
});

test('says the same from the index as from the sessions', async () => {
  const folder = exampleShop();
  const first = await runCommand(history, ['--json'], { folder });

  const second = await runCommand(history, ['--json'], { folder });
  const afresh = await runCommand(history, ['--json', '--afresh'], { folder });

  expect(second.out).toBe(first.out);
  expect(afresh.out).toBe(first.out);
  expect(JSON.parse(first.out)).toMatchObject({ sessions: 6, apart: [] });
});

test('an empty folder has no history, and a complaint that is not there is said so', async () => {
  const none = await runCommand(history, []);
  const other = await runCommand(history, ['brakes-fade'], { folder: exampleShop() });

  expect(none.out).toMatch(/^There is no session in /);
  expect(other).toMatchObject({ code: 2, out: '' });
  expect(other.err).toContain('No job here has a complaint "brakes-fade".');
});
