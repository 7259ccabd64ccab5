import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { trees } from '../../../src/commands/trees/trees.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';

const horn = readFileSync('tests/fixtures/authoring/horn.answers', 'utf8').split('\n').slice(0, -1);

const write = (folder: string, lines: readonly string[], files = nodeFiles) =>
  runCommand(trees, ['write', 'horn-silent.json'], { folder, lines, files });

test('trees write asks its way to a tree that passes every check', async () => {
  const folder = scratch();

  const { code, out } = await write(folder, [...horn, '']);

  expect(out).toContain('Read it back: droplight trees tell horn-silent.json');
  expect(out).not.toContain('Still to be mended');
  expect(code).toBe(0);
  const tree = JSON.parse(readFileSync(join(folder, 'horn-silent.json'), 'utf8'));
  expect(tree).toMatchObject({
    format: 2,
    id: 'horn-silent',
    start: 'horn-fuse-whole',
    checks: {
      'volts-horn-button-held': {
        limits: [11.5, 2],
        tools: ['dvm'],
        'shows-with': { 'horn-fuse-burnt': { dead: 'always' } },
      },
    },
  });
});

test('trees write cut off after any answer goes on to the same tree', async () => {
  const whole = scratch();
  await write(whole, [...horn, '']);
  const wanted = readFileSync(join(whole, 'horn-silent.json'), 'utf8');

  for (const cut of [0, 1, 7, 13, 29, horn.length]) {
    const folder = scratch();
    const first = await write(folder, horn.slice(0, cut));
    const second = await write(folder, [...horn.slice(cut), '']);

    expect(first.out).toContain(`Kept: ${cut} answers.`);
    expect(second.code).toBe(0);
    expect(readFileSync(join(folder, 'horn-silent.json'), 'utf8')).toBe(wanted);
  }
});

test('a line that answers nothing is told, and nothing is kept or lost by it', async () => {
  const folder = scratch();

  const { out } = await write(folder, [...horn.slice(0, 8), 'Horn fuse burnt', '?', 'so far']);

  expect(out).toContain(
    'There is no number of vehicles behind the name. Write: Horn fuse burnt 40.',
  );
  expect(out).toContain('The numbers need not add up to a hundred');
  expect(out).toContain('Test: Does the horn sound? (sounds every time, faint, silent; 1 min)');
  expect(out).toContain('Kept: 8 answers.');
});

test('back takes the last answer back, also in a later call', async () => {
  const folder = scratch();

  await write(folder, ['The hoot is silent']);
  const { out } = await write(folder, ['back', ...horn.slice(0, 2), 'back', 'so far']);

  expect(out).toContain('The horn is silent');
  expect(out).toContain('Kept: 1 answers.');
  expect(readFileSync(join(folder, 'horn-silent.json.answers'), 'utf8')).toBe(
    `The hoot is silent\nback\n${horn[0]}\n${horn[1]}\nback\n`,
  );
});

test('an answer that the disk tore is taken back, and is asked for again', async () => {
  const folder = scratch();
  await write(folder, horn.slice(0, 3));
  appendFileSync(join(folder, 'horn-silent.json.answers'), 'Press thr');

  const { out } = await write(folder, []);

  expect(out).toContain('3 answers are kept.');
  expect(out).toContain('How is it done? Step 1.');
});

test('an answer that the disk refuses ends the conversation with the others kept', async () => {
  const folder = scratch();
  let left = 2;
  const full = {
    ...nodeFiles,
    write: (handle: number, bytes: Uint8Array) => {
      left -= 1;
      if (left < 0) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      return nodeFiles.write(handle, bytes);
    },
  };

  const { code, err } = await write(folder, horn, full);

  expect([code, err]).toEqual([3, expect.stringContaining('The disk is full.')]);
  expect(readFileSync(join(folder, 'horn-silent.json.answers'), 'utf8')).toBe(
    `${horn.slice(0, 2).join('\n')}\n`,
  );
});

test('another text that stands in the file is kept beside it, each time', async () => {
  const folder = scratch();
  writeFileSync(join(folder, 'horn-silent.json'), 'mine');

  await write(folder, [...horn, '']);
  writeFileSync(join(folder, 'horn-silent.json'), 'mine again');
  const again = await write(folder, ['']);

  expect(readFileSync(join(folder, 'horn-silent.json.before'), 'utf8')).toBe('mine');
  expect(readFileSync(join(folder, 'horn-silent.json.before-2'), 'utf8')).toBe('mine again');
  expect(again.code).not.toBe(2);
});

test('a file whose name is no id is refused before anything is asked', async () => {
  const folder = scratch();
  const { code, err } = await runCommand(trees, ['write', 'My Horn.json'], { folder });

  expect([code, err]).toEqual([2, expect.stringContaining('small letters')]);
  expect(existsSync(join(folder, 'My Horn.json.answers'))).toBe(false);
});

test('cautions are offered where words ask for them, and taken only as answered', async () => {
  const folder = scratch();
  const fuel = [...horn.slice(0, 3), 'Hold the petrol pipe over a jar.', '', 'runs, dry', ''];

  const taken = await write(folder, [...fuel, '1', 'so far']);

  expect(taken.out).toContain('This has to do with fuel ("petrol").');
  expect(taken.out).toContain('Which warning belongs before the work?');
});
