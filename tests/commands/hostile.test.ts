import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { advise } from '../../src/commands/advise.ts';
import { enter } from '../../src/commands/enter.ts';
import type { Command } from '../../src/commands/io.ts';
import { open } from '../../src/commands/open.ts';
import { review } from '../../src/commands/review.ts';
import { sessions } from '../../src/commands/sessions.ts';
import { story } from '../../src/commands/story.ts';
import { verify } from '../../src/commands/verify.ts';
import { write } from '../../src/commands/write.ts';
import { safeJson } from '../../src/core/text.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { begun, said } from '../helpers/begun.ts';
import { runCommand } from '../helpers/commands.ts';

/** Signs that drive or deceive a terminal; a newline and a tab do neither. */
// oxlint-disable-next-line no-control-regex -- control characters are what is looked for
const driving = /[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

const readers: readonly (readonly [string, Command, readonly string[]])[] = [
  ['verify', verify, []],
  ['story', story, ['--json']],
  ['advise', advise, ['--json']],
  ['review', review, ['--json']],
  ['write', write, []],
  ['enter', enter, []],
];

async function noted(...texts: readonly string[]) {
  const { folder, path } = await begun();
  const lines = said(...texts.map((text) => ({ do: 'note' as const, text })));
  await runCommand(enter, [path], { folder, lines });
  return { folder, path };
}

describe('one bad file', () => {
  test('never stops the list', async () => {
    const { folder, path } = await noted('a');
    const at = join(path, '..');
    execFileSync('mkfifo', [join(at, 'pipe.jsonl')]);
    mkdirSync(join(at, 'folder.jsonl'));
    symlinkSync('/dev/zero', join(at, 'endless.jsonl'));
    symlinkSync('/nowhere', join(at, 'loose.jsonl'));
    writeFileSync(join(at, 'binary.jsonl'), Buffer.from([0, 255, 254, 10, 10]));
    writeFileSync(
      join(at, 'forged.jsonl'),
      readFileSync(path, 'utf8').replace('"tree":"no', '"tree":"on'),
    );

    const { code, out } = await runCommand(sessions, ['--json', '--sessions', at], { folder });

    expect(code).toBe(0);
    expect(JSON.parse(out)).toHaveLength(7);
  });

  test.each(readers)('is told in one line by %s', async (_, command, more) => {
    const { folder, path } = await begun();
    const pipe = join(path, '..', 'pipe.jsonl');
    execFileSync('mkfifo', [pipe]);

    const ran = await runCommand(command, [pipe, ...more], { folder });

    expect(ran.code).toBe(command === verify ? 1 : 3);
    expect(`${ran.out}${ran.err}`).toContain('This is no regular file.');
    expect(existsSync(`${pipe}.lock`)).toBe(false);
  });
});

test.each(readers.filter(([, , more]) => more.length > 0))(
  '%s prints one JSON document when it is called wrongly',
  async (_, command) => {
    const { out, code } = await runCommand(command, ['nowhere', '--json']);

    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ problems: [{ code: 'no-such-session' }] });
  },
);

describe('hostile text', () => {
  const hostile = 'a\u001b]52;c;eA==\u0007\u009b31m\u007f\u202egnp\u2066';

  test.each(readers)('in a note drives no terminal by way of %s', async (_, command, more) => {
    const { folder, path } = await noted(hostile);

    const { out, err } = await runCommand(command, [path, ...more], {
      folder,
      lines: [`{"do":"find","check":"${hostile}","result":"x"}`, hostile, `{"${hostile}":1}`],
    });

    expect(driving.exec(`${out}${err}`)).toBe(null);
  });

  test.each(readers)('in the name of a file drives none by way of %s', async (_, command, more) => {
    const { folder, path } = await noted('a');
    const named = join(path, '..', `2026-${hostile}.jsonl`);
    writeFileSync(named, readFileSync(path));

    const { out, err } = await runCommand(command, [named, ...more], { folder });

    expect(driving.exec(`${out}${err}`)).toBe(null);
  });

  test('JSON gives the same values back', () => {
    const value = { [hostile]: [hostile, 1] };

    expect(JSON.parse(safeJson(value, 2))).toEqual(value);
    expect(driving.exec(safeJson(value))).toBe(null);
  });
});

