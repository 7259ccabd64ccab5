import { fold } from '../core/session/fold.ts';
import { currentLeg } from '../core/session/story.ts';
import { clockOddities } from '../core/session/time.ts';
import type { Reading } from '../store/recover.ts';
import { loadSession } from '../store/sessions.ts';
import { fail, printJson, type ExitCode, type Io } from './io.ts';
import { firstOf, namedSession, readOptions } from './options.ts';

/** `droplight story SESSION --json`: the folded state of a session. Never opens it for writing. */
export async function story(io: Io, args: readonly string[]): Promise<ExitCode> {
  const given = readOptions(args, { json: 'flag' });
  if (given.kind === 'bad') return fail(io, firstOf(given.problems));
  const path = namedSession(io, given.value, 'droplight story SESSION --json');
  if (path.kind === 'bad') return fail(io, firstOf(path.problems));
  const loaded = loadSession(io.disk.files, path.value);
  if (loaded.kind === 'bad') return fail(io, firstOf(loaded.problems));
  printJson(io, storyJson(loaded.value));
  return 0;
}

/** The story as data: everything but the trees themselves, which stand in the session's own file. */
export function storyJson({ header, events, blemishes, link }: Reading) {
  const folded = fold(header, events);
  const { header: _, entries, legs, due, ...rest } = folded;
  return {
    session: header.id,
    opened: header.opened,
    who: header.who,
    vehicle: header.vehicle,
    tree: currentLeg(folded).tree.id,
    legs: legs.map(({ tree, since }) => ({ tree: tree.id, since })),
    events: entries.length,
    ...rest,
    step: due,
    clock: clockOddities(entries.map(({ event }) => event)),
    blemishes,
    link,
  };
}
