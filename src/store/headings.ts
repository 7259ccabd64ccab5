import { join } from 'node:path';
import { bad, good, type Parsed, type Problem } from '../core/problem.ts';
import { byGroup } from '../core/tree/groups.ts';
import { headingOf, type Heading } from '../core/tree/json/heading.ts';
import { maxLength } from '../core/tree/json/read.ts';
import { idsTwice } from '../core/tree/lint/shared.ts';
import { attempt, type Files } from './files.ts';
import { textAtStart } from './text.ts';

/** The file that the trees of a folder share. */
export const shopFile = 'shop.json';

export const isTreeFile = (name: string): boolean =>
  name.endsWith('.json') && name !== shopFile && !name.endsWith('.schema.json');

/** Bytes read of each file: what a tree calls itself stands at its top. */
const startLength = 4096;

type Headings = {
  readonly headings: readonly Heading[];
  /** Files that give no id and title, or an id that another gives, or that the system refuses. */
  readonly problems: readonly Problem[];
};

/**
 * The trees of a folder by name, quick however many there are: the files are not read through, and
 * what else is wrong with them stays unseen.
 */
export function loadHeadings(files: Files, folder: string): Headings {
  const found = files
    .list(folder)
    .filter(isTreeFile)
    .map((name) => {
      const file = join(folder, name);
      return { file, heading: loadHeading(files, file) };
    });
  const named = found.flatMap(({ file, heading }) =>
    heading.kind === 'good' ? [{ file, ...heading.value }] : [],
  );
  return {
    headings: byGroup(named.map(({ file: _, ...heading }) => heading)),
    problems: [
      ...found.flatMap(({ heading }) => (heading.kind === 'bad' ? heading.problems : [])),
      ...idsTwice(named).filter((one) => one !== undefined),
    ],
  };
}

function loadHeading(files: Files, path: string): Parsed<Heading> {
  const text = (length: number): string => textAtStart(files.readStart(path, length));
  // One whose long texts come first is read as far as a tree may go.
  const read = attempt(path, () => headingOf(text(startLength)) ?? headingOf(text(maxLength)));
  if (read.kind === 'bad') return read;
  return read.value === undefined ? bad(noHeading(path)) : good(read.value);
}

const noHeading = (file: string): Problem => ({
  code: 'no-heading',
  file,
  message: 'This file gives no "id" and "title" of a tree.',
  mend: '"droplight trees check" tells what is wrong with it.',
});
