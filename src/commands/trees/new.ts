import { basename } from 'node:path';
import { bad } from '../../core/problem.ts';
import { skeleton } from '../../core/tree/skeleton.ts';
import { Id } from '../../core/tree/basics.ts';
import { attempt } from '../../store/files.ts';
import { writeWhole } from '../../store/whole-file.ts';
import { done, type Ended, type Io } from '../io.ts';
import { absolute, type Given } from '../options.ts';

/** `droplight trees new [FILE]`: a tree to begin with, printed or written to a file not there yet. */
export function newTree(io: Io, _: Given, [word]: readonly string[]): Ended {
  const id = basename(word ?? 'my-complaint', '.json');
  if (!Id.safeParse(id).success)
    return bad({
      code: 'wrong-id',
      value: id,
      message: `"${id}" cannot be the id of a tree, which is the name of its file.`,
      mend: 'Use lower-case letters, digits and hyphens: droplight trees new my-complaint.json',
    });
  const text = `${JSON.stringify(skeleton(id), null, 2)}\n`;
  if (word === undefined) {
    io.out(text);
    return done;
  }
  const path = absolute(io, word);
  if (io.disk.files.exists(path))
    return bad({
      code: 'file-there',
      file: path,
      message: 'There is a file of this name already.',
      mend: 'Choose another name.',
    });
  const written = attempt(path, () => writeWhole(io.disk.files, path, text));
  if (written.kind === 'bad') return written;
  io.out(`${path}\n`);
  return done;
}
