import type { Action } from '../core/session/action.ts';
import { currentLeg, lastFinding, type Story } from '../core/session/story.ts';
import { act } from './act.ts';
import { moved, picked } from './cursor.ts';
import { still, type Step } from './effect.ts';
import type { Press } from './press.ts';
import { home, walk, type Screen } from './screen.ts';
import type { State } from './state.ts';
import { done } from './answering.ts';

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

/** A check that can be chosen instead of the one on screen. */
export type OtherCheck = { readonly id: string; readonly done: boolean; readonly minutes: number };

/** All checks: those not done yet first, the quicker before the longer. Access counts once, unless open. */
export function otherChecks(story: Story): readonly OtherCheck[] {
  const { tree, shop } = currentLeg(story);
  return Object.entries(tree.checks)
    .map(([id, check]) => ({
      id,
      done: lastFinding(story, id) !== undefined,
      minutes:
        check.minutes +
        check.access
          .filter((access) => !story.open.includes(access))
          .reduce((sum, access) => sum + (shop.accesses[access]?.open ?? 0), 0),
    }))
    .toSorted((a, b) => Number(a.done) - Number(b.done) || a.minutes - b.minutes);
}

export function updateOthers(state: State, screen: At<'others'>, press: Press): Step<State> {
  const checks = state.live === undefined ? [] : otherChecks(state.live.story);
  return updateList(
    state,
    screen,
    press,
    checks.map(({ id }) => ({ do: 'begin', check: id })),
  );
}

/** Causes by their odds in the tree, the likeliest first; those repaired already last. */
export function suspects(
  story: Story,
): readonly { readonly id: string; readonly repaired: boolean }[] {
  const { causes } = currentLeg(story).tree;
  return Object.entries(causes)
    .toSorted(([, a], [, b]) => b.odds - a.odds)
    .map(([id]) => ({ id, repaired: story.repairs.some(({ cause }) => cause === id) }))
    .toSorted((a, b) => Number(a.repaired) - Number(b.repaired));
}

export function updateSuspects(state: State, screen: At<'suspects'>, press: Press): Step<State> {
  const causes = state.live === undefined ? [] : suspects(state.live.story);
  return updateList(
    state,
    screen,
    press,
    causes.map(({ id }) => ({ do: 'condemn', cause: id, acknowledged: true })),
  );
}

/** What is off the vehicle or open on it now. */
export function apart(story: Story): readonly { readonly name: string; readonly mend: Action }[] {
  const { shop } = currentLeg(story);
  return [
    ...story.open.map((id) => ({
      name: shop.accesses[id]?.name ?? id,
      mend: { do: 'access', close: id } as const,
    })),
    ...story.partsOff.map(({ part }) => ({
      name: part,
      mend: { do: 'part-on', part } as const,
    })),
  ];
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

export type Ending = {
  readonly as: 'fixed' | 'handed-on' | 'given-up' | 'not-reproduced';
  readonly label: string;
};

export const endings: readonly Ending[] = [
  { as: 'fixed', label: 'fixed and proven' },
  { as: 'handed-on', label: 'handed on as it stands' },
  { as: 'given-up', label: 'given up' },
  { as: 'not-reproduced', label: 'the complaint could not be made to happen' },
];

export const updateClose = (state: State, screen: At<'close'>, press: Press): Step<State> =>
  updateList(
    state,
    screen,
    press,
    endings.map(({ as }) => ({ do: 'close', as })),
  );
