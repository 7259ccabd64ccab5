import { clockTime } from '../core/session/clock.ts';
import type { Payload } from '../core/session/event.ts';
import { isPractice } from '../core/session/header/is-practice.ts';
import { fold } from '../core/session/fold.ts';
import { recordWarning } from '../core/session/record/damage.ts';
import { currentLeg } from '../core/session/story.ts';
import { transition, type Transition } from './effect.ts';
import { ledStory } from './leading-step.ts';
import type { Message } from './message.ts';
import { makeRecording, sessionAt } from './pages/replay-frames.ts';
import { walk, type Screen } from './screen.ts';
import { asksWho } from './walk/worker.ts';
import { practiceOffer } from './practice.ts';
import type { OpenSession, State } from './state.ts';
import { extend } from './take-action.ts';

/** A session is open: it is picked up where it was put down, or shown as it ended. */
export function opened(
  state: State,
  { path, header, events, torn, damage = [], secret }: Extract<Message, { kind: 'session-opened' }>,
): Transition {
  const read: OpenSession = {
    path,
    header,
    events,
    damage,
    secret,
    ...ledStory(fold(header, events), state.settings),
    kept: events.at(-1)?.n ?? 0,
    keptAt: clockTime(state.now.at),
    trouble: undefined,
  };
  const fresh = events.length === 0 && torn === 0;
  const { session, events: added } = extend(read, firstWords(read, { fresh, torn }), state);
  const text = recordWarning(damage) ?? (fresh ? firstOffer(read) : pickedUp(torn, read));
  return transition(
    {
      ...state,
      session,
      screen: fresh ? walk : firstAsked(state, session),
      notice: text === undefined ? undefined : { kind: 'info', text },
      // The key that picked it up is no answer to what stands there.
      run: state.run && { ...state.run, spent: true },
    },
    ...added.map((event) => ({ kind: 'append' as const, event })),
    { kind: 'advise' },
  );
}

/** What the record says of its being opened. The clock of a practice begins with a word of it. */
function firstWords(
  { header }: OpenSession,
  { fresh, torn }: { readonly fresh: boolean; readonly torn: number },
): readonly Payload[] {
  if (!fresh) return [{ kind: 'resumed', ...(torn > 0 && { torn }) }];
  return isPractice(header) ? [{ kind: 'conditions', set: {} }] : [];
}

/** A job that knows a name asks who works on it now. */
const firstAsked = ({ settings }: State, { story }: OpenSession): Screen =>
  story.closed === undefined && asksWho(story, settings) ? { kind: 'worker', cursor: -1 } : walk;

const firstOffer = (session: OpenSession): string | undefined =>
  isPractice(session.header) ? practiceOffer(session) : baselineOffer(session);

/** Before the first step: what cannot be learned any more once something is disturbed. */
const baselineOffer = ({ story }: OpenSession): string | undefined =>
  currentLeg(story).tree.baseline.length === 0
    ? undefined
    : 'B: the baseline, before anything is disturbed.';

function pickedUp(torn: number, { story }: OpenSession): string {
  if (torn > 0)
    return `Picked up. The last ${torn} bytes were torn by a power loss; they are kept in the file and passed over.`;
  return story.closed === undefined
    ? 'Picked up where it was put down.'
    : 'This job is closed; it stands as it ended.';
}

/** A session is read to be shown again; nothing is added to it. */
export function replayOpened(
  state: State,
  { path, header, events, damage = [] }: Extract<Message, { kind: 'replay-opened' }>,
): Transition {
  const recording = { ...makeRecording(path, header, events), damage };
  const screen: Screen = { kind: 'replay', recording, at: 0, typed: '', playing: false, speed: 1 };
  return transition({ ...state, session: sessionAt(recording, 0), screen });
}
