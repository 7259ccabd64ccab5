import { frameAt, frameStops } from '../core/review/frames.ts';
import { replayCast, replayText } from '../core/review/replay-forms.ts';
import { recordWarning } from '../core/session/record/damage.ts';
import { dateOf, secondsBetween } from '../core/session/clock.ts';
import { firstLeg } from '../core/session/story.ts';
import { fold } from '../core/session/fold.ts';
import { clean, cleanRow } from '../core/text.ts';
import { done, type Ended, type Io } from './io.ts';
import { wrongUse } from './options.ts';
import { withSession } from './session.ts';
import { screenUses } from './uses.ts';

const { replay: use } = screenUses;

/** `droplight replay SESSION --as text|cast`: a frame a decision, to read or to play in a terminal. */
export async function replay(io: Io, args: readonly string[]): Promise<Ended> {
  return withSession(io, args, use, ({ given, recovered }) => {
    const form = use.values.as.find((one) => one === given.text('as')?.toLowerCase());
    if (form === undefined)
      return wrongUse('A replay is written as text or cast.', `droplight ${use.use}`);
    const story = fold(recovered.header, recovered.events);
    const { opened, vehicle } = story.header;
    const frames = frameStops(recovered).map((count) => frameAt(recovered, count));
    const title = cleanRow(`${vehicle.name}: ${firstLeg(story).tree.title} (${dateOf(opened)})`);
    const warning = recordWarning(recovered.damage);
    if (form === 'text') {
      const first = warning === undefined ? '' : `${clean(warning)}\n\n`;
      io.out(`${first}${replayText(title, frames)}\n`);
    } else {
      if (warning !== undefined) io.err(`${clean(warning)}\n`);
      io.out(replayCast(title, frames, secondsBetween('1970-01-01T00:00:00Z', opened) ?? 0));
    }
    return done;
  });
}
