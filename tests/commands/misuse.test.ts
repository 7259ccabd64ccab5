import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { sessions } from '../../src/commands/sessions.ts';
import { trees } from '../../src/commands/trees/trees.ts';
import { answers, begin, begun } from '../helpers/begun.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

test('a tree that "trees check" finds fault with is walked, and that is said once', async () => {
  const folder = scratch();
  const text = readFileSync('trees/no-supply.json', 'utf8');
  const round = text.replace('"next": "tree:no-crank"', '"next": "lamps-horn"');
  expect(round).not.toBe(text);
  writeFileSync(join(folder, 'no-supply.json'), round);

  const odd = await runCommand(open, [...begin, '--trees', folder], { folder });
  const sound = await runCommand(open, begin, { folder });

  expect([odd.code, sound.code, sound.err]).toEqual([0, 0, '']);
  expect(odd.err).toMatch(
    /^"droplight trees check" finds \d things? wrong with this tree; the first: .*\n$/,
  );
});

test.each([
  ['a key given twice', '{"do":"note","text":"x","do":"close"}', 'key-twice'],
  ['a key given twice within', '{"do":"find","check":"a","check":"b","result":"c"}', 'key-twice'],
])('%s is refused, and nothing is kept', async (_, line, code) => {
  const { folder, path } = await begun();

  const { out } = await runCommand(enter, [path], { folder, lines: [line] });

  expect(answers(out)).toMatchObject([{ ok: false, problem: { code } }]);
  expect(readFileSync(path, 'utf8').trim().split('\n')).toHaveLength(1);
});

test.each([
  [sessions, ['extra'], 'one word too many'],
  [trees, ['list', 'extra'], 'one word too many'],
  [open, ['no-supply', '--vehicle', 'a', '--vehicle', 'b'], '--vehicle is given twice'],
])('%o does not pass over what it was given too much of', async (command, args, words) => {
  const { code, err } = await runCommand(command, args);

  expect([code, err]).toEqual([2, expect.stringContaining(words)]);
});
