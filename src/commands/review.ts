import { paragraph } from '../core/account/block.ts';
import { practiceLine } from '../core/account/opening/practice.ts';
import { fold } from '../core/session/fold.ts';
import { recordWarning } from '../core/session/record/damage.ts';
import { showMarkdown } from '../core/account/forms/markdown.ts';
import { reviewBlocks } from '../core/review/outline.ts';
import { trendsOf } from '../core/review/trend.ts';
import { reviewOf } from '../core/review/review.ts';
import { sessionName } from '../store/find.ts';
import { loadSession } from '../store/sessions.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { readOptions } from './options.ts';
import { namedSessions, recordJson } from './session.ts';
import { callOf, uses } from './uses.ts';

/** `droplight review SESSION... [--json]`: what a mentor would look at, in minutes and evidence. */
export async function review(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.review.options);
  if (given.kind === 'bad') return given;
  const paths = namedSessions(io, given.value, callOf('review'));
  if (paths.kind === 'bad') return paths;
  const reviews = [];
  const warnings: string[] = [];
  for (const path of paths.value) {
    const loaded = loadSession(io.disk.files, path);
    if (loaded.kind === 'bad') return loaded;
    const { damage } = loaded.value;
    const warning = recordWarning(damage);
    if (warning !== undefined) warnings.push(`${sessionName(path)}: ${warning}`);
    const practice = practiceLine(fold(loaded.value.header, loaded.value.events));
    if (practice !== undefined) warnings.push(`${sessionName(path)}: ${practice}`);
    reviews.push({ record: recordJson(damage), ...reviewOf(sessionName(path), loaded.value) });
  }
  if (given.value.flag('json')) printJson(io, { reviews, trends: trendsOf(reviews) });
  else io.out(showMarkdown([...warnings.map(paragraph), ...reviewBlocks(reviews)]));
  return done;
}
