import {
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { replay } from '../../src/commands/replay.ts';
import { review } from '../../src/commands/review.ts';
import { write } from '../../src/commands/write.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

const folder = 'sessions/examples';
const example = (tree: string): string =>
  readdirSync(folder).find((name) => name.endsWith(`${tree}.jsonl`)) ?? '';
const pump = example('no-start');

/** A copy of an example in a folder of its own. */
function copied(file = pump) {
  const at = scratch();
  const session = join(at, file);
  writeFileSync(session, readFileSync(join(folder, file)));
  return { at, session, name: basename(file, '.jsonl') };
}

test('write puts the account and its pictures beside the session, the same bytes each time', async () => {
  const { at, session, name } = copied();

  const first = await runCommand(write, [session]);
  const bytes = readFileSync(join(at, `${name}.md`));
  const again = await runCommand(write, [session]);

  expect([first.code, again.code]).toEqual([0, 0]);
  expect(first.out).toBe(`${join(at, `${name}.md`)}\n`);
  expect(readFileSync(join(at, `${name}.md`))).toEqual(bytes);
  expect(readdirSync(join(at, `${name}.pictures`)).toSorted()).toEqual(['suspects.svg', 'way.svg']);
});

test('write leaves the pictures out when asked to', async () => {
  const { at, session, name } = copied();

  await runCommand(write, [session, '--no-pictures']);

  expect(existsSync(join(at, `${name}.pictures`))).toBe(false);
  expect(readFileSync(join(at, `${name}.md`), 'utf8')).not.toContain('![');
});

test('write for a stranger names neither vehicle nor people, not even in its file names', async () => {
  const { at, session } = copied();

  const ran = await runCommand(write, [
    session,
    '--for',
    'reader',
    '--voice',
    'they',
    '--front-matter',
  ]);

  const path = ran.out.trim();
  expect(basename(path)).toBe('2026-03-07-no-start.md');
  expect(readFileSync(path, 'utf8')).not.toMatch(/orchard|\bJB\b/i);
  expect(existsSync(join(at, '2026-03-07-no-start.pictures', 'way.svg'))).toBe(true);
});

test.each([
  ['the account', (at: string, name: string) => join(at, `${name}.md`)],
  ['a picture', (at: string, name: string) => join(at, `${name}.pictures`, 'way.svg')],
])('write does not replace a file that is not ours in the place of %s', async (_, place) => {
  const { at, session, name } = copied();
  mkdirSync(join(at, `${name}.pictures`));
  writeFileSync(place(at, name), 'my own notes');

  const refused = await runCommand(write, [session]);
  const forced = await runCommand(write, [session, '--force']);

  expect(refused.code).toBe(2);
  expect(refused.err).toContain('--force');
  expect(forced.code).toBe(0);
  expect(readFileSync(place(at, name), 'utf8')).not.toBe('my own notes');
});

test('write follows no link in place of the folder of its pictures', async () => {
  const { at, session, name } = copied();
  const elsewhere = scratch();
  symlinkSync(elsewhere, join(at, `${name}.pictures`));

  const { code, err } = await runCommand(write, [session]);

  expect(code).toBe(3);
  expect(err).toContain('links are not followed here');
  expect(readdirSync(elsewhere)).toEqual([]);
});

test('a disk that refuses the account is told with the account, not with the session', async () => {
  const { session, name } = copied();
  const create = (): number => {
    throw Object.assign(new Error('planted'), { code: 'ENOSPC' });
  };

  const { code, err } = await runCommand(write, [session], { files: { ...nodeFiles, create } });

  expect(code).toBe(3);
  expect(err).toContain(`${name}.md: The disk is full.`);
});

test('a refused write leaves everything as it was', async () => {
  const { at, session, name } = copied();
  writeFileSync(join(at, `${name}.md`), 'my own notes');

  await runCommand(write, [session]);

  expect(readFileSync(join(at, `${name}.md`), 'utf8')).toBe('my own notes');
  expect(readdirSync(at).toSorted()).toEqual([pump, `${name}.md`].toSorted());
});

test.each([
  [['--voice', 'you'], 'The voice is i, we or they.'],
  [['--for', 'press'], 'An account is for shop, reader or mentor.'],
])('write with %j says what it takes', async (options, message) => {
  const { session } = copied();

  const ran = await runCommand(write, [session, ...options]);

  expect(ran.code).toBe(2);
  expect(ran.err).toContain(message);
});

test('review prints markdown, or one JSON document', async () => {
  const { session } = copied(example('no-supply'));

  const text = await runCommand(review, [session]);
  const json = await runCommand(review, [session, '--json']);

  expect([text.code, json.code]).toEqual([0, 0]);
  expect(text.out).toMatch(/^- 2026-04-11, Orchard van, by JB/m);
  expect(text.out.match(/To ask:/g)?.length).toBe(3);
  const document: unknown = JSON.parse(json.out);
  expect(document).toMatchObject({ reviews: [{ who: 'JB', guesses: 0 }], people: [] });
});

test('review prints a page, or a row a decision; another form is wrong use', async () => {
  const { session } = copied(example('no-supply'));

  const page = await runCommand(review, [session, '--as', 'html']);
  const sheet = await runCommand(review, [session, '--as', 'csv']);
  const wrong = await runCommand(review, [session, '--as', 'pdf']);

  expect(page.out).toMatch(/^<!doctype html>[^]*<h1 id="[^"]*">Review of a job<\/h1>/);
  const [head = '', ...rows] = sheet.out.trimEnd().split('\n');
  expect(head).toMatch(/^session,date,vehicle,.*,charged$/);
  expect(rows.length).toBeGreaterThan(10);
  expect(sheet.out).not.toMatch(/,\d+\.\d{3}/);
  expect([page.code, sheet.code, wrong.code]).toEqual([0, 0, 2]);
});

test('a replay is written as text or as a recording, without a terminal', async () => {
  const { session } = copied(example('no-supply'));

  const text = await runCommand(replay, [session, '--as', 'text']);
  const cast = await runCommand(replay, [session, '--as', 'cast']);
  const wrong = await runCommand(replay, [session, '--as', 'gif']);

  expect([text.code, cast.code, wrong.code]).toEqual([0, 0, 2]);
  expect(text.out).toContain('decision 1 of 15');
  expect(cast.out.split('\n')[0]).toMatch(/^{"version":2,"width":80,"height":24,/);
});

test('review wants a session', async () => {
  const ran = await runCommand(review, []);

  expect(ran.code).toBe(2);
  expect(ran.err).toContain('droplight review SESSION...');
});
