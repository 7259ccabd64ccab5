import { showMarkdown } from '../core/account/markdown.ts';
import { reviewBlocks } from '../core/review/outline.ts';
import { trendsOf } from '../core/review/trend.ts';
import { reviewOf } from '../core/review/review.ts';
import { sessionName } from '../store/find.ts';
import { loadSession } from '../store/sessions.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { readOptions } from './options.ts';
import { namedSessions } from './session.ts';

/** `droplight review SESSION... [--json]`: what a mentor would look at, in minutes and evidence. */
export async function review(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, { json: 'flag' });
  if (given.kind === 'bad') return given;
  const paths = namedSessions(io, given.value, 'droplight review SESSION... [--json]');
  if (paths.kind === 'bad') return paths;
  const reviews = [];
  for (const path of paths.value) {
    const loaded = loadSession(io.disk.files, path);
    if (loaded.kind === 'bad') return loaded;
    reviews.push(reviewOf(sessionName(path), loaded.value));
  }
  if (given.value.flag('json')) printJson(io, { reviews, trends: trendsOf(reviews) });
  else io.out(showMarkdown(reviewBlocks(reviews)));
  return done;
}
