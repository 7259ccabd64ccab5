import type { Stamp } from '../core/session/event.ts';
import { clockTime } from '../core/session/clock.ts';
import { never } from '../core/problem.ts';
import { takeAction, extend, problemNotice } from './take-action.ts';
import { currentMode } from './walk/mode.ts';
import { pageLines, type Page } from './pages/page-lines.ts';
import { type Transition, transition } from './effect.ts';
import { commandFor } from './keys/keymap.ts';
import { ledStory } from './leading-step.ts';
import type { Message } from './message.ts';
import type { KeyPress } from './keys/press.ts';
import { walk, type Screen } from './screen.ts';
import type { OpenSession, State } from './state.ts';
import type { Token } from './keys/tokens.ts';
import { sessionAt, makeReplay } from './pages/replay-frames.ts';
import { playedOn, updateReplay } from './pages/replay.ts';
import { toFigures, updateFigure, updateFigures } from './pages/figures.ts';
import { updateHome, updateSessions } from './pages/home.ts';
import { updateContradiction } from './walk/contradiction.ts';
import { updateApart, updateClose, updateOthers, updateSuspects } from './walk/listed.ts';
import { updateSettings } from './pages/settings.ts';
import { chooseTree, updateStart } from './pages/start.ts';
import { updateWalk } from './walk/update.ts';

/**
 * The whole program: what happened makes a new state and a list of things to do. Pure; `now` is
 * when it happened. Keys typed ahead come one by one and each meets the state the last one made.
 */
export function update(before: State, message: Message, now: Stamp): Transition {
  const state = { ...before, now };
  switch (message.kind) {
    case 'key':
      return press(state, message.token);
    case 'pasted':
      return paste(state, message.text);
    case 'acted':
      return takeAction(state, message.action);
    case 'tree-chosen':
      return chooseTree(state, message.tree);
    case 'session-chosen':
      return transition(
        state,
        { kind: 'load-library' },
        { kind: 'open-session', path: message.path },
      );
    case 'library-loaded':
      return transition({ ...state, library: message.library });
    case 'sessions-listed':
      return transition({ ...state, sessions: message.sessions });
    case 'session-opened':
      return opened(state, message);
    case 'replay-opened':
      return replayOpened(state, message);
    case 'played-on':
      return playedOn(state, message.at);
    case 'session-refused':
    case 'failed':
      return transition({ ...state, notice: problemNotice(message.problem) });
    case 'kept':
      return transition(
        withSession(state, { kept: message.n, keptAt: clockTime(now.at), trouble: undefined }),
      );
    case 'not-kept':
      return transition(withSession(state, { trouble: message.problem }));
    case 'account-written':
      return transition({
        ...state,
        notice: { kind: 'info', text: `Account written: ${message.path}` },
      });
    case 'settings-saved':
      return transition({ ...state, notice: { kind: 'info', text: 'Settings kept.' } });
    case 'advised':
      return transition(
        state.session?.events.length === message.events
          ? withSession(state, { advice: message.advice })
          : state,
      );
    case 'ticked':
      return transition(state);
    default:
      return never(message);
  }
}

const withSession = (state: State, change: Partial<OpenSession>): State =>
  state.session === undefined ? state : { ...state, session: { ...state.session, ...change } };

function opened(
  state: State,
  { path, header, events, torn }: Extract<Message, { kind: 'session-opened' }>,
): Transition {
  const read: OpenSession = {
    path,
    header,
    events,
    ...ledStory(header, events, state.settings.lead),
    kept: events.at(-1)?.n ?? 0,
    keptAt: clockTime(state.now.at),
    trouble: undefined,
  };
  const fresh = events.length === 0;
  const { session, events: added } = fresh
    ? { session: read, events: [] }
    : extend(read, [{ kind: 'resumed', ...(torn > 0 && { torn }) }], state);
  const text =
    torn > 0
      ? `Picked up. The last ${torn} bytes were torn by a power loss; they are kept in the file and passed over.`
      : 'Picked up where it was put down.';
  return transition(
    { ...state, session, screen: walk, notice: fresh ? undefined : { kind: 'info', text } },
    ...added.map((event) => ({ kind: 'append' as const, event })),
    { kind: 'advise' },
  );
}

