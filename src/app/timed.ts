import { timersAt, timerWords, type Running } from '../core/session/timers/running.ts';
import type { Effect, Transition } from './effect.ts';
import type { Message } from './message.ts';
import { nowIn } from './practice-clock.ts';
import type { State } from './state.ts';

/** How long before its end a timer gets a call of its own, in seconds: the clock on screen goes on by as much. */
const callWithin = 15;

/** The timers of the job on screen; none over a replay, which stands at another time. */
const timersOn = ({ session, screen, now }: State, at = now): readonly Running[] =>
  session === undefined || screen.kind === 'replay'
    ? []
    : timersAt(session.story, nowIn(session, at));

/** The timers in one line, the shortest first; empty without one. */
export const timerLine = (state: State): string => timersOn(state).map(timerWords).join(' · ');

/** What follows from time going on: a timer that has run out rings once, one that is about to gets a call. */
export function timed(before: State, message: Message, { state, effects }: Transition): Transition {
  const timers = timersOn(state);
  if (timers.length === 0) return { state, effects };
  const added: Effect[] = [];
  if (state.settings.bell === 'on' && anyRanOut(before, state, timers))
    added.push({ kind: 'ring' });
  const next = timers.find(({ left }) => left > 0);
  const anew = message.kind === 'ticked' || state.session?.story !== before.session?.story;
  if (anew && next !== undefined && next.left <= callWithin)
    added.push({ kind: 'call', after: Math.ceil(next.left * 1000) });
  return { state, effects: [...effects, ...added] };
}

/** Whether one that ran before has come to its end by now. */
function anyRanOut(before: State, { session }: State, timers: readonly Running[]): boolean {
  if (before.session?.path !== session?.path) return false;
  const ran = new Set(timersOn(before).flatMap(({ n, left }) => (left > 0 ? [n] : [])));
  return timers.some(({ n, left }) => left <= 0 && ran.has(n));
}
