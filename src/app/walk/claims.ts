import type { Action } from '../../core/session/action.ts';
import type { Preparation } from '../../core/session/preparation.ts';
import { inform, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import type { At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { typing } from '../typing/typing.ts';
import { afterAction, chooseCheck } from './answer.ts';
import { cautionKey } from './caution-words.ts';
import type { DueOnScreen } from './question.ts';

/** On to the next page once this one was seen, or back to the one before. */
export function turnPage(state: State, screen: At<'walk'>, { command }: KeyPress): Transition {
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
  if (blocker.kind === 'prepare') return setUp(state, blocker.preparations);
  const action = causeAction(due);
  return action === undefined ? transition(state) : afterAction(takeAction(state, action));
}

/** Everything before the step is set so, each thing an event of its own; a refusal ends it there. */
function setUp(state: State, [first, ...rest]: readonly Preparation[]): Transition {
  if (first === undefined) return transition(state);
  const acted = takeAction(state, prepared(first));
  if (acted.outcome.kind === 'refused' || rest.length === 0) return afterAction(acted);
  const later = setUp(acted.state, rest);
  return transition(later.state, ...acted.effects, ...later.effects);
}

/** On to the next caution; after the last, what the page stands before. */
export function readCaution(
  state: State,
  screen: At<'walk'>,
  { token }: KeyPress,
  { asked, blocker }: DueOnScreen,
): Transition {
  const { seen = 0 } = screen;
  const left = blocker.kind === 'caution' ? blocker.cautions.length : 0;
  const key = cautionKey(seen);
  if (token !== key) return inform(state, `This is caution ${seen + 1}: ${key} says it was read.`);
  if (left === 1 && screen.past === true) return show(state, askedWhy(screen));
  return asked === undefined || left > 1
    ? show(state, { ...screen, seen: seen + 1, page: 0 })
    : afterAction(takeAction(state, { do: 'begin', check: asked.id, acknowledged: true }));
}

const prepared = (preparation: Preparation): Action =>
  preparation.kind === 'open'
    ? { do: 'access', open: preparation.access }
    : { do: 'standing', ...preparation.set };

/** On to why a safeguard is gone past: that caution was the last. */
export const askedWhy = (screen: At<'walk'>): At<'walk'> => ({
  ...screen,
  past: true,
  seen: (screen.seen ?? 0) + 1,
  input: { kind: 'text', purpose: 'despite', typed: typing() },
});

/** What is claimed where no check is asked. */
function causeAction({ story: { due }, cause }: DueOnScreen): Action | undefined {
  if (due.kind === 'leg') return { do: 'leg', tree: due.tree, reason: due.reason };
  return (
    cause && {
      do: due.kind === 'named' ? 'condemn' : 'repair',
      cause: cause.id,
      acknowledged: true,
    }
  );
}
