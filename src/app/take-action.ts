import type { Problem } from '../core/problem.ts';
import type { Action } from '../core/session/action.ts';
import { contradictionOf, settlings, type Contradiction } from '../core/session/contradiction.ts';
import { decide } from '../core/session/rules/rules.ts';
import type { World } from '../core/session/rules/ruling.ts';
import type { Payload } from '../core/session/event.ts';
import type { KeptPhoto } from '../core/session/record/photo.ts';
import { step } from '../core/session/fold.ts';
import { newEvent, unreadable } from '../core/session/read-event.ts';
import { stampOf } from '../core/reason/practice/minutes.ts';
import { nextNumber } from '../core/session/story.ts';
import { object, type Transition, transition } from './effect.ts';
import { ledStory } from './leading-step.ts';
import { hiddenFault } from './practice.ts';
import type { OpenSession, State } from './state.ts';
import { limitWarnings } from './walk/limit.ts';

/** What became of an action, for whoever asked. */
type Outcome =
  | {
      readonly kind: 'done';
      readonly n: number;
      readonly warnings: readonly string[];
      /** The finding does not agree with an earlier one: see `contradictionOf`. */
      readonly contradicts: boolean;
    }
  | { readonly kind: 'refused'; readonly problem: Problem };

export type ActionTaken = Transition & { readonly outcome: Outcome };

const noSession: Problem = {
  code: 'no-session',
  message: 'No session is open.',
  mend: 'Start or pick up one first.',
};

/**
 * Takes an action into the open session: into the story at once, to the disk as an effect.
 * @param photo of the action, which lies beside the session already
 */
export function takeAction(state: State, action: Action, photo?: KeptPhoto): ActionTaken {
  if (state.session === undefined) return refused(state, noSession);
  const decision = decide(state.session.story, action, {
    ...worldOf(state),
    practice: hiddenFault(state.session),
    photo,
  });
  if (decision.kind === 'refused') return refused(state, decision.problem);
  const { session, events } = extend(state.session, decision.payloads, state);
  const [problem] = events.map(unreadable).filter((one) => one !== undefined);
  if (problem !== undefined) return refused(state, problem);
  const found = contradictionOf(session.story, events.at(-1));
  const heard = [...limitWarnings(state.session.story, session.story), ...decision.warnings];
  const warnings = [...heard, ...(found ? [contradictionWords(found)] : [])];
  const [warning] = heard;
  const notice = warning === undefined ? state.notice : { kind: 'info' as const, text: warning };
  return {
    ...transition(
      { ...state, session, notice },
      ...events.map((event) => ({ kind: 'append' as const, event })),
      { kind: 'advise' },
    ),
    outcome: { kind: 'done', n: events.at(-1)?.n ?? 0, warnings, contradicts: found !== undefined },
  };
}

const refused = (state: State, problem: Problem): ActionTaken => ({
  ...object(state, problem),
  outcome: { kind: 'refused', problem },
});

/** For whoever has no screen to be asked on. */
const contradictionWords = (found: Contradiction): string =>
  `This is worse than what the check showed before, ${found.repairsBetween > 0 ? 'and a repair between can only have made it better' : 'with nothing changed between'}: say which it is with "settle" (${settlings(found).join(', ')}); until then the newer one counts.`;

/** Adds events to the open session; they are in the story from here on, and kept when the disk says so. */
export function extend(
  session: OpenSession,
  payloads: readonly Payload[],
  { now, settings }: Pick<State, 'now' | 'settings'>,
) {
  const first = nextNumber(session.story);
  let { story } = session;
  const events = payloads.map((payload, index) => {
    const event = newEvent(first + index, stampOf(story, payload, now), payload);
    story = step(story, event);
    return event;
  });
  return {
    events,
    session: {
      ...session,
      events: [...session.events, ...events],
      ...ledStory(story, settings),
    },
  };
}

function worldOf(state: State): World {
  return {
    shop: state.library?.shop,
    tree: (id) => {
      const tree = state.library?.trees.find((one) => one.id === id);
      return tree && state.library && { tree, shop: state.library.shop };
    },
  };
}