function replayOpened(
  state: State,
  { path, header, events }: Extract<Message, { kind: 'replay-opened' }>,
): Transition {
  const replay = makeReplay(path, header, events);
  const screen: Screen = { kind: 'replay', replay, at: 0, playing: false, speed: 1 };
  return transition({ ...state, session: sessionAt(replay, 0), screen });
}

function press(before: State, token: Token): Transition {
  // Any key makes a disk that refused something try again.
  const retry = before.session?.trouble === undefined ? [] : [{ kind: 'retry' as const }];
  const mode = currentMode(before);
  const command = commandFor(mode, token);
  if (command === undefined) return transition(before, ...retry);
  const { state, effects } = route({ ...before, notice: undefined }, { command, token, mode });
  return transition(state, ...retry, ...effects);
}

function route(state: State, pressed: KeyPress): Transition {
  if (pressed.command === 'quit') return quit(state);
  if (pressed.command === 'redraw') return transition(state, { kind: 'redraw' });
  const { screen } = state;
  if (pressed.command === 'keys' && screen.kind !== 'keys')
    return transition({ ...state, screen: { kind: 'keys', from: screen, cursor: 0 } });
  if (pressed.command === 'figures') return toFigures(state);
  if (pressed.command === 'switch-lead') return switchLead(state);
  switch (screen.kind) {
    case 'home':
      return updateHome(state, screen, pressed);
    case 'sessions':
      return updateSessions(state, screen, pressed);
    case 'start':
      return updateStart(state, screen, pressed);
    case 'walk':
      return updateWalk(state, screen, pressed);
    case 'others':
      return updateOthers(state, screen, pressed);
    case 'suspects':
      return updateSuspects(state, screen, pressed);
    case 'apart':
      return updateApart(state, screen, pressed);
    case 'close':
      return updateClose(state, screen, pressed);
    case 'contradiction':
      return updateContradiction(state, screen, pressed);
    case 'replay':
      return updateReplay(state, screen, pressed);
    case 'settings':
      return updateSettings(state, screen, pressed);
    case 'figures':
      return updateFigures(state, screen, pressed);
    case 'figure':
      return updateFigure(state, screen, pressed);
    case 'keys':
    case 'full':
    case 'why':
    case 'ladder':
      return turnPage(state, screen, pressed);
    default:
      return never(screen);
  }
}

/** Leads by the other way from here on: the tree's own, or the quicker one. */
function switchLead(state: State): Transition {
  const lead = state.settings.lead === 'tree' ? 'quicker' : 'tree';
  const settings = { ...state.settings, lead } as const;
  const { session } = state;
  const led = session && { ...session, ...ledStory(session.header, session.events, lead) };
  const text = lead === 'tree' ? "The tree's own way leads." : 'The quicker way leads.';
  return transition(
    { ...state, settings, session: led, screen: walk, notice: { kind: 'info', text } },
    { kind: 'advise' },
    { kind: 'save-settings', settings },
  );
}

/** Reads on by a line, never past the last one; or back to where the page was opened from. */
function turnPage(state: State, page: Page, { command }: KeyPress): Transition {
  if (command === 'go-back')
    return transition({ ...state, screen: page.kind === 'keys' ? page.from : walk });
  const by = command === 'down' ? 1 : command === 'up' ? -1 : 0;
  const last = Math.max(0, pageLines(state, page).length - 1);
  const cursor = Math.min(last, Math.max(0, page.cursor + by));
  return transition({ ...state, screen: { ...page, cursor } });
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

/** A paste is text for a field; anywhere else it is refused, so that pasted lines answer nothing. */
function paste(state: State, text: string): Transition {
  const mode = currentMode(state);
  if (mode !== 'text' && mode !== 'form-text' && mode !== 'reading')
    return transition({
      ...state,
      notice: { kind: 'info', text: 'There is no text field here to paste into.' },
    });
  const line = text.replace(/\s+/g, ' ').trim();
  return Array.from(line).reduce<Transition>((step, token) => {
    const next = route(step.state, { command: 'type', token, mode });
    return transition(next.state, ...step.effects, ...next.effects);
  }, transition(state));
}
