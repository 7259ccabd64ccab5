import { expect, test } from 'vitest';
import { plain } from '../../../src/commands/plain/plain.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { runCommand } from '../../helpers/commands.ts';
import { began } from '../../helpers/plain.ts';

test('a disk that refuses is told in a line, and what it did not keep is handed over at the end', async () => {
  let isFull = false;
  const full = (): never => {
    throw Object.assign(new Error('planted'), { code: 'ENOSPC' });
  };
  const files = {
    ...nodeFiles,
    write: (...given: Parameters<typeof nodeFiles.write>) =>
      isFull ? full() : nodeFiles.write(...given),
    create: (...given: Parameters<typeof nodeFiles.create>) =>
      isFull ? full() : nodeFiles.create(...given),
  };
  const { code, out, err } = await runCommand(
    (io, given) => plain(io, given, 'home'),
    ['--plain'],
    {
      files,
      lines: [...began, 'n', 'the last words', 'n', '.'],
      heard: (text) => {
        // From the echo of the note on nothing more goes to the disk.
        if (text.includes('the last words')) isFull = true;
      },
    },
  );

  expect(out).toMatch(/\nNOT KEPT: /);
  expect(out).toMatch(/\n\{"n":1,.*"text":"the last words".*"kind":"noted"/);
  expect(err).toContain('The disk did not take the last answers');
  expect(code).toBe(3);
}, 60_000);
