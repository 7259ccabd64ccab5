import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { bad, good } from '../../../src/core/problem.ts';
import type { Files } from '../../../src/store/files.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { readBack } from '../../helpers/session-file.ts';
import { makeProgram, press, startKeys, thoughtOut } from '../../helpers/program.ts';

/** A disk that is full from when it is told so, until it is told otherwise. */
function fillingDisk() {
  let full = false;
  const files: Files = {
    ...nodeFiles,
    write: (handle, bytes) => {
      if (full) throw Object.assign(new Error('planted'), { code: 'ENOSPC' });
      return nodeFiles.write(handle, bytes);
    },
  };
  return { files, fill: (now: boolean) => (full = now) };
}

test('what the disk refuses is said, and kept as soon as the disk takes it again', async () => {
  const { files, fill } = fillingDisk();
  const { program } = makeProgram({ files });
  press(program, startKeys());
  await expect.poll(() => program.state().session?.kept).toBe(1);
  fill(true);

  press(program, 'nfan belt squeals<enter>');
  await expect.poll(() => program.state().session?.trouble?.code).toBe('ENOSPC');
  fill(false);
  press(program, '<down>');

  await expect.poll(() => program.state().session?.trouble).toBeUndefined();
  const { session } = program.state();
  expect(session?.kept).toBe(session?.events.at(-1)?.n);
});

test('who would lose something is warned once before the program leaves', () => {
  const { files, fill } = fillingDisk();
  const made = makeProgram({ files });
  press(made.program, startKeys());
  fill(true);
  press(made.program, 'nfan belt squeals<enter>');

  press(made.program, '<C-c>');
  expect(made.left()).toBe(false);
  expect(made.program.state().session?.trouble?.code).toBe('ENOSPC');
});

test('on a disk that goes on refusing everywhere the lines are handed over before leaving', () => {
  const { files, fill } = fillingDisk();
  const made = makeProgram({ files });
  press(made.program, startKeys());
  fill(true);
  press(made.program, 'nfan belt squeals<enter>');
  press(made.program, '<C-c>');

  press(made.program, '<C-c>');

  expect(made.left()).toBe(true);
  const rescued = made.rescued();
  if (rescued?.kind !== 'lines') throw new Error('a full disk takes no copy either');
  expect(rescued.lines.join()).toContain('"text":"fan belt squeals"');
});

test('the other folder, where it takes what the first refuses, has the whole record', () => {
  let refusing = false;
  const files: Files = {
    ...nodeFiles,
    placeAt: (path) => {
      if (refusing && !path.includes('rescued'))
        throw Object.assign(new Error('planted'), { code: 'EIO' });
      return nodeFiles.placeAt(path);
    },
  };
  const made = makeProgram({ files });
  press(made.program, startKeys());
  refusing = true;
  press(made.program, 'nfan belt squeals<enter>');
  press(made.program, '<C-c>');

  press(made.program, '<C-c>');

  const rescued = made.rescued();
  if (rescued?.kind !== 'elsewhere') throw new Error('there is room in the other folder');
  expect(readBack(readFileSync(rescued.path))).toMatchObject({ damage: [], openEnd: false });
  expect(readFileSync(rescued.path, 'utf8')).toContain('fan belt squeals');
});

test('a session that cannot be made is refused on the Start screen, and nothing is open', () => {
  const { files, fill } = fillingDisk();
  const { program } = makeProgram({ files });
  fill(true);

  press(program, startKeys().replace(/Z1$/, ''));

  expect(program.state().session).toBeUndefined();
  expect(program.state().screen.kind).toBe('start');
  expect(program.state().notice?.kind).toBe('problem');
});

test('a session that is not there is refused', () => {
  const made = makeProgram();

  made.program.dispatch({ kind: 'session-chosen', path: join(made.folder, 'none.jsonl') });

  expect(made.program.state().session).toBeUndefined();
  expect(made.program.state().notice?.kind).toBe('problem');
});

test('a session that another program holds is refused, by whom it is held', () => {
  const made = makeProgram();
  press(made.program, startKeys());
  const path = made.program.state().session?.path ?? '';
  const other = makeProgram({ folder: made.folder });

  other.program.dispatch({ kind: 'session-chosen', path });

  expect(other.program.state().session).toBeUndefined();
  expect(other.program.state().notice?.text).toContain('a test');
});

test('the account is written, and its file is named', async () => {
  const { program } = makeProgram();
  press(program, `${startKeys()}c3y`);

  press(program, 'e');

  const path = program.state().session?.path ?? '';
  await expect
    .poll(() => program.state().notice?.text)
    .toBe(`Account written: ${basename(path)}.md`);
});

test('what was torn by a power loss is said when the session is picked up', async () => {
  const made = makeProgram();
  press(made.program, startKeys());
  await thoughtOut(made.program);
  const path = made.program.state().session?.path ?? '';
  made.program.shut();
  const handle = nodeFiles.openAppend(path);
  nodeFiles.write(handle, Buffer.from('{"n":9,"at"'));
  nodeFiles.close(handle);
  const again = makeProgram({ folder: made.folder });

  again.program.dispatch({ kind: 'session-chosen', path });

  expect(again.program.state().notice?.text).toContain('The last 11 bytes were torn');
  expect(again.program.state().session?.events.at(-1)).toMatchObject({ kind: 'resumed', torn: 11 });
});

test.each([
  [
    'is refused',
    () => Promise.resolve(bad({ code: 'x', message: 'No room,', mend: 'make some.' })),
    'No room, make some.',
  ],
  [
    'breaks off',
    () => Promise.reject(new Error('planted')),
    'planted Nothing was lost; try again.',
  ],
  [
    'keeps what somebody edited',
    () => Promise.resolve(good({ path: 'a/job.md', kept: ['how-it-went'] })),
    'Account written: job.md; kept as edited: how-it-went',
  ],
] as const)('an account that %s is told, and the session stays', async (_, writeAccount, told) => {
  const { program } = makeProgram({ writeAccount });
  press(program, `${startKeys()}c2y`);
  const { session } = program.state();

  press(program, 'e');

  await expect.poll(() => program.state().notice?.text).toBe(told);
  expect(program.state().session?.events).toBe(session?.events);
});

test('Ctrl+L draws the screen anew and changes nothing on it', () => {
  const made = makeProgram();
  press(made.program, startKeys());
  const { screen, session } = made.program.state();

  press(made.program, '<C-l>');

  expect(made.redrawn()).toBe(1);
  expect(made.program.state()).toMatchObject({ screen, session });
});

test('the clock goes on by itself, and writes nothing', () => {
  const { program } = makeProgram();
  press(program, startKeys());
  const before = program.state();

  program.dispatch({ kind: 'ticked' });

  expect(Date.parse(program.state().now.at)).toBeGreaterThan(Date.parse(before.now.at));
  expect(program.state().session?.events).toBe(before.session?.events);
});

test('advice that was thought out for an earlier state of the work is thrown away', () => {
  const { program } = makeProgram();
  press(program, startKeys());
  const { session } = program.state();
  const events = (session?.events.length ?? 0) + 1;

  program.dispatch({ kind: 'not-advised', events, why: 'too late' });

  expect(program.state().session?.unadvised).toBe(session?.unadvised);
  expect(program.state().session?.unadvised).not.toBe('too late');
});
