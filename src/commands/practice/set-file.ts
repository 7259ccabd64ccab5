import { basename } from 'node:path';
import * as z from 'zod';
import { bad, good, type Parsed } from '../../core/problem.ts';
import type { Tree } from '../../core/tree/model.ts';
import { fileOf } from '../../core/tree/written/settle.ts';
import { attempt } from '../../store/files.ts';
import { sha256 } from '../../store/recover.ts';
import type { Io } from '../io.ts';
import { absolute } from '../options.ts';
import type { Hidden } from './hidden.ts';

/**
 * A set of faults for a class. Its seeds lead to the faults, by this program and the same tree alone; no
 * cause stands in it.
 */
export const SetFile = z.object({
  format: z.literal('droplight practice set 1'),
  name: z.string().min(1).max(200),
  tree: z.string().max(200),
  hard: z.boolean(),
  /** SHA-256 of the tree: in another one the same seeds hide other faults. */
  mark: z.string().length(64),
  /** As it is typed for --facts. */
  facts: z.string().max(2000),
  faults: z
    .array(z.object({ seed: z.string().min(1).max(200), commitment: z.string().length(64) }))
    .min(1)
    .max(999),
});

export type SetFile = z.output<typeof SetFile>;

/** One number of a set, as it is hidden. */
export function entryOf(io: Io, named: string, number: number): Parsed<Hidden> {
  const path = absolute(io, named);
  const bytes = attempt(path, () => io.disk.files.read(path));
  if (bytes.kind === 'bad') return bytes;
  const read = SetFile.safeParse(parsed(new TextDecoder().decode(bytes.value)));
  if (!read.success)
    return bad({
      code: 'no-practice-set',
      file: path,
      message: `${basename(path)} is no set of practice faults.`,
      mend: 'Make one with "droplight practice set TREE --count N --out FILE".',
    });
  const { name, tree, hard, facts, faults, mark } = read.data;
  const fault = faults[number - 1];
  if (fault === undefined)
    return bad({
      code: 'no-such-number',
      value: String(number),
      message: `The set has the numbers 1 to ${faults.length}.`,
      mend: 'Give one of them with --number.',
    });
  const set = { name, number };
  return good({ tree, hard, facts, causes: [], set, mark, seed: fault.seed });
}

/** What a set is bound to: the tree as it stands in the library. */
export const markOf = (tree: Tree): string => sha256(JSON.stringify(fileOf(tree)));

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
