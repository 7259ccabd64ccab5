import { unlisted } from '../../core/tree/model.ts';
import { eventWords } from '../../core/account/clauses/clauses.ts';
import { lastWritten } from '../../core/session/rules/take-back.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import type { Check } from '../../core/tree/model.ts';
import { isOwn, ownResults } from '../../core/tree/own/bare.ts';
import { inform, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { marked, moved, picked } from '../keys/cursor.ts';
import { isSpent } from '../keys/run.ts';
import type { Page } from '../page.ts';
import { home, walk, type At, type TextPurpose } from '../screen.ts';
import type { OpenSession, State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { typing } from '../typing/typing.ts';
import { openComplaint } from '../pages/start.ts';
import { afterAction, answerAction, chooseCheck } from './answer.ts';
import { askedWhy, confirm, deny, readCaution, turnPage } from './claims.ts';
import { whatWasShown } from './described.ts';
import { makeCheck } from './answered.ts';
import { updateReading, updateText } from './field.ts';
import { walkMode, type AskedCheck, type DueOnScreen } from './question.ts';

export const walkPage: Page<'walk'> = {
  mode: (screen, _, due) => (due === undefined ? 'home' : walkMode(screen, due)),
  update: updateWalk,
};

function updateWalk(state: State, screen: At<'walk'>, press: KeyPress): Transition {
  const { session } = state;
  const { due } = state.question;
  if (session === undefined || due === undefined) return show(state, home);
  if (screen.input.kind === 'text') return updateText(state, screen, press);
  if (screen.input.kind !== 'ready') return updateReading(state, screen, press, due.asked);
  switch (press.command) {
    case 'read-on':
    case 'read-back':
      return turnPage(state, screen, press);
    case 'confirm':
      return confirm(state, due);
    case 'not-this':
      return deny(state, due);
    case 'choose':
    case 'pick-line':
      return choose(state, screen, press, due);
    case 'up':
    case 'down':
      return move(state, screen, press, due.asked);
    case 'type': {
      const input = { kind: 'reading' as const, typed: typing(press.token) };
      return show(state, { ...screen, input });
    }
    case 'make':
      return makeCheck(state, due);
    case 'hint':
      return afterAction(takeAction(state, { do: 'hint' }));
    case 'unsure':
      return unsure(state, due);
    case 'take-back':
      return isPicked(screen) ? show(state, walk) : takeBack(state, session.story);
    case 'quicker':
      return takeQuicker(state, session);
    case 'account':
      return transition(state, { kind: 'write-account', path: session.path });
    case 'go-back':
      return isPicked(screen) ? show(state, walk) : putDown(state, session);
    case 'complaint':
      return openComplaint(state);
    case 'go-past':
      return goPast(state, screen, due);
    default:
      return openField(state, screen, press, due);
  }
}

/** Whether the walk shows something else than what is due: going back leads there. */
const isPicked = ({ correcting, pickedCause, pickedCheck, past }: At<'walk'>): boolean =>
  [correcting, pickedCause, pickedCheck, past].some((one) => one !== undefined);

/** The cautions of a step that a safeguard holds back, each whole; then why it is taken all the same. */
function goPast(
  state: State,
  screen: At<'walk'>,
  { asked, cause, blocker }: DueOnScreen,
): Transition {
  if (blocker.kind === 'before-proof') return text(state, 'left-apart');
  const { cautions } = asked?.check ?? cause?.cause.repair ?? { cautions: [] };
  const read = (screen.seen ?? []).flat();
  return screen.past === true || cautions.every((id) => read.includes(id))
    ? show(state, askedWhy(screen))
    : show(state, { ...screen, past: true, seen: [] });
}

/** What is typed in words has a field of its own. */
function openField(
  state: State,
  { correcting }: At<'walk'>,
  { command }: KeyPress,
  { asked }: DueOnScreen,
): Transition {
  switch (command) {
    case 'skip':
      return asked?.purpose === 'check' ? text(state, 'skip') : transition(state);
    case 'note':
      return text(state, 'note', correcting);
    case 'road':
      return show(state, roadField(correcting));
    case 'to-do':
      return text(state, 'follow-up', correcting);
    default:
      return transition(state);
  }
}

const text = (state: State, purpose: TextPurpose, correcting?: number): Transition =>
  show(state, {
    kind: 'walk',
    input: { kind: 'text', purpose, typed: typing() },
    ...(correcting !== undefined && { correcting }),
  });

/** A line of the road test; the next one is asked at once, until one is left empty. */
const roadField = (correcting: number | undefined): At<'walk'> => ({
  kind: 'walk',
  input: { kind: 'text', purpose: 'road', typed: typing(), after: 'road' },
  ...(correcting !== undefined && { correcting }),
});

/** Takes the step that the advice puts first. */
function takeQuicker(state: State, { story, advice }: OpenSession): Transition {
  const first = advice?.next[0];
  if (first === undefined || first.id === unlisted)
    return inform(state, 'There is no quicker step to name now.');
  return first.do === 'check'
    ? chooseCheck(state, story, first.id)
    : show(state, { kind: 'suspects', cursor: 0 });
}

/** Puts the session down: the pause is kept, the file is shut, Home offers to pick it up. */
function putDown(state: State, { story }: OpenSession): Transition {
  const paused =
    story.closed === undefined ? takeAction(state, { do: 'pause' }) : transition(state);
  return transition(
    { ...paused.state, screen: home, session: undefined },
    ...paused.effects,
    { kind: 'shut-session' },
    { kind: 'list-sessions' },
  );
}

function move(
  state: State,
  screen: At<'walk'>,
  press: KeyPress,
  asked: AskedCheck | undefined,
): Transition {
  const lines = asked?.check.results.length ?? 0;
  const input = { kind: 'ready' as const, cursor: moved(cursorOf(screen), press.command, lines) };
  return show(state, { ...screen, input });
}

const cursorOf = ({ input }: At<'walk'>): number => (input.kind === 'ready' ? input.cursor : -1);

function unsure(state: State, { asked, blocker }: DueOnScreen): Transition {
  if (asked === undefined) return transition(state);
  if (blocker.kind === 'condition')
    return afterAction(takeAction(state, { do: 'conditions', notKnown: [blocker.condition] }));
  if (asked.purpose === 'check')
    return afterAction(takeAction(state, { do: 'unsure', check: asked.id }));
  return inform(
    state,
    asked.purpose === 'proof'
      ? 'A proof shows good or it does not: test it until you are sure.'
      : 'Pick what it should have been, or Esc to leave it as it was.',
  );
}

/** Takes back the last thing written, whatever it was, and says in one line what that was. */
function takeBack(state: State, story: Story): Transition {
  const last = lastWritten(story);
  const acted = afterAction(takeAction(state, { do: 'take-back' }));
  if (last === undefined) return acted;
  const { state: now } = inform(acted.state, `Taken back: ${eventWords(story, last.entry)}`);
  return transition(now, ...acted.effects);
}

function choose(state: State, screen: At<'walk'>, press: KeyPress, due: DueOnScreen): Transition {
  const { asked, blocker } = due;
  if (blocker.kind === 'caution') return readCaution(state, screen, press, due);
  if (blocker.kind === 'before-proof') {
    const line = marked(cursorOf(screen), press, blocker.lines.length);
    return line < 0
      ? transition(state)
      : show(state, { ...screen, input: { kind: 'ready', cursor: line }, page: 0 });
  }
  if (blocker.kind === 'condition') return text(state, blocker.condition, screen.correcting);
  return blocker.kind === 'nothing' && asked !== undefined
    ? answer(state, screen, press, asked)
    : transition(state);
}

/** Keeps the result picked by its number or under the cursor. */
function answer(state: State, screen: At<'walk'>, press: KeyPress, asked: AskedCheck): Transition {
  const result = picked(cursorOf(screen), press, asked.check.results);
  if (result !== undefined && press.command === 'pick-line' && isSpent(state, press.token))
    return inform(
      {
        ...state,
        screen: {
          ...screen,
          input: { kind: 'ready', cursor: asked.check.results.indexOf(result) },
        },
      },
      'The same key again only marks its line: Enter keeps it.',
    );
  if (result !== undefined)
    return thenWords(
      afterAction(takeAction(state, answerAction(asked, { result: result.id }))),
      asked,
      result,
    );
  const way = asked.check.reading === undefined ? 'its number' : 'typing the reading';
  return inform(state, `Answer by ${way}, or mark a line with the arrows first.`);
}

/** What exactly a check in own words showed is asked once it is answered, where its result has no words of its own. */
function thenWords(
  acted: Transition,
  { check, purpose }: AskedCheck,
  { id, label }: Check['results'][number],
): Transition {
  const { session, screen } = acted.state;
  const own = session !== undefined && isOwn(currentLeg(session.story).tree);
  const bare = id === ownResults.neither || label === id;
  return own && bare && check.told !== undefined && purpose === 'check' && screen === walk
    ? show(acted.state, whatWasShown, ...acted.effects)
    : acted;
}
