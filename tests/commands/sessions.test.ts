import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { sessions } from '../../src/commands/sessions.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

async function begun(folder: string, vehicle: string): Promise<string> {
  const { out } = await runCommand(open, ['no-crank', '--vehicle', vehicle], { folder });
  return out.trim();
}

test('a folder without sessions says so, and is an empty list to a program', async () => {
  const folder = scratch();

  const { code, out } = await runCommand(sessions, [], { folder });

  expect([code, out]).toEqual([0, `There is no session in ${join(folder, 'sessions')} yet.\n`]);
  expect((await runCommand(sessions, ['--json'], { folder })).out).toBe('[]\n');
});

test('sessions are listed with what each waits for, how it ended, or why it cannot be read', async () => {
  const folder = scratch();
  const [one, other] = [await begun(folder, 'Blue van'), await begun(folder, 'Red van')];
  const lines = ['{"do":"close","as":"given-up"}'];
  await runCommand(enter, [other], { folder, lines });
  writeFileSync(join(folder, 'sessions', 'zebra.jsonl'), 'nothing of ours');

  const { code, out } = await runCommand(sessions, ['--json'], { folder });
  const listed = JSON.parse(out) as readonly Record<string, string>[];

  expect(code).toBe(0);
  expect(listed.map(({ path }) => path)).toEqual([
    join(folder, 'sessions', 'zebra.jsonl'),
    ...[one, other].toSorted((a, b) => b.localeCompare(a)),
  ]);
  const about = (path: string) => listed.find((line) => line['path'] === path);
  expect(about(one)).toMatchObject({ vehicle: 'Blue van', tree: 'no-crank', state: 'open: check' });
  expect(about(other)).toMatchObject({ vehicle: 'Red van', state: 'given-up' });
  expect(listed[0]).toMatchObject({ state: expect.stringMatching(/no session file/) as string });

  const words = (await runCommand(sessions, [], { folder })).out.trim().split('\n');
  expect(words).toEqual(listed.map(({ session, state }) => `${session}  ${state}`));
});
