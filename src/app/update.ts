import { never } from '../core/problem.ts';
import { clockTime } from '../core/session/clock.ts';
import type { Stamp } from '../core/session/kinds/shapes.ts';
import { inform, object, show, transition, type Effect, type Transition } from './effect.ts';
import type { Command, KeyPress, Mode } from './keys/command.ts';
import { isField } from './keys/field.ts';
import { commandFor } from './keys/keymap.ts';
import {
  claims,
  isHasty,
  isSpent,
  mayBeWord,
  runAfter,
  struck,
  wasSeen,
  writes,
} from './keys/run.ts';
import type { Token } from './keys/tokens.ts';
import { switchLead } from './leading-step.ts';
import { accountWritten } from './account-written.ts';
import type { Message } from './message.ts';
import { opened, replayOpened } from './opened.ts';
import { keyLines, sessionsTold } from './pages/reading.ts';
import { isPhoneLeft, photosTold } from './pages/photo/phone.ts';
import { playedOn } from './pages/replay.ts';
import { folderChosen } from './pages/settings.ts';
import { chooseTree } from './pages/start.ts';
import { bindings, pages } from './pages/table.ts';
import { vehiclesTold } from './pages/vehicles.ts';
import type { At, Kind } from './screen.ts';
import type { Drawn, OpenSession, State } from './state.ts';
import { timed } from './timed.ts';
import { takeAction } from './take-action.ts';
import { fieldPress, notAsked, paste } from './typing/field-press.ts';
import { together } from './typing/together.ts';
import { dueOn, type Question } from './walk/question.ts';

/**
 * The whole program: what happened makes a new state and a list of things to do. Pure; `now` is
 * when it happened. Keys typed ahead come one by one and each meets the state the last one made.
 */
export function update(before: State, message: Message, now: Stamp): Transition {
  const { state, effects } = timed(before, message, take({ ...before, now }, message));
  const left: readonly Effect[] = isPhoneLeft(before.screen, state.screen)
    ? [{ kind: 'stop-phone' }]
    : [];
  return { state: withQuestion(before, state), effects: [...effects, ...left] };
}

/** The state with what it asks, worked out anew where that may be another question. */
function withQuestion(before: State, state: State): State {
  const { screen, session, library } = state;
  const same =
    screen === before.screen &&
    session?.story === before.session?.story &&
    state.asked === before.asked &&
    library === before.library &&
    state.vehicles === before.vehicles &&
    state.past === before.past;
  if (same) return state;
  const due = dueOn(screen, session);
  return { ...state, question: { due, mode: modeOn(screen, state, due) } };
}

const modeOn = <K extends Kind>(screen: At<K>, state: State, due: Question['due']): Mode =>
  state.asked === undefined ? pages[screen.kind].mode(screen, state, due) : 'asked';

function take(state: State, message: Message): Transition {
  switch (message.kind) {
    case 'key':
      return press(state, message.token);
    case 'line-begun':
      return transition({ ...state, run: undefined });
    case 'drawn':
      return drawnAnew(state, message.drawn);
    case 'struck-together':
      return together(state, message.tokens, (one, text) => paste(one, text, route));
    case 'pasted':
      return paste(state, message.text, route);
    case 'acted':
      return takeAction(state, message.action);
    case 'tree-chosen':
      return chooseTree(state, message.tree);
    case 'session-chosen':
      return pickUp(state, message.path);
    case 'library-loaded':
      return transition({ ...state, library: message.library });
    case 'vehicles-loaded':
    case 'looked-back':
    case 'unsafe-found':
      return vehiclesTold(state, message);
    case 'sessions-listed':
    case 'jobs-read':
      return sessionsTold(state, message);
    case 'session-opened':
      return opened(state, message);
    case 'replay-opened':
      return replayOpened(state, message);
    case 'played-on':
      return playedOn(state, message.at);
    case 'session-refused':
    case 'failed':
      return object(state, message.problem);
    case 'kept':
    case 'not-kept':
      return transition(withSession(state, onDisk(message, state.now)));
    case 'photo-kept':
    case 'phone-ready':
    case 'photo-arrived':
    case 'phone-refused':
      return photosTold(state, message);
    case 'account-written':
      return inform(state, accountWritten(message));
    case 'folder-chosen':
      return folderChosen(state, message.path);
    case 'settings-saved':
      // On the walk it was said already who leads now.
      return state.screen.kind === 'settings' ? inform(state, 'Settings kept.') : transition(state);
    case 'advised':
    case 'not-advised':
      return thought(state, message);
    case 'ticked':
      return transition(state);
    default:
      return never(message);
  }
}

const pickUp = (state: State, path: string): Transition =>
  transition(state, { kind: 'load-library' }, { kind: 'open-session', path });

/** What the disk said of the last events. */
const onDisk = (
  message: Extract<Message, { kind: 'kept' | 'not-kept' }>,
  now: Stamp,
): Partial<OpenSession> =>
  message.kind === 'kept'
    ? { kept: message.n, keptAt: clockTime(now.at), trouble: undefined }
    : { trouble: message.problem };

