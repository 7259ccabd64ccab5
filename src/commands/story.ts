import { fold } from '../core/session/fold.ts';
import { openQuestions } from '../core/session/contradiction.ts';
import { currentLeg } from '../core/session/story.ts';
import { clockOddities } from '../core/session/time.ts';
import type { Recovered } from '../store/recover.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { withSession } from './session.ts';

const use = { use: 'droplight story SESSION --json', options: { json: 'flag' } } as const;

/** `droplight story SESSION --json`: the folded state of a session. Never opens it for writing. */
export async function story(io: Io, args: readonly string[]): Promise<Ended> {
  return withSession(io, args, use, ({ recovered }) => {
    printJson(io, storyJson(recovered));
    return done;
  });
}

/** The story as data: everything but the trees themselves, which stand in the session's own file. */
export function storyJson({ header, events, damage, link }: Recovered) {
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
    openQuestions: openQuestions(folded),
    step: due,
    clock: clockOddities(entries.map(({ event }) => event)),
    damage,
    link,
  };
}
