import type { Action } from '../../core/session/action.ts';
import type { Preparation } from '../../core/session/preparation.ts';
import { inform, show, transition, type Transition } from '../effect.ts';
import { openLeg } from '../pages/start.ts';
import type { KeyPress } from '../keys/command.ts';
import { walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { typing } from '../typing/typing.ts';
import { afterAction, chooseCheck } from './answer.ts';
import { whatWasDone, whatWasFound } from './described.ts';
import type { BoardLine } from './board.ts';
import { cautionKey } from './caution-words.ts';
import type { DueOnScreen } from './question.ts';

/** On to the next page once this one was seen, or back to the one before. */
export function turnPage(
  state: State,
  screen: At<'walk'> | At<'close'>,
  { command }: KeyPress,
): Transition {
  const { page = 0 } = screen;
  const { drawn, question } = state;
  const more = drawn?.kind === 'page' && drawn.question === question && !drawn.whole;
  if (command === 'read-on')
    return more ? show(state, { ...screen, page: page + 1 }) : transition(state);
  return page === 0 ? transition(state) : show(state, { ...screen, page: page - 1 });
}

/** What the page claims is so: the vehicle is set, it is this cause, it is repaired. */
export function confirm(state: State, due: DueOnScreen): Transition {
  const { asked, blocker } = due;
  if (blocker.kind === 'safeguard') return chooseCheck(state, due.story, blocker.holds[0].check);
  if (blocker.kind === 'state' && asked !== undefined)
    return afterAction(takeAction(state, { do: 'begin', check: asked.id, brought: true }));
  if (blocker.kind === 'before-proof') return putBack(state, blocker.lines);
  if (blocker.kind === 'prepare') return setUp(state, blocker.preparations);
  if (due.story.due.kind === 'leg') return openLeg(state, due.story.due);
  const action = causeAction(due, cautionsRead(state));
  if (action === undefined) return transition(state);
  const acted = takeAction(state, action);
  if (acted.outcome.kind === 'refused') return acted;
  return transition(asksMore(acted.state, action), ...acted.effects);
}

/** Once it is recorded it may be said what exactly was found, or done; what is left empty is not noted. */
const asksMore = (state: State, { do: did }: Action): State => ({
  ...state,
  screen: did === 'condemn' ? whatWasFound() : did === 'repair' ? whatWasDone(state) : walk,
});

/** Looked at, the part in the open, and it was not that: the walk goes on to something else. */
export const deny = (state: State, { cause }: DueOnScreen): Transition =>
  cause === undefined
    ? transition(state)
    : afterAction(
        takeAction(state, {
          do: 'not-this',
          cause: cause.id,
          acknowledged: cautionsRead(state),
        }),
      );

/** The line marked before a proof is back as it was. */
function putBack(state: State, lines: readonly BoardLine[]): Transition {
  const { screen } = state;
  const cursor = screen.kind === 'walk' && screen.input.kind === 'ready' ? screen.input.cursor : -1;
  const line = lines[cursor];
  if (line === undefined) return inform(state, 'Mark what is back by its number first.');
  return line.first === undefined
    ? afterAction(takeAction(state, line.mend))
    : inform(state, `Not closed. ${line.first}: a has the board with that line.`);
}

/** Everything before the step is set so, each thing an event of its own; a refusal ends it there. */
function setUp(state: State, [first, ...rest]: readonly Preparation[]): Transition {
  if (first === undefined) return transition(state);
  const acted = takeAction(state, prepared(first));
  if (acted.outcome.kind === 'refused' || rest.length === 0) return afterAction(acted);
  const later = setUp(acted.state, rest);
  return transition(later.state, ...acted.effects, ...later.effects);
}

/** On to the next page of cautions; after the last, what the page stands before. */
export function readCaution(
  state: State,
  screen: At<'walk'>,
  { token }: KeyPress,
  { asked, blocker }: DueOnScreen,
): Transition {
  const { seen: before = [] } = screen;
  const key = cautionKey(before.length);
  if (token !== key)
    return inform(
      state,
      `This is page ${before.length + 1} of the cautions: ${key} says it was read.`,
    );
  const now = state.drawn?.kind === 'page' ? state.drawn.cautions : [];
  const seen = [...before, now];
  const read = seen.flat();
  const left = blocker.kind === 'caution' && blocker.cautions.some((id) => !read.includes(id));
  if (!left && screen.past === true) return show(state, askedWhy({ ...screen, seen }));
  return asked === undefined || left
    ? show(state, { ...screen, seen, page: 0 })
    : afterAction(takeAction(state, { do: 'begin', check: asked.id, acknowledged: [...read] }));
}

/** Cautions that were read on the pages of this step. */
export const cautionsRead = ({ screen }: Pick<State, 'screen'>): string[] =>
  screen.kind === 'walk' ? (screen.seen ?? []).flat() : [];

const prepared = (preparation: Preparation): Action =>
  preparation.kind === 'standing'
    ? { do: 'standing', ...preparation.set }
    : { do: 'access', [preparation.kind]: preparation.access };

/** On to why a safeguard is gone past: all its cautions were read. */
export const askedWhy = (screen: At<'walk'>): At<'walk'> => ({
  ...screen,
  past: true,
  input: { kind: 'text', purpose: 'despite', typed: typing() },
});

/** What is claimed where no check is asked. */
function causeAction({ story: { due }, cause }: DueOnScreen, acknowledged: string[]) {
  if (cause === undefined) return undefined;
  return due.kind === 'named'
    ? ({ do: 'condemn', cause: cause.id, acknowledged } as const)
    : ({ do: 'repair', cause: cause.id } as const);
}
