import { askWords, passedWords, shortMinutes } from '../../core/session/costs/words.ts';
import {
  askBefore,
  isDismantled,
  measured,
  passedParts,
  type Measured,
} from '../../core/session/costs/limit.ts';
import { unlisted } from '../../core/tree/model.ts';
import { isGuess } from '../../core/reason/grade.ts';
import type { Story } from '../../core/session/story.ts';
import type { OpenSession, State } from '../state.ts';
import { workedNow } from './worked.ts';
import type { DueOnScreen } from './question.ts';

/** What must be heard after an action: that it passed the limit, or names a repair that would. */
export function limitWarnings(before: Story, after: Story): readonly string[] {
  if (after.limit === undefined) return [];
  const now = measured(after);
  const known = passedParts(measured(before));
  const anew = passedParts(now).some((part) => !known.includes(part));
  const condemned = after.condemned.at(-1);
  const named = condemned !== undefined && condemned.n !== before.condemned.at(-1)?.n;
  const ask = named ? beforeWords(after, condemned.cause, now) : '';
  return [
    ...(anew ? [`The limit is passed: ${passedWords(now)}. Stop and ask.`] : []),
    ...(ask === '' ? [] : [`Stop and ask before this repair: ${ask}.`]),
  ];
}

function beforeWords(story: Story, cause: string, { time }: Measured): string {
  const ask = askBefore(story, cause, time?.spent);
  return ask === undefined ? '' : askWords(ask, time === undefined ? '' : shortMinutes(time.of));
}

/** The line of the limit under a step; empty while there is nothing to say. */
export function limitLine({ now, question: { due } }: State, session: OpenSession): string {
  const { story } = session;
  if (story.closed !== undefined) return '';
  if (story.limit === undefined) return offers(story, due) ? `LIMIT     ${offer}` : '';
  const spent = measured(story, workedNow(session, now));
  const passed = passedWords(spent);
  if (passed !== '') return `LIMIT     passed: ${passed}. Stop and ask.`;
  const cause = due?.cause?.id ?? leader(session);
  const ask = cause === undefined ? '' : beforeWords(story, cause, spent);
  const which = due?.cause === undefined ? 'if it is what leads' : 'stop and ask';
  return ask === '' ? '' : `LIMIT     ${which}: ${ask}`;
}

const offer = 'none agreed yet, and this opens the vehicle: M, if one is wanted';

/** Before the first thing is opened, and only there. */
const offers = (story: Story, due: DueOnScreen | undefined): boolean =>
  due?.blocker.kind === 'prepare' &&
  due.blocker.preparations.some(({ kind }) => kind === 'open') &&
  !isDismantled(story);

/** The suspect that leads, where it is more than a guess. */
function leader({ advice }: OpenSession): string | undefined {
  const [first] = advice?.suspects ?? [];
  return first === undefined || first.cause === unlisted || isGuess(first.chance)
    ? undefined
    : first.cause;
}
