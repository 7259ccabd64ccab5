import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { showMarkdown } from '../../src/core/account/forms/markdown.ts';
import { reviewBlocks } from '../../src/core/review/outline.ts';
import { reviewOf } from '../../src/core/review/review.ts';
import { fold, type Recorded } from '../../src/core/session/fold.ts';
import { readSession } from '../../src/store/recover.ts';

const folder = 'sessions/examples';

/** The names of the example sessions, and one of them by the end of its name. */
export const exampleNames = readdirSync(folder).filter((name) => name.endsWith('.jsonl'));

export function exampleNamed(end: string): Recorded {
  const name = exampleNames.find((one) => one.endsWith(`${end}.jsonl`)) ?? '';
  const read = readSession(readFileSync(join(folder, name)), name);
  if (read.kind === 'bad') throw new Error(`${name} cannot be read`);
  return read.value;
}

/** A review without the made-up vehicles of its comparison. */
export const reviewed = (recorded: Recorded, vehicles = 0) => ({
  review: reviewOf('job', recorded, { vehicles }),
  story: fold(recorded.header, recorded.events),
});

/** Reviews as a mentor reads them, without the escapes of markdown. */
export const reviewText = (...all: Parameters<typeof reviewBlocks>[0]): string =>
  showMarkdown(reviewBlocks(all)).replaceAll('\\', '');
