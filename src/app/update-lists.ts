import type { Action } from '../core/session/action.ts';
import { aboutMinutes, percent, stepWords } from '../core/reason/sentence.ts';
import { currentLeg } from '../core/session/story.ts';
import { act } from './act.ts';
import { moved, picked } from './cursor.ts';
import { still, type Step } from './effect.ts';
import type { Press } from './press.ts';
import { home, walk, type Screen } from './screen.ts';
import type { Live, State } from './state.ts';
import { done } from './answering.ts';
import { apart, endings, otherChecks, suspects } from './lists.ts';

type At<K extends Screen['kind']> = Extract<Screen, { kind: K }>;
type ListScreen = At<'others' | 'suspects' | 'apart' | 'close'>;

/** The part that all lists over the walk share: back, cursor, and what picking a line does. */
function updateList(
  state: State,
  screen: ListScreen,
  press: Press,
  actions: readonly Action[],
): Step<State> {
  if (state.live === undefined) return still({ ...state, screen: home });
  if (press.command === 'go-back') return still({ ...state, screen: walk });
  const index = picked(screen.cursor, press, actions.length);
  const action = index === undefined ? undefined : actions[index];
  if (action !== undefined) return done(act(state, action));
  const cursor = moved(screen.cursor, press.command, actions.length);
  return still({ ...state, screen: { ...screen, cursor } });
}

export function updateOthers(state: State, screen: At<'others'>, press: Press): Step<State> {
  const checks = state.live === undefined ? [] : otherChecks(state.live);
  return updateList(
    state,
    screen,
    press,
    checks.map(({ id }) => ({ do: 'begin', check: id })),
  );
}

/**
 * Condemns the cause that is picked. Under an even chance it is said what a short check would
 * settle; the mechanic decides.
 */
export function updateSuspects(state: State, screen: At<'suspects'>, press: Press): Step<State> {
  const { live } = state;
  const lines = live === undefined ? [] : suspects(live);
  const step = updateList(
    state,
    screen,
    press,
    lines.map(({ id }) => ({ do: 'condemn', cause: id, acknowledged: true })),
  );
  const index = picked(screen.cursor, press, lines.length);
  const line = index === undefined ? undefined : lines[index];
  const guess =
    line !== undefined && live !== undefined && line.chance !== undefined && line.chance < 0.5;
  if (!guess) return step;
  const text = guessWords(live, line.chance ?? 0);
  return { ...step, state: { ...step.state, notice: { kind: 'told', text } } };
}

/** That a repair is a guess still, and the check that would tell more. */
function guessWords({ story, advice }: Live, chance: number): string {
  const check = advice?.next.find((step) => step.do === 'check');
  if (check === undefined) return `Only ${percent(chance)}: a guess still.`;
  const { tree } = currentLeg(story);
  return `Only ${percent(chance)}: "${stepWords(tree, check)}" (${aboutMinutes(check.minutes)}) would tell more first; o has it.`;
}

export function updateApart(state: State, screen: At<'apart'>, press: Press): Step<State> {
  const lines = state.live === undefined ? [] : apart(state.live.story);
  const step = updateList(
    state,
    screen,
    press,
    lines.map(({ mend }) => mend),
  );
  // Several things go back together: the list stays up until it is empty or left.
  const more = step.state.live !== undefined && apart(step.state.live.story).length > 0;
  return press.command === 'choose' && more
    ? { ...step, state: { ...step.state, screen: { kind: 'apart', cursor: 0 } } }
    : step;
}

export const updateClose = (state: State, screen: At<'close'>, press: Press): Step<State> =>
  updateList(
    state,
    screen,
    press,
    endings.map(({ as }) => ({ do: 'close', as })),
  );
