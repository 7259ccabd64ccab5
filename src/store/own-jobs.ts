import { treesByOwnJobs } from '../core/jobs/own-history.ts';
import { firstOf, type Problem } from '../core/problem.ts';
import type { Settings } from '../core/settings.ts';
import { count } from '../core/text.ts';
import type { Library } from '../core/tree/shop.ts';
import { attempt, type Files } from './files.ts';
import { loadJobs } from './jobs.ts';

/** Sessions that are read while somebody waits for a new job; about two seconds. */
const mostRead = 400;

type Owned = { readonly library: Library; readonly trouble?: Problem };

/**
 * A library as new jobs are to have it: as it was written, or moved to the jobs of a folder where the
 * settings ask for that. Where too many would have to be read first it stays as it was written, and why
 * is told.
 */
export function ownLibrary(
  files: Files,
  library: Library,
  { folder, ownJobs }: Pick<Settings, 'ownJobs'> & { readonly folder: string },
): Owned {
  if (ownJobs === 'off') return { library };
  const read = attempt(folder, () => loadJobs(files, folder, { most: mostRead }));
  if (read.kind === 'bad') return { library, trouble: firstOf(read.problems) };
  const { jobs, unread } = read.value;
  if (unread > 0) return { library, trouble: notCounted(unread) };
  return { library: { ...library, trees: treesByOwnJobs(library.trees, jobs) } };
}

const notCounted = (unread: number): Problem => ({
  code: 'not-counted',
  message: `${count(unread, 'session')} would have to be read first, so the trees stand as they were written.`,
  mend: 'Run "droplight history" once: it reads them all and keeps what they come to.',
});
