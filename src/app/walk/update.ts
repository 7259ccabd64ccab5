import type { Action } from '../../core/session/action.ts';
import { unlisted } from '../../core/reason/belief/model.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import { act } from '../act.ts';
import { answering, done } from './answer.ts';
import { askedCheck, before, facing, namedCause, type Asking } from './question.ts';
import { moved, picked } from '../keys/cursor.ts';
import { doing, still, type Step } from '../effect.ts';
import type { Press } from '../keys/press.ts';
import { home, walk, type Screen, type TextPurpose } from '../screen.ts';
import type { Live, State } from '../state.ts';
import { updateReading, updateText } from './field.ts';

type Walk = Extract<Screen, { kind: 'walk' }>;

export function updateWalk(state: State, screen: Walk, press: Press): Step<State> {
  if (state.live === undefined) return still({ ...state, screen: home });
  const live = { ...state.live, story: facing(state.live.story, screen) };
  if (screen.input.kind === 'text') return updateText(state, screen, press);
  if (screen.input.kind !== 'ready')
    return updateReading(state, screen, {
      press,
      asking: askedCheck(live.story, screen.correcting),
    });
  return press.command === 'choose' || press.command === 'pick-line'
    ? choose(state, screen, press, live)
    : command(state, screen, press, live);
}

const text = (state: State, purpose: TextPurpose, correcting?: number): Step<State> =>
  still({
    ...state,
    screen: {
      kind: 'walk',
      input: { kind: 'text', purpose, typed: '' },
      ...(correcting !== undefined && { correcting }),
    },
  });

/** Altitude and temperature, one after the other. */
const both = (state: State): Step<State> =>
  still({
    ...state,
    screen: {
      kind: 'walk',
      input: { kind: 'text', purpose: 'altitude', typed: '', after: 'temperature' },
    },
  });

function command(state: State, screen: Walk, press: Press, live: Live): Step<State> {
  const asking = askedCheck(live.story, screen.correcting);
  switch (press.command) {
    case 'up':
    case 'down':
      return move(state, screen, press, asking);
    case 'type':
      return still({
        ...state,
        screen: { ...screen, input: { kind: 'reading', typed: press.token } },
      });
    case 'unsure':
      return unsure(state, live.story, asking);
    case 'skip':
      return asking?.purpose === 'check' ? text(state, 'skip') : still(state);
    case 'note':
      return text(state, 'note', screen.correcting);
    case 'part-off':
      return text(state, 'part-off', screen.correcting);
    case 'to-do':
      return text(state, 'follow-up', screen.correcting);
    case 'conditions':
      return both(state);
    case 'mend-last':
      return screen.naming === undefined
        ? mendLast(state, live.story)
        : still({ ...state, screen: walk });
    default:
      return toScreen(state, screen, press, live);
  }
}

function toScreen(state: State, screen: Walk, press: Press, live: Live): Step<State> {
  switch (press.command) {
    case 'others':
    case 'suspects':
    case 'apart':
    case 'close':
    case 'full':
    case 'why':
    case 'ladder':
      return still({ ...state, screen: { kind: press.command, cursor: 0 } });
    case 'quicker':
      return takeQuicker(state, live);
    case 'account':
      return doing(state, { kind: 'write-account', path: live.path });
    case 'go-back':
      return screen.correcting === undefined && screen.naming === undefined
        ? putDown(state)
        : still({ ...state, screen: walk });
    default:
      return still(state);
  }
}

/** Takes the step that the advice puts first. */
function takeQuicker(state: State, { advice }: Live): Step<State> {
  const first = advice?.next[0];
  if (first === undefined || first.id === unlisted)
    return still({
      ...state,
      notice: { kind: 'told', text: 'There is no quicker step to name now.' },
    });
  return first.do === 'check'
    ? done(act(state, { do: 'begin', check: first.id }))
    : still({ ...state, screen: { kind: 'suspects', cursor: 0 } });
}