/** In a window of another size the pages are others: they are read from the first one on. */
function drawnAnew(before: State, drawn: Drawn): Transition {
  const same =
    before.drawn?.kind === 'page' && drawn.kind === 'page' && before.drawn.size === drawn.size;
  const state = { ...before, drawn };
  const { screen } = state;
  return same || (screen.kind !== 'walk' && screen.kind !== 'close') || (screen.page ?? 0) === 0
    ? transition(state)
    : show(state, { ...screen, page: 0 });
}

/** What was thought out, where nothing has been recorded meanwhile. */
function thought(
  state: State,
  message: Extract<Message, { kind: 'advised' | 'not-advised' }>,
): Transition {
  const change =
    message.kind === 'advised' ? { advice: message.advice } : { unadvised: message.why };
  return transition(
    state.session?.events.length === message.events ? withSession(state, change) : state,
  );
}

const withSession = (state: State, change: Partial<OpenSession>): State =>
  state.session === undefined ? state : { ...state, session: { ...state.session, ...change } };

function press(before: State, token: Token): Transition {
  // Any key makes a disk that refused something try again.
  const retry = before.session?.trouble === undefined ? [] : [{ kind: 'retry' as const }];
  const command = commandFor(bindings, before.question.mode, token);
  if (isHasty(before, token))
    return transition(inform(struck(before, token), hasty).state, ...retry);
  if (command === undefined && before.asked !== undefined)
    return press(withQuestion(before, notAsked(before)), token);
  if (command === undefined) return transition(struck(before, token), ...retry);
  const { state, effects } = taken(before, { command, token });
  return transition(state, ...retry, ...effects);
}

/**
 * A key as it counts. A window too small to show anything takes nothing; a page that claims something
 * takes no key that came before it was seen whole; one run of a key writes and claims once.
 */
function taken(before: State, press: KeyPress): Transition {
  const { token, command } = press;
  if (before.drawn?.kind === 'too-small' && command !== 'quit' && command !== 'redraw')
    return transition(before);
  const claim = claims(before, press);
  if (claim && !wasSeen(before)) return inform(struck(before, token), notSeen(before));
  const after = fieldPress(withoutNotice(before, press), press, route);
  if (isSpent(before, token) && (claim || writes(after)))
    return inform(struck(before, token), spent);
  if (mayBeWord(before, token) && tells(before, press, after))
    return inform(struck(before, token), soon);
  return transition({ ...after.state, run: runAfter(before, press, after) }, ...after.effects);
}

/** A notice goes with the next key; one too long for its row is read on the page of what is said in full. */
const withoutNotice = (state: State, { command }: KeyPress): State =>
  command === 'full' ? state : { ...state, notice: undefined };

/** What the second letter of a word must not do: say or write something, or take the rest as text. */
function tells(before: State, press: KeyPress, after: Transition): boolean {
  const { mode } = withQuestion(before, after.state).question;
  // No word begins with the two of "unsure, yes".
  const meant = before.asked?.command === 'unsure';
  return isField(mode) || (!meant && (claims(before, press) || writes(after)));
}

const hasty = 'Letters in a row do nothing here: no field is open.';
const soon = 'Not taken: so soon it may be a word. If meant, strike it again.';
const notSeen = ({ drawn, question }: State): string =>
  drawn?.kind === 'page' && drawn.question === question
    ? 'Not taken: there is more to read first (space).'
    : 'Not taken: that key came before its page was drawn.';
const spent = 'Not taken: the same key so soon. Read on, or another key first.';

/** What counts on every screen, then what opens another one; the rest is for the screen itself. */
function route(state: State, press: KeyPress): Transition {
  const { command } = press;
  if (command === 'quit') return quit(state);
  if (command === 'redraw') return transition(state, { kind: 'redraw' });
  if (command === 'switch-lead') return switchLead(state);
  if (command === 'keys') return openKeys(state);
  const open = isKind(command) ? pages[command].open : undefined;
  return open === undefined ? updateScreen(state, state.screen, press) : open(state);
}

const isKind = (command: Command): command is Kind => Object.hasOwn(pages, command);

const updateScreen = <K extends Kind>(state: State, screen: At<K>, press: KeyPress): Transition =>
  pages[screen.kind].update(state, screen, press);

/** The keys of the screen; a replay that plays waits behind them. */
function openKeys(state: State): Transition {
  const { screen } = state;
  const lines = keyLines(bindings, state.question.mode);
  const from = screen.kind === 'replay' ? { ...screen, playing: false } : screen;
  return show(state, { kind: 'keys', from, lines, cursor: 0 });
}

/** Leaves the program; an open session is put down first. */
function quit(state: State): Transition {
  const open =
    state.screen.kind !== 'replay' &&
    state.session !== undefined &&
    state.session.story.closed === undefined;
  const put = open ? takeAction(state, { do: 'pause' }) : transition(state);
  return transition({ ...put.state, leaving: true }, ...put.effects, { kind: 'leave' });
}
