import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { whyLines } from '../../../src/app/walk/why.ts';
import { currentLeg } from '../../../src/core/session/story.ts';
import { makeProgram, press, startKeys, thoughtOut } from '../../helpers/program.ts';
import { exampleShop } from '../../helpers/shop-folder.ts';
import { sessionLines } from '../../helpers/session-file.ts';

const begin = (ownJobs: 'on' | 'off', folder = exampleShop()) => {
  const made = makeProgram({ folder, trees: 'trees', settings: { ownJobs } });
  press(made.program, startKeys());
  return made.program;
};

test('a new job begun on the screens has its tree moved to their jobs, and the why page says so', async () => {
  const program = begin('on');
  await thoughtOut(program);
  const { session } = program.state();
  if (session === undefined) throw new Error('no job was begun');

  expect(currentLeg(session.story).tree.counted?.jobs).toBe(2);
  expect(whyLines(session, { check: undefined }).join('\n')).toContain('Odds from your 2 jobs');
});

test('with the setting off nothing is counted', () => {
  const { session } = begin('off').state();

  expect(session && currentLeg(session.story).tree.counted).toBeUndefined();
});

test('turned on in the settings it holds for the next job', () => {
  const program = makeProgram({ folder: exampleShop(), trees: 'trees' }).program;

  press(program, `g${'<down>'.repeat(10)}<enter><esc>`);
  expect(program.state().settings.ownJobs).toBe('on');
  press(program, startKeys());

  const { session } = program.state();
  expect(session && currentLeg(session.story).tree.counted?.jobs).toBe(2);
});

test('too many sessions to read while somebody waits: the trees stay as written, and it is said', () => {
  const folder = exampleShop();
  const text = sessionLines().join('');
  for (let made = 0; made < 401; made += 1)
    writeFileSync(join(folder, 'sessions', `2020-01-01-${made}.jsonl`), text);

  const program = makeProgram({ folder, trees: 'trees', settings: { ownJobs: 'on' } }).program;
  press(program, 's');

  expect(program.state().library?.trees.every(({ counted }) => counted === undefined)).toBe(true);
  expect(JSON.stringify(program.state())).toContain('407 sessions would have to be read first');
});
