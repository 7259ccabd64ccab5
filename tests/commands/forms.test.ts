import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { write } from '../../src/commands/write.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

const folder = 'sessions/examples';
const example = readdirSync(folder).find((name) => name.endsWith('no-start.jsonl')) ?? '';

/** An example in a folder of its own, and how its account is written there. */
function copied() {
  const at = scratch();
  const session = join(at, example);
  writeFileSync(session, readFileSync(join(folder, example)));
  const name = basename(example, '.jsonl');
  const path = (ending: string): string => join(at, `${name}${ending}`);
  return {
    at,
    path,
    read: (ending: string): string => readFileSync(path(ending), 'utf8'),
    run: (...args: readonly string[]) => runCommand(write, [session, ...args]),
  };
}

test.each([
  ['html', '.html'],
  ['text', '.txt'],
])('write --as %s gives one file, the same bytes twice', async (form, ending) => {
  const { run, read } = copied();

  const first = await run('--as', form);
  const bytes = read(ending);
  const again = await run('--as', form);

  expect([first.code, again.code]).toEqual([0, 0]);
  expect(read(ending)).toBe(bytes);
});

test('a page has its pictures inside and nothing that runs or is fetched', async () => {
  const { at, run, read } = copied();
  await run('--as', 'html');
  const page = read('.html');

  expect(readdirSync(at).filter((name) => name.endsWith('.pictures'))).toEqual([]);
  expect(page.match(/src="data:image\/svg\+xml;base64,/g)?.length).toBeGreaterThan(1);
  expect(page).not.toMatch(/<script|\son\w+=|https?:|flowchart/i);
});

test.each([
  ['html', '.html'],
  ['text', '.txt'],
])('an edited %s is not written over without a word', async (form, ending) => {
  const { run, read, path } = copied();
  await run('--as', form);
  writeFileSync(path(ending), read(ending).replace(/How it went/i, 'What we did'));

  const refused = await run('--as', form);
  const forced = await run('--as', form, '--force');

  expect(refused.code).toBe(2);
  expect(refused.err).toContain('was edited');
  expect(forced.code).toBe(0);
  expect(read(ending)).not.toContain('What we did');
});

test('a refused text leaves the folder as it was', async () => {
  const { at, run, path } = copied();
  writeFileSync(path('.txt'), 'my own notes');

  const { code } = await run('--as', 'text');

  expect(code).toBe(2);
  expect(readdirSync(at).filter((name) => name.endsWith('.pictures'))).toEqual([]);
});

test('the editor of another system changes line ends, and they stay', async () => {
  const { run, read, path } = copied();
  await run();
  writeFileSync(path('.md'), read('.md').replaceAll('\n', '\r\n'));

  const again = await run();

  expect(again).toMatchObject({ code: 0, err: '' });
  expect(read('.md')).not.toMatch(/[^\r]\n/);
});

test('an edited section of the markdown is kept, and said to be', async () => {
  const { run, read, path } = copied();
  await run();
  writeFileSync(path('.md'), read('.md').replace('Going by experience', 'By what I knew'));

  const again = await run();

  expect(again).toMatchObject({ code: 0, err: 'Kept as you edited it: how-it-went.\n' });
  expect(read('.md')).toContain('By what I knew');
  expect((await run('--voice', 'they')).err).toContain(
    'The record tells more by now, which is not in what you edited: how-it-went.',
  );
  expect((await run('--force')).err).toBe('');
  expect(read('.md')).not.toContain('By what I knew');
});

test('an account that was edited outside its sections is refused with its line', async () => {
  const { run, read, path } = copied();
  await run();
  const edited = read('.md').replace('<!-- droplight wrote', 'My own.\n\n<!-- droplight wrote');
  writeFileSync(path('.md'), edited);

  const refused = await run();

  expect(refused.code).toBe(2);
  expect(refused.err).toMatch(/behind its last marker \(line \d+\)/);
  expect(read('.md')).toBe(edited);
});

test('write --png draws its pictures as PNG and links them so, again and again', async () => {
  const { at, run, read, path } = copied();

  const first = await run('--png');
  const again = await run('--png');
  await run('--png', '--as', 'html');

  expect([first.code, again.code, first.err]).toEqual([0, 0, '']);
  expect(readdirSync(join(at, basename(path('.pictures')))).toSorted()).toEqual([
    'suspects.png',
    'way.png',
  ]);
  expect(read('.md')).toContain('.pictures/suspects.png)');
  expect(read('.md')).not.toContain('.svg');
  expect(read('.html')).toMatch(/src="data:image\/png;base64,/);
});

test('a file of somebody else in the place of a PNG is left alone', async () => {
  const { run, path } = copied();
  await run('--png');
  writeFileSync(join(path('.pictures'), 'way.png'), 'my own notes');

  expect((await run('--png')).code).toBe(2);
  expect(readFileSync(join(path('.pictures'), 'way.png'), 'utf8')).toBe('my own notes');
});

test('an account of an earlier version, without markers, is written anew', async () => {
  const { run, read, path } = copied();
  await run();
  const bare = read('.md')
    .replace(/<!-- .* -->\n*/g, '')
    .trimEnd();
  writeFileSync(path('.md'), `${bare}\n`);

  expect((await run()).code).toBe(0);
  expect(read('.md')).toMatch(/<!-- droplight wrote /);
});

test('a line for a log goes to standard output, and the short form leaves the story out', async () => {
  const { at, run, read } = copied();

  const line = await run('--length', 'line');
  await run('--length', 'short');

  expect(line.out.trim()).toMatch(
    /^2026-03-07, Orchard van: Cranks, will not start; the points .* proven; .*49\.50\.$/,
  );
  expect(readdirSync(at).filter((name) => name.endsWith('.md'))).toHaveLength(1);
  expect(read('.md')).not.toContain('How it went');
  expect(readdirSync(at).filter((name) => name.endsWith('.pictures'))).toEqual([]);
});

test.each([
  [['--as', 'pdf'], 'md, html or text'],
  [['--length', 'long'], 'line, short or full'],
  [['--voice', 'you'], 'i, we or they'],
])('%s is told what there is', async (args, words) => {
  const { run } = copied();
  const ran = await run(...args);

  expect(ran.code).toBe(2);
  expect(ran.err).toContain(words);
});
