import {
  appendFileSync,
  copyFileSync,
  linkSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { nodeFiles } from '../../src/store/node-files.ts';
import { openSession, type HeldSession } from '../../src/store/sessions.ts';
import { note, readBack, sessionLines } from '../helpers/session-file.ts';

let folder = '';
let path = '';
let mended: string[] = [];
const disk = { files: nodeFiles, holder: 'process 1' };

beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'droplight-deeds-')), 'sessions');
  nodeFiles.makeFolder(folder);
  path = join(folder, 'job.jsonl');
  writeFileSync(path, sessionLines([]).join(''));
  mended = [];
});

afterEach(() => rmSync(dirname(folder), { recursive: true, force: true }));

function open(at = path): HeldSession {
  const session = openSession(disk, at, {
    kept: () => {},
    trouble: () => {},
    mended: ({ message }) => mended.push(message),
  });
  if (session.kind === 'bad') throw new Error(session.problems[0]?.message);
  return session.value;
}

const deeds: readonly (readonly [string, () => void])[] = [
  ['removed', () => rmSync(path)],
  ['moved away', () => renameSync(path, join(dirname(folder), 'elsewhere.jsonl'))],
  ['gone with its folder', () => rmSync(folder, { recursive: true })],
  ['moved with its folder', () => renameSync(folder, `${folder}-old`)],
  ['emptied', () => truncateSync(path, 0)],
  ['cut by 20 bytes', () => truncateSync(path, readFileSync(path).length - 20)],
  ['written to by another program', () => appendFileSync(path, 'a line of somebody else')],
  [
    'replaced by a copy',
    () => {
      copyFileSync(path, `${path}.sync`);
      renameSync(`${path}.sync`, path);
    },
  ],
  [
    'replaced by another file',
    () => {
      writeFileSync(`${path}.sync`, 'precious');
      renameSync(`${path}.sync`, path);
    },
  ],
  [
    'replaced by a link',
    () => {
      writeFileSync(join(dirname(folder), 'precious'), 'precious');
      rmSync(path);
      symlinkSync(join(dirname(folder), 'precious'), path);
    },
  ],
];

describe('a session file that is', () => {
  test.each(deeds)('%s while it is open holds everything that was acknowledged', (_, deed) => {
    const session = open();
    session.journal.commit([note(1)]);
    deed();

    session.journal.commit([note(2)]);
    session.journal.commit([note(3)]);
    session.release();

    expect(readBack(readFileSync(path))).toEqual({
      events: [1, 2, 3],
      damage: [],
      openEnd: false,
    });
    expect(mended).toHaveLength(1);
    expect(mended[0]).toMatch(/^The session file was .* while it was open/);
  });

  test.each(deeds)('%s behind the last answer holds it after leaving', (_, deed) => {
    const session = open();
    session.journal.commit([note(1)]);

    deed();
    session.release();

    expect(readBack(readFileSync(path))).toMatchObject({ events: [1], damage: [] });
  });

  test.each(deeds)('%s is written anew for the screens too', async (_, deed) => {
    const session = open();
    session.journal.append(note(1));
    await session.journal.settled();
    deed();

    session.journal.append(note(2));
    await session.journal.settled();

    expect(readBack(readFileSync(path))).toMatchObject({ events: [1, 2], damage: [] });
    session.release();
  });
});

describe('what somebody else put there', () => {
  test('is kept aside, and what a link leads to is not touched', () => {
    const session = open();
    writeFileSync(join(folder, 'precious'), 'precious');
    rmSync(path);
    symlinkSync(join(folder, 'precious'), path);
    session.journal.commit([note(1)]);
    rmSync(path);
    writeFileSync(path, 'of somebody else');
    session.journal.commit([note(2)]);
    session.release();

    expect(readFileSync(join(folder, 'precious'), 'utf8')).toBe('precious');
    expect(readFileSync(`${path}.aside-2`, 'utf8')).toBe('of somebody else');
    expect(readdirSync(folder).toSorted()).toEqual([
      'job.jsonl',
      'job.jsonl.aside',
      'job.jsonl.aside-2',
      'job.jsonl.lock',
      'precious',
    ]);
  });
});

describe('two writers', () => {
  test('by two names of one file each keep what they acknowledged', () => {
    const other = join(folder, 'other.jsonl');
    linkSync(path, other);
    const [first, second] = [open(), open(other)];

    first.journal.commit([note(1, 'first')]);
    second.journal.commit([note(1, 'second')]);
    first.journal.commit([note(2, 'first')]);
    first.release();
    second.release();

    expect(readBack(readFileSync(path))).toMatchObject({ events: [1, 2], damage: [] });
    expect(readBack(readFileSync(other))).toMatchObject({ events: [1], damage: [] });
    expect(readFileSync(other, 'utf8')).toContain('second');
  });

  test('with the lock removed between them: the first keeps nothing more, and says so', () => {
    const first = open();
    first.journal.commit([note(1)]);
    rmSync(`${path}.lock`);
    const second = open();

    expect(() => first.journal.commit([note(2)])).toThrow('it is open now in process 1');
    second.journal.commit([note(2, 'second')]);
    first.release();
    second.release();

    expect(readBack(readFileSync(path))).toMatchObject({ events: [1, 2], damage: [] });
    expect(readFileSync(path, 'utf8')).toContain('second');
  });
});

test.each([0, 1, 2, 40])('what was refused is not in the file, after %i good ones', (before) => {
  const session = open();
  for (let n = 1; n <= before; n += 1) session.journal.commit([note(n)]);
  const size = readFileSync(path).length;

  expect(() => session.journal.commit([note(before + 1, 'x'.repeat(20_001))])).toThrow(
    'is longer than 20000 characters',
  );

  expect(readFileSync(path).length).toBe(size);
  session.journal.commit([note(before + 1, 'x'.repeat(20_000))]);
  session.release();
  expect(readBack(readFileSync(path)).events).toHaveLength(before + 1);
});

test('a long record is written anew whole', () => {
  const session = open();
  for (let n = 1; n <= 60; n += 1) session.journal.commit([note(n, `${n} ${'x'.repeat(10_000)}`)]);
  rmSync(path);

  session.journal.commit([note(61)]);
  session.release();

  expect(readBack(readFileSync(path))).toMatchObject({ damage: [], openEnd: false });
  expect(readBack(readFileSync(path)).events).toHaveLength(61);
});
