import type { Action } from '../../core/session/action.ts';
import { unlisted } from '../../core/reason/belief/model.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import { takeAction } from '../take-action.ts';
import { answerAction, afterAction } from './answer.ts';
import { askedCheck, blocker, withPickedCause, namedCause, type AskedCheck } from './question.ts';
import { moved, picked } from '../keys/cursor.ts';
import { type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/press.ts';
import { home, walk, type Screen, type TextPurpose } from '../screen.ts';
import type { OpenSession, State } from '../state.ts';
import { updateReading, updateText } from './field.ts';

type Walk = Extract<Screen, { kind: 'walk' }>;

export function updateWalk(state: State, screen: Walk, press: KeyPress): Transition {
  if (state.session === undefined) return transition({ ...state, screen: home });
  const session = { ...state.session, story: withPickedCause(state.session.story, screen) };
  if (screen.input.kind === 'text') return updateText(state, screen, press);
  if (screen.input.kind !== 'ready')
    return updateReading(state, screen, {
      press,
      asked: askedCheck(session.story, screen.correcting),
    });
  return press.command === 'choose' || press.command === 'pick-line'
    ? choose(state, screen, press, session)
    : command(state, screen, press, session);
}

const text = (state: State, purpose: TextPurpose, correcting?: number): Transition =>
  transition({
    ...state,
    screen: {
      kind: 'walk',
      input: { kind: 'text', purpose, typed: '' },
      ...(correcting !== undefined && { correcting }),
    },
  });

/** Altitude and temperature, one after the other. */
const both = (state: State): Transition =>
  transition({
    ...state,
    screen: {
      kind: 'walk',
      input: { kind: 'text', purpose: 'altitude', typed: '', after: 'temperature' },
    },
  });

function command(state: State, screen: Walk, press: KeyPress, session: OpenSession): Transition {
  const asked = askedCheck(session.story, screen.correcting);
  switch (press.command) {
    case 'up':
    case 'down':
      return move(state, screen, press, asked);
    case 'type':
      return transition({
        ...state,
        screen: { ...screen, input: { kind: 'reading', typed: press.token } },
      });
    case 'unsure':
      return unsure(state, session.story, asked);
    case 'skip':
      return asked?.purpose === 'check' ? text(state, 'skip') : transition(state);
    case 'note':
      return text(state, 'note', screen.correcting);
    case 'part-off':
      return text(state, 'part-off', screen.correcting);
    case 'to-do':
      return text(state, 'follow-up', screen.correcting);
    case 'conditions':
      return both(state);
    case 'mend-last':
      return screen.pickedCause === undefined
        ? mendLast(state, session.story)
        : transition({ ...state, screen: walk });
    default:
      return toScreen(state, screen, press, session);
  }
}

function toScreen(state: State, screen: Walk, press: KeyPress, session: OpenSession): Transition {
  switch (press.command) {
    case 'others':
    case 'suspects':
    case 'apart':
    case 'close':
    case 'full':
    case 'why':
    case 'ladder':
      return transition({ ...state, screen: { kind: press.command, cursor: 0 } });
    case 'quicker':
      return takeQuicker(state, session);
    case 'account':
      return transition(state, { kind: 'write-account', path: session.path });
    case 'go-back':
      return screen.correcting === undefined && screen.pickedCause === undefined
        ? putDown(state)
        : transition({ ...state, screen: walk });
    default:
      return transition(state);
  }
}

/** Takes the step that the advice puts first. */
function takeQuicker(state: State, { advice }: OpenSession): Transition {
  const first = advice?.next[0];
  if (first === undefined || first.id === unlisted)
    return transition({
      ...state,
      notice: { kind: 'info', text: 'There is no quicker step to name now.' },
    });
  return first.do === 'check'
    ? afterAction(takeAction(state, { do: 'begin', check: first.id }))
    : transition({ ...state, screen: { kind: 'suspects', cursor: 0 } });
}

/** Puts the session down: the pause is kept, the file is shut, Home offers to pick it up. */
function putDown(state: State): Transition {
  const closed = state.session?.story.closed !== undefined;
  const paused = closed ? transition(state) : takeAction(state, { do: 'pause' });
  return transition(
    { ...paused.state, screen: home, session: undefined },
    ...paused.effects,
    { kind: 'shut-session' },
    { kind: 'list-sessions' },
  );
}

function move(
  state: State,
  screen: Walk,
  press: KeyPress,
  asked: AskedCheck | undefined,
): Transition {
  const cursor = screen.input.kind === 'ready' ? screen.input.cursor : -1;
  const lines = asked?.check.results.length ?? 0;
  const input = { kind: 'ready' as const, cursor: moved(cursor, press.command, lines) };
  return transition({ ...state, screen: { ...screen, input } });
}

function unsure(state: State, story: Story, asked: AskedCheck | undefined): Transition {
  if (asked === undefined) return transition(state);
  const first = blocker(story, asked);
  if (first.kind === 'condition')
    return afterAction(takeAction(state, { do: 'conditions', notKnown: [first.condition] }));
  if (asked.purpose === 'check')
    return afterAction(takeAction(state, { do: 'unsure', check: asked.id }));
  const told =
    asked.purpose === 'proof'
      ? 'A proof shows good or it does not: test it until you are sure.'
      : 'Pick what it should have been, or Esc to leave it as it was.';
  return transition({ ...state, notice: { kind: 'info', text: told } });
}

/** Opens the last finding to be answered anew. */
function mendLast(state: State, story: Story): Transition {
  const last = story.findings.at(-1);
  if (last === undefined)
    return transition({
      ...state,
      notice: { kind: 'info', text: 'There is no finding to go back to.' },
    });
  const results = currentLeg(story).tree.checks[last.check]?.results ?? [];
  const cursor = Math.max(
    0,
    results.findIndex(({ id }) => id === last.result),
  );
  return transition({
    ...state,
    screen: { kind: 'walk', input: { kind: 'ready', cursor }, correcting: last.n },
  });
}

function choose(state: State, screen: Walk, press: KeyPress, { story }: OpenSession): Transition {
  const asked = askedCheck(story, screen.correcting);
  const first = blocker(story, asked, screen.seen);
  if (first.kind === 'caution')
    return asked === undefined || first.cautions.length > 1
      ? transition({ ...state, screen: { ...screen, seen: (screen.seen ?? 0) + 1 } })
      : afterAction(takeAction(state, { do: 'begin', check: asked.id, acknowledged: true }));
  if (first.kind === 'prepare') return afterAction(takeAction(state, prepared(first.preparation)));
  if (first.kind === 'condition') return text(state, first.condition, screen.correcting);
  if (asked !== undefined) return answer(state, screen, press, asked);
  return chooseCause(state, story);
}

const prepared = (
  preparation: Extract<ReturnType<typeof blocker>, { kind: 'prepare' }>['preparation'],
): Action =>
  preparation.kind === 'open'
    ? { do: 'access', open: preparation.access }
    : { do: 'standing', ...preparation.set };

function chooseCause(state: State, story: Story): Transition {
  const named = namedCause(story);
  if (story.due.kind === 'leg')
    return afterAction(
      takeAction(state, { do: 'leg', tree: story.due.tree, reason: story.due.reason }),
    );
  if (named === undefined) return transition(state);
  return story.due.kind === 'named'
    ? afterAction(takeAction(state, { do: 'condemn', cause: named.id, acknowledged: true }))
    : afterAction(takeAction(state, { do: 'repair', cause: named.id, acknowledged: true }));
}

/** Keeps the result picked by its number or under the cursor. */
function answer(state: State, screen: Walk, press: KeyPress, asked: AskedCheck): Transition {
  const cursor = screen.input.kind === 'ready' ? screen.input.cursor : -1;
  const index = picked(cursor, press, asked.check.results.length);
  const result = index === undefined ? undefined : asked.check.results[index];
  if (result !== undefined)
    return afterAction(takeAction(state, answerAction(asked, { result: result.id })));
  const way = asked.check.reading === undefined ? 'its number' : 'typing the reading';
  return transition({
    ...state,
    notice: { kind: 'info', text: `Answer by ${way}, or mark a line with the arrows first.` },
  });
}
