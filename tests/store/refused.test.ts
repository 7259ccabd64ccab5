import { expect, test } from 'vitest';
import { openJournal, path } from '../helpers/journal-run.ts';
import { failFrom, type Refusal } from '../helpers/memory-files.ts';
import { note, readBack } from '../helpers/session-file.ts';

/** Three events, each tried until the disk takes it; what was refused must not be in the file then. */
function commitWith(refuse: Refusal) {
  const { files, journal } = openJournal();
  files.refuse = refuse;
  const wrong: string[] = [];
  let refused = 0;
  for (const n of [1, 2, 3])
    for (let kept = false; !kept;) {
      try {
        journal.commit([note(n)]);
        kept = true;
      } catch (error) {
        refused += 1;
        const isTold = error instanceof Error && error.message.includes('it may stand');
        const events = readBack(files.text(path)).events ?? [];
        if (!isTold && events.includes(n)) wrong.push(`event ${n} was refused and kept`);
      }
    }
  files.refuse = () => undefined;
  journal.close();
  return { calls: files.calls.length, refused, wrong, file: readBack(files.text(path)) };
}

test.each([
  ['EIO', 1],
  ['ENOSPC', 1],
  ['EACCES', 1],
  ['EIO', 2],
  ['ENOSPC', 5],
])('with %s at the n-th call, %i times, retrying is safe for every n', (code, times) => {
  const calm = commitWith(() => undefined).calls;
  const runs = Array.from({ length: calm }, (_, index) =>
    commitWith(failFrom(index + 1, code, times)),
  );

  expect(runs.flatMap(({ wrong }) => wrong)).toEqual([]);
  expect(runs.map(({ file }) => file)).toEqual(
    runs.map(() => ({ events: [1, 2, 3], damage: [], openEnd: false })),
  );
  expect(runs.filter(({ refused }) => refused > 0).length).toBeGreaterThan(5);
});
