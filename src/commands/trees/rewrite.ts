import { good, type Parsed } from '../../core/problem.ts';
import { attempt, type Files } from '../../store/files.ts';
import { writeWhole } from '../../store/whole-file.ts';
import type { Io } from '../io.ts';

/**
 * Writes a tree anew over its file, with the old text beside it; an older text is never written over.
 * @returns where the old text stands now
 */
export function rewriteTree(
  { disk: { files } }: Io,
  path: string,
  { old, text }: { readonly old: string; readonly text: string },
): Parsed<string> {
  const before = freeName(files, `${path}.before`);
  const written = attempt(path, () => {
    writeWhole(files, before, old);
    writeWhole(files, path, text);
  });
  return written.kind === 'bad' ? written : good(before);
}

/** The name itself, or the first with a number behind it that is free: `horn.json.before-2`. */
function freeName(files: Files, name: string): string {
  for (let number = 1; ; number += 1) {
    const numbered = number === 1 ? name : `${name}-${number}`;
    if (!files.exists(numbered)) return numbered;
  }
}
