import { basename } from 'node:path';
import { showMarkdown } from '../core/account/markdown.ts';
import { reviewBlocks } from '../core/review/outline.ts';
import { trendsOf } from '../core/review/trend.ts';
import { reviewOf } from '../core/review/review.ts';
import { loadSession } from '../store/sessions.ts';
import { fail, printJson, type ExitCode, type Io } from './io.ts';
import { firstOf, readOptions, sessionNamed } from './options.ts';

/** `droplight review SESSION... [--json]`: what a mentor would look at, in minutes and evidence. */
export async function review(io: Io, args: readonly string[]): Promise<ExitCode> {
  const given = readOptions(args, { json: 'flag' });
  if (given.kind === 'bad') return fail(io, firstOf(given.problems));
  if (given.value.words.length === 0)
    return fail(io, {
      code: 'wrong-use',
      message: 'This command wants one session or more.',
      mend: 'Use: droplight review SESSION... [--json]',
    });
  const reviews = [];
  for (const named of given.value.words) {
    const path = sessionNamed(io, given.value, named);
    if (path.kind === 'bad') return fail(io, firstOf(path.problems));
    const loaded = loadSession(io.disk.files, path.value);
    if (loaded.kind === 'bad') return fail(io, { ...firstOf(loaded.problems), file: path.value });
    reviews.push(reviewOf(basename(path.value).replace(/\.jsonl$/, ''), loaded.value));
  }
  if (given.value.flag('json')) printJson(io, { reviews, trends: trendsOf(reviews) });
  else io.out(showMarkdown(reviewBlocks(reviews)));
  return 0;
}