/** Puts the session down: the pause is kept, the file is shut, Home offers to pick it up. */
function putDown(state: State): Step<State> {
  const closed = state.live?.story.closed !== undefined;
  const paused = closed ? still(state) : act(state, { do: 'pause' });
  return doing(
    { ...paused.state, screen: home, live: undefined },
    ...paused.effects,
    { kind: 'shut-session' },
    { kind: 'list-sessions' },
  );
}

function move(state: State, screen: Walk, press: Press, asking: Asking | undefined): Step<State> {
  const cursor = screen.input.kind === 'ready' ? screen.input.cursor : -1;
  const lines = asking?.check.results.length ?? 0;
  const input = { kind: 'ready' as const, cursor: moved(cursor, press.command, lines) };
  return still({ ...state, screen: { ...screen, input } });
}

function unsure(state: State, story: Story, asking: Asking | undefined): Step<State> {
  if (asking === undefined) return still(state);
  const first = before(story, asking);
  if (first.kind === 'condition')
    return done(act(state, { do: 'conditions', notKnown: [first.condition] }));
  if (asking.purpose === 'check') return done(act(state, { do: 'unsure', check: asking.id }));
  const told =
    asking.purpose === 'proof'
      ? 'A proof shows good or it does not: test it until you are sure.'
      : 'Pick what it should have been, or Esc to leave it as it was.';
  return still({ ...state, notice: { kind: 'told', text: told } });
}

/** Opens the last finding to be answered anew. */
function mendLast(state: State, story: Story): Step<State> {
  const last = story.findings.at(-1);
  if (last === undefined)
    return still({
      ...state,
      notice: { kind: 'told', text: 'There is no finding to go back to.' },
    });
  const results = currentLeg(story).tree.checks[last.check]?.results ?? [];
  const cursor = Math.max(
    0,
    results.findIndex(({ id }) => id === last.result),
  );
  return still({
    ...state,
    screen: { kind: 'walk', input: { kind: 'ready', cursor }, correcting: last.n },
  });
}

function choose(state: State, screen: Walk, press: Press, { story }: Live): Step<State> {
  const asking = askedCheck(story, screen.correcting);
  const first = before(story, asking, screen.seen);
  if (first.kind === 'caution')
    return asking === undefined || first.cautions.length > 1
      ? still({ ...state, screen: { ...screen, seen: (screen.seen ?? 0) + 1 } })
      : done(act(state, { do: 'begin', check: asking.id, acknowledged: true }));
  if (first.kind === 'prepare') return done(act(state, prepared(first.preparation)));
  if (first.kind === 'condition') return text(state, first.condition, screen.correcting);
  if (asking !== undefined) return answer(state, screen, press, asking);
  return chooseCause(state, story);
}

const prepared = (
  preparation: Extract<ReturnType<typeof before>, { kind: 'prepare' }>['preparation'],
): Action =>
  preparation.kind === 'open'
    ? { do: 'access', open: preparation.access }
    : { do: 'standing', ...preparation.set };

function chooseCause(state: State, story: Story): Step<State> {
  const named = namedCause(story);
  if (story.due.kind === 'leg')
    return done(act(state, { do: 'leg', tree: story.due.tree, reason: story.due.reason }));
  if (named === undefined) return still(state);
  return story.due.kind === 'named'
    ? done(act(state, { do: 'condemn', cause: named.id, acknowledged: true }))
    : done(act(state, { do: 'repair', cause: named.id, acknowledged: true }));
}

/** Keeps the result picked by its number or under the cursor. */
function answer(state: State, screen: Walk, press: Press, asking: Asking): Step<State> {
  const cursor = screen.input.kind === 'ready' ? screen.input.cursor : -1;
  const index = picked(cursor, press, asking.check.results.length);
  const result = index === undefined ? undefined : asking.check.results[index];
  if (result !== undefined) return done(act(state, answering(asking, { result: result.id })));
  const way = asking.check.reading === undefined ? 'its number' : 'typing the reading';
  return still({
    ...state,
    notice: { kind: 'told', text: `Answer by ${way}, or mark a line with the arrows first.` },
  });
}
