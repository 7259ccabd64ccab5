import { appendFileSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { scratch } from '../helpers/commands.ts';
import { buildApart, runProgram, type Shown } from '../helpers/pseudo-terminal.ts';

let program = '';
beforeAll(async () => {
  program = await buildApart();
}, 60_000);
afterAll(() => rmSync(dirname(dirname(program)), { recursive: true }));

const sessionIn = (folder: string): string => {
  const [name = ''] = readdirSync(join(folder, 'sessions')).filter((file) =>
    file.endsWith('.jsonl'),
  );
  return join(folder, 'sessions', name);
};

/** From the command line to the first check of the rough-idle tree, every fact unknown. */
async function toFirstCheck(shown: Shown): Promise<void> {
  await shown.until('What does its owner say of it?');
  // Several lines in one read would be one text in the field: each is answered by itself.
  for (const [answer, next] of [
    ['', 'What do you call the vehicle?'],
    ['Orchard van', '4 of 15'],
    ['JB', '5 of 15'],
    ['', '6 of 15'],
    ['', '7 of 15'],
  ] as const) {
    shown.type(`${answer}\r`);
    await shown.until(next);
  }
  shown.type('33433334\r');
  await shown.until('Press 1 when you have read them');
  // Another key between: the one that answered the last question reads nothing.
  shown.type('Z');
  shown.type('1');
  await shown.until('First: 1. Key to RUN');
}

test('a walk from complaint to account, by keys in a real terminal', async () => {
  const folder = scratch();
  const shown = runProgram(program, ['start', 'rough-idle'], folder);

  await toFirstCheck(shown);
  shown.type('y');
  await shown.until('speed wanders');
  shown.type('2');
  await shown.until(/LAST +Two minutes of hot idle/);
  shown.type('b');
  await shown.until('Taken back: ');
  await shown.until('speed wanders');
  shown.type('3');
  // The suspects are weighed behind the keys; the list is in their order once they are.
  await shown.until(/(?:EITHER|OR) .*burnt valve/);
  shown.type('r');
  await shown.until('REPAIR: pick');
  shown.type('1');
  await shown.until('when you have read');
  // Another key between: the one that picked the cause does not read its cautions so soon.
  shown.type('Z1');
  await shown.until('y: this is it');
  shown.type('y');
  await shown.until('What exactly was found, and where?');
  shown.type('\r');
  await shown.until(/First: .*Engine off/);
  shown.type('q');
  await shown.until('Pick up:');
  shown.type('q');

  expect(await shown.exited).toBe(0);
  const kinds = readFileSync(sessionIn(folder), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => (JSON.parse(line) as { kind: string }).kind);
  expect(kinds).toContain('corrected');
  expect(kinds.slice(-2)).toEqual(['condemned', 'paused']);
}, 60_000);

test('killed after a kept answer, it is picked up exactly there; a torn tail is told and kept', async () => {
  const folder = scratch();
  const first = runProgram(program, ['start', 'rough-idle'], folder);
  await toFirstCheck(first);
  first.type('y');
  await first.until('speed wanders');
  first.type('2');
  await first.until(/LAST +Two minutes of hot idle/);
  await first.until(/kept \d\d:\d\d/);
  const standing = first.screen().split('\n')[2];
  first.kill('SIGKILL');
  await first.exited;
  appendFileSync(sessionIn(folder), '{"n":5,"at":"2026-0');

  const second = runProgram(program, ['resume'], folder);
  await second.until('torn by a power loss');
  // It knows a name, and so asks who works now; nobody need say.
  await second.until('WHO works from here on?');
  second.type('\x1b');
  await second.until('1  ');
  await second.until(standing?.trim() ?? '');

  expect(second.screen().split('\n')[2]).toBe(standing);
  second.type('n');
  second.type('still here\r');
  await second.until(/kept \d\d:\d\d/);
  second.type('\x03');
  expect(await second.exited).toBe(0);
  await second.until(/^resume with: droplight resume [-\w]+-orchard-van-rough-idle$/m);
  const text = readFileSync(sessionIn(folder), 'utf8');
  expect(text).toContain('{"n":5,"at":"2026-0\n');
  expect(text).toContain('"text":"still here"');
}, 60_000);

test('a terminal that goes away leaves everything on the disk', async () => {
  const folder = scratch();
  const shown = runProgram(program, ['start', 'rough-idle'], folder);
  await toFirstCheck(shown);
  shown.type('n');
  shown.type('last words');
  await shown.until('> last words_');
  shown.type('\r');
  // The note has left its field, and nothing that is shown waits for the disk.
  await shown.until(/First: 1. Key to RUN[^]*kept \d\d:\d\d/);
  // Where no shell waits for it a stop does not arrive: the screen comes back as it was.
  shown.type('\x1a');
  await shown.until(/First: 1. Key to RUN[^]*kept \d\d:\d\d/);
  shown.kill('SIGHUP');

  expect(await shown.exited).toBe(129);
  await shown.until('resume with: droplight resume ');
  expect(readFileSync(sessionIn(folder), 'utf8')).toContain('"text":"last words"');
}, 60_000);

test('keys typed before the first frame are acted on and never seen as text', async () => {
  const folder = scratch();
  const shown = runProgram(program, [], folder);
  shown.type('\x1b[B\x1b[B');

  await shown.until(/ > 3 +Vehicles/);

  expect(shown.screen()).not.toContain('[B');
  shown.type('\x03');
  expect(await shown.exited).toBe(0);
}, 60_000);
