import type { Action } from '../../core/session/action.ts';
import { gradeOf, isGuess } from '../../core/reason/grade.ts';
import { aboutMinutes, stepWords } from '../../core/reason/history/wording.ts';
import { currentLeg } from '../../core/session/story.ts';
import { takeAction } from '../take-action.ts';
import { marked, moved, picked } from '../keys/cursor.ts';
import { inform, show, type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import type { Page } from '../page.ts';
import { home, ready, walk, type At } from '../screen.ts';
import type { OpenSession, State } from '../state.ts';
import { afterAction, chooseCheck } from './answer.ts';
import { turnPage } from './claims.ts';
import { boardLines } from './board.ts';
import { endingsOf, otherChecks, suspects } from './lists.ts';

type ListKind = 'others' | 'suspects' | 'apart' | 'close';
type ListScreen = At<ListKind>;

const opening =
  (kind: 'others' | 'suspects') =>
  (state: State): Transition =>
    show(state, { kind, cursor: 0 });

const list = { mode: () => 'list' as const };
export const othersPage: Page<'others'> = {
  ...list,
  update: updateOthers,
  open: opening('others'),
};
export const suspectsPage: Page<'suspects'> = {
  ...list,
  update: updateSuspects,
  open: opening('suspects'),
};
export const apartPage: Page<'apart'> = {
  mode: () => 'apart',
  update: updateApart,
  open: (state) => show(state, { kind: 'apart', cursor: 0, order: 'off' }),
};
export const closePage: Page<'close'> = {
  mode: (_, { session }) => (session?.story.closed === undefined ? 'close' : 'reopen'),
  update: updateClose,
  // No line is marked at first.
  open: (state) => show(state, { kind: 'close', cursor: -1 }),
};

/** What all lists over the walk share: back to it, and the cursor. */
function moveIn(state: State, screen: ListScreen, press: KeyPress, lines: number): Transition {
  if (press.command === 'go-back') return show(state, walk);
  const cursor = moved(screen.cursor, press.command, lines);
  return show(state, { ...screen, cursor });
}

/** A list of claims: a digit or an arrow marks a line, and only `y` says that it is so. */
function updateClaims(
  state: State,
  screen: ListScreen,
  press: KeyPress,
  actions: readonly Action[],
): Transition {
  const action = press.command === 'confirm' ? actions[screen.cursor] : undefined;
  if (action !== undefined) return afterAction(takeAction(state, action));
  if (press.command !== 'pick-line') return moveIn(state, screen, press, actions.length);
  const line = marked(screen.cursor, press, actions.length);
  return line < 0 ? transition(state) : show(state, { ...screen, cursor: line });
}

function updateOthers(state: State, screen: At<'others'>, press: KeyPress): Transition {
  const { session } = state;
  if (session === undefined) return show(state, home);
  const checks = otherChecks(session);
  const check = picked(screen.cursor, press, checks);
  return check === undefined
    ? moveIn(state, screen, press, checks.length)
    : chooseCheck(state, session.story, check.id);
}

/**
 * Puts the cause that is picked on the walk, with its cautions, to be condemned there. Under an
 * even chance it is said what a short check would settle; the mechanic decides.
 */
function updateSuspects(state: State, screen: At<'suspects'>, press: KeyPress): Transition {
  const { session } = state;
  if (session === undefined) return show(state, home);
  const lines = suspects(session);
  const line = picked(screen.cursor, press, lines);
  if (line === undefined) return moveIn(state, screen, press, lines.length);
  const guess = line.chance !== undefined && isGuess(line.chance);
  const notice = guess
    ? { kind: 'info' as const, text: guessWords(session, line.chance) }
    : undefined;
  return transition({
    ...state,
    notice,
    screen: { kind: 'walk', input: ready, pickedCause: line.id },
  });
}

/** That a repair is a guess still, and the check that would tell more. */
function guessWords({ story, advice }: OpenSession, chance: number): string {
  const check = advice?.next.find((step) => step.do === 'check');
  const only = gradeOf(chance);
  if (check === undefined) return `Only ${only}: a guess still.`;
  const { tree } = currentLeg(story);
  return `Only ${only}: "${stepWords(tree, check)}" (${aboutMinutes(check.minutes)}) would tell more first; o has it.`;
}

function updateApart(state: State, screen: At<'apart'>, press: KeyPress): Transition {
  const { order } = screen;
  const { session } = state;
  if (press.command === 'turn-board')
    return show(state, { kind: 'apart', cursor: 0, order: order === 'off' ? 'back' : 'off' });
  const lines = session === undefined ? [] : boardLines(session.story, order);
  const first = lines[screen.cursor]?.first;
  if (press.command === 'confirm' && first !== undefined)
    return inform(state, `Not closed. ${first}: that line comes first.`);
  const step = updateClaims(
    state,
    screen,
    press,
    lines.map(({ mend }) => mend),
  );
  if (press.command !== 'confirm' || step.state.session === undefined) return step;
  // Several things go back together: the board stays up until it is empty or left.
  const left = boardLines(step.state.session.story, order).length;
  const cursor = Math.min(screen.cursor, left - 1);
  return left === 0 ? step : { ...step, state: { ...step.state, screen: { ...screen, cursor } } };
}

function updateClose(state: State, screen: At<'close'>, press: KeyPress): Transition {
  const story = state.session?.story;
  if (press.command === 'read-on' || press.command === 'read-back')
    return turnPage(state, screen, press);
  if (story?.closed !== undefined && press.command === 'confirm')
    return afterAction(takeAction(state, { do: 'reopen' }));
  return updateClaims(
    state,
    screen,
    press,
    (story === undefined ? [] : endingsOf(story)).map(({ as }) => ({ do: 'close', as })),
  );
}