describe('an altered record', () => {
  const harms: readonly (readonly [string, (text: string) => string, string])[] = [
    [
      'altered',
      (text) => text.replace('seventeenth', 'seventieth'),
      'was altered after it was written',
    ],
    [
      'cut short',
      (text) => text.split('\n').toSpliced(2, 1).join('\n'),
      'was cut short: lines are missing before line 3',
    ],
  ];

  test.each(harms)(
    'that was %s says so before anything made from it',
    async (state, harm, words) => {
      const { folder, path } = await noted('first', 'seventeenth', 'third');
      writeFileSync(path, harm(readFileSync(path, 'utf8')));

      const account = await runCommand(write, [path], { folder });
      const told = await runCommand(review, [path], { folder });
      const advice = await runCommand(advise, [path], { folder });
      const json = await runCommand(review, [path, '--json'], { folder });
      const data = await runCommand(story, [path, '--json'], { folder });
      const entered = await runCommand(enter, [path], {
        folder,
        lines: said({ do: 'note', text: 'x' }),
      });

      for (const text of [readFileSync(account.out.trim(), 'utf8'), told.out, advice.out])
        expect(text.split('\n')[0]).toContain(words);
      expect(Object.keys(JSON.parse(data.out) as object)[0]).toBe('record');
      expect(JSON.parse(data.out)).toMatchObject({ record: { state } });
      expect(JSON.parse(json.out)).toMatchObject({ reviews: [{ record: { state } }] });
      expect(entered.out.split('\n')[0]).toContain(words);
    },
  );

  test('cut at its end is whole by itself, and cut short against its link', async () => {
    const { folder, path } = await noted('first', 'second');
    const { out } = await runCommand(verify, [path, '--json'], { folder });
    const [{ link = '' } = {}] = JSON.parse(out) as { link?: string }[];
    writeFileSync(path, readFileSync(path, 'utf8').split('\n').slice(0, -2).join('\n') + '\n');

    const alone = await runCommand(verify, [path], { folder });
    const against = await runCommand(verify, [path, '--against', link], { folder });
    const wrong = await runCommand(verify, [path, '--against', 'x'], { folder });

    expect([alone.code, against.code, wrong.code]).toEqual([0, 1, 2]);
    expect(alone.out).toMatch(/^whole:/);
    expect(against.out).toMatch(/^cut short:/);
  });

  test('is not proven by a link behind the altered line', async () => {
    const { folder, path } = await noted('first', 'second');
    const whole = await runCommand(verify, [path, '--json'], { folder });
    const [{ link = '' } = {}] = JSON.parse(whole.out) as { link?: string }[];
    writeFileSync(path, readFileSync(path, 'utf8').replace('"first"', '"fiRst"'));

    const { out, code } = await runCommand(verify, [path, '--against', link], { folder });

    expect(code).toBe(1);
    expect(out).toMatch(/^altered:.*line 2 altered/);
    expect(out).not.toContain('that link ends');
  });

  test('that went on since its link was told is proven to that line', async () => {
    const { folder, path } = await noted('first');
    const { out } = await runCommand(verify, [path, '--json'], { folder });
    const [{ link = '' } = {}] = JSON.parse(out) as { link?: string }[];
    await runCommand(enter, [path], { folder, lines: said({ do: 'note', text: 'more' }) });

    const { out: told, code } = await runCommand(verify, [path, '--against', link], { folder });

    expect(code).toBe(0);
    expect(told).toContain('that link ends line 2');
  });
});

describe('a disk that refuses', () => {
  test('an answer is not in the file, the exit code is 3, and trying again is safe', async () => {
    const { folder, path } = await begun();
    let syncs = 0;
    const files = {
      ...nodeFiles,
      syncNow: (handle: number) => {
        syncs += 1;
        if (syncs === 2) throw Object.assign(new Error('planted'), { code: 'ENOSPC' });
        nodeFiles.syncNow(handle);
      },
    };
    const lines = said(
      { do: 'note', text: 'a' },
      { do: 'note', text: 'b' },
      { do: 'note', text: 'b' },
    );

    const { out, code } = await runCommand(enter, [path], { folder, lines, files });

    expect(
      out
        .trim()
        .split('\n')
        .map((line) => (JSON.parse(line) as { ok: boolean }).ok),
    ).toEqual([true, false, true]);
    expect(code).toBe(3);
    const text = readFileSync(path, 'utf8');
    expect(['"text":"a"', '"text":"b"'].map((one) => text.split(one).length - 1)).toEqual([1, 1]);
  });
});

test.each([
  ['--vehicle', 501],
  ['--who', 201],
])('a session is not begun with a %s that its reader would refuse', async (option, length) => {
  const named = option === '--vehicle' ? [] : ['--vehicle', 'v'];
  const args = ['no-supply', ...named, option, 'x'.repeat(length)];
  const { code, err } = await runCommand(open, args);

  expect(code).toBe(2);
  expect(err).toContain('is longer than');
});

test('a folder of sessions that is a file is told as that', async () => {
  const { folder, path } = await begun();
  const { code, err } = await runCommand(sessions, ['--sessions', path], { folder });

  expect(code).toBe(3);
  expect(err).not.toContain('fault');
});
