import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { story } from '../../src/commands/story.ts';
import { verify } from '../../src/commands/verify.ts';
import { write } from '../../src/commands/write.ts';
import { begun, said } from '../helpers/begun.ts';
import { runCommand } from '../helpers/commands.ts';

test('the story is one JSON document and nothing else', async () => {
  const { folder, path } = await begun();

  const { out, code } = await runCommand(story, [path, '--json'], { folder });

  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ tree: 'no-supply', step: { kind: 'check' } });
});

test.each<[title: string, harm: (text: string) => string, code: number, state: string]>([
  ['whole', (text) => text, 0, 'whole'],
  ['torn', (text) => text.slice(0, -30), 1, 'torn'],
  ['altered', (text) => text.replace('still here', 'stall here'), 1, 'altered: .*line 3 altered'],
])('verify tells a %s file', async (_, harm, code, state) => {
  const { folder, path } = await begun();
  await runCommand(enter, [path], {
    folder,
    lines: said(
      { do: 'note', text: 'first' },
      { do: 'note', text: 'still here' },
      { do: 'note', text: 'last' },
    ),
  });
  writeFileSync(path, harm(readFileSync(path, 'utf8')));

  const ran = await runCommand(verify, [path], { folder });

  expect(ran.code).toBe(code);
  expect(ran.out).toMatch(
    new RegExp(
      state === 'altered: .*line 3 altered' ? '^altered: .*line \\d+ altered' : `^${state}`,
    ),
  );
});

test('write puts the account beside the session, the same bytes each time', async () => {
  const { folder, path } = await begun();

  const first = await runCommand(write, [path], { folder });
  const bytes = readFileSync(first.out.trim(), 'utf8');
  await runCommand(write, [path], { folder });

  expect(readFileSync(first.out.trim(), 'utf8')).toBe(bytes);
  expect(bytes).toMatch(/^# Orchard van: /);
});

test('write does not take the place of a file that it did not write', async () => {
  const { folder, path } = await begun();
  const target = path.replace('.jsonl', '.md');
  writeFileSync(target, 'my own notes\n');

  const refused = await runCommand(write, [path], { folder });
  const forced = await runCommand(write, [path, '--force'], { folder });

  expect([refused.code, forced.code]).toEqual([2, 0]);
  expect(refused.err).toContain('no account that Droplight wrote');
});
