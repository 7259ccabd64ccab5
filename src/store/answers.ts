import { dirname } from 'node:path';
import { problemsOf, type Parsed } from '../core/problem.ts';
import { attempt, type Files } from './files.ts';
import { textOf } from './text.ts';
import { writeAll } from './whole-file.ts';

/** A file of answers, a line each: what stands in it is on the disk. */
export type Answers = {
  readonly lines: readonly string[];
  /** Puts a line behind the others; it is synced when this returns. */
  readonly append: (line: string) => Parsed<undefined>;
  readonly close: () => void;
};

/** Opens the answers of a tree, or begins them. A torn last line is closed and taken back. */
export function openAnswers(files: Files, path: string): Parsed<Answers> {
  const opened = attempt(path, () => {
    const begun = files.exists(path);
    if (!begun) {
      files.makeFolder(dirname(path));
      files.close(files.create(path));
      files.syncFolder(dirname(path));
    }
    const text = textOf(files.read(path), path);
    return { text, handle: files.openAppend(path) };
  });
  if (opened.kind === 'bad') return opened;
  const { text, handle } = opened.value;
  if (text.kind === 'bad') return { kind: 'bad', problems: problemsOf(text) };
  const append = (line: string): Parsed<undefined> =>
    attempt(path, () => {
      writeAll(files, handle, line);
      files.syncNow(handle);
      return undefined;
    });
  const lines = text.value.split(/\r?\n/);
  const torn = lines.pop() ?? '';
  if (torn !== '') {
    const closed = append('\nback\n');
    if (closed.kind === 'bad') return closed;
  }
  return {
    kind: 'good',
    value: {
      lines,
      append: (line) => append(`${line}\n`),
      close: () => files.close(handle),
    },
  };
}
