import type { Stamp } from '../core/session/event.ts';
import { clockTime } from '../core/session/clock.ts';
import { never } from '../core/problem.ts';
import { act, extend, problemNotice } from './act.ts';
import { currentMode } from './walk/mode.ts';
import { pageLines, type Page } from './pages/page-lines.ts';
import { doing, still, type Step } from './effect.ts';
import { commandFor } from './keys/keymap.ts';
import { leadStory } from './leading-step.ts';
import type { Message } from './message.ts';
import type { Press } from './keys/press.ts';
import { walk, type Screen } from './screen.ts';
import type { Live, State } from './state.ts';
import type { Token } from './keys/tokens.ts';
import { liveAt, makeReplay } from './pages/replay-frames.ts';
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
export function update(before: State, message: Message, now: Stamp): Step<State> {
  const state = { ...before, now };
  switch (message.kind) {
    case 'key':
      return press(state, message.token);
    case 'pasted':
      return paste(state, message.text);
    case 'acted':
      return act(state, message.action);
    case 'tree-chosen':
      return chooseTree(state, message.tree);
    case 'session-chosen':
      return doing(state, { kind: 'load-library' }, { kind: 'open-session', path: message.path });
    case 'library-loaded':
      return still({ ...state, library: message.library });
    case 'sessions-listed':
      return still({ ...state, sessions: message.sessions });
    case 'session-opened':
      return opened(state, message);
    case 'replay-opened':
      return replayOpened(state, message);
    case 'played-on':
      return playedOn(state, message.at);
    case 'session-refused':
    case 'failed':
      return still({ ...state, notice: problemNotice(message.problem) });
    case 'kept':
      return still(
        withLive(state, { kept: message.n, keptAt: clockTime(now.at), trouble: undefined }),
      );
    case 'not-kept':
      return still(withLive(state, { trouble: message.problem }));
    case 'account-written':
      return still({
        ...state,
        notice: { kind: 'told', text: `Account written: ${message.path}` },
      });
    case 'told':
      return still({ ...state, notice: { kind: 'told', text: message.text } });
    case 'advised':
      return still(
        state.live?.events.length === message.events
          ? withLive(state, { advice: message.advice })
          : state,
      );
    case 'ticked':
      return still(state);
    default:
      return never(message);
  }
}

const withLive = (state: State, change: Partial<Live>): State =>
  state.live === undefined ? state : { ...state, live: { ...state.live, ...change } };

function opened(
  state: State,
  { path, header, events, torn }: Extract<Message, { kind: 'session-opened' }>,
): Step<State> {
  const read: Live = {
    path,
    header,
    events,
    ...leadStory(header, events, state.settings.lead),
    kept: events.at(-1)?.n ?? 0,
    keptAt: clockTime(state.now.at),
    trouble: undefined,
  };
  const fresh = events.length === 0;
  const { live, events: added } = fresh
    ? { live: read, events: [] }
    : extend(read, [{ kind: 'resumed', ...(torn > 0 && { torn }) }], state);
  const text =
    torn > 0
      ? `Picked up. The last ${torn} bytes were torn by a power loss; they are kept in the file and passed over.`
      : 'Picked up where it was put down.';
  return doing(
    { ...state, live, screen: walk, notice: fresh ? undefined : { kind: 'told', text } },
    ...added.map((event) => ({ kind: 'append' as const, event })),
    { kind: 'advise' },
  );
}

function replayOpened(
  state: State,
  { path, header, events }: Extract<Message, { kind: 'replay-opened' }>,
): Step<State> {
  const replay = makeReplay(path, header, events);
  const screen: Screen = { kind: 'replay', replay, at: 0, playing: false, speed: 1 };
  return still({ ...state, live: liveAt(replay, 0), screen });
}

function press(before: State, token: Token): Step<State> {
  // Any key makes a disk that refused something try again.
  const retry = before.live?.trouble === undefined ? [] : [{ kind: 'retry' as const }];
  const mode = currentMode(before);
  const command = commandFor(mode, token);
  if (command === undefined) return doing(before, ...retry);
  const { state, effects } = route({ ...before, notice: undefined }, { command, token, mode });
  return doing(state, ...retry, ...effects);
}

function route(state: State, pressed: Press): Step<State> {
  if (pressed.command === 'quit') return quit(state);
  if (pressed.command === 'redraw') return doing(state, { kind: 'redraw' });
  const { screen } = state;
  if (pressed.command === 'keys' && screen.kind !== 'keys')
    return still({ ...state, screen: { kind: 'keys', from: screen, cursor: 0 } });
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
function switchLead(state: State): Step<State> {
  const lead = state.settings.lead === 'tree' ? 'quicker' : 'tree';
  const settings = { ...state.settings, lead } as const;
  const { live } = state;
  const led = live && { ...live, ...leadStory(live.header, live.events, lead) };
  const text = lead === 'tree' ? "The tree's own way leads." : 'The quicker way leads.';
  return doing(
    { ...state, settings, live: led, screen: walk, notice: { kind: 'told', text } },
    { kind: 'advise' },
    { kind: 'save-settings', settings },
  );
}

/** Reads on by a line, never past the last one; or back to where the page was opened from. */
function turnPage(state: State, page: Page, { command }: Press): Step<State> {
  if (command === 'go-back')
    return still({ ...state, screen: page.kind === 'keys' ? page.from : walk });
  const by = command === 'down' ? 1 : command === 'up' ? -1 : 0;
  const last = Math.max(0, pageLines(state, page).length - 1);
  const cursor = Math.min(last, Math.max(0, page.cursor + by));
  return still({ ...state, screen: { ...page, cursor } });
}

/** Leaves the program; an open session is put down first. */
function quit(state: State): Step<State> {
  const open =
    state.screen.kind !== 'replay' &&
    state.live !== undefined &&
    state.live.story.closed === undefined;
  const put = open ? act(state, { do: 'pause' }) : still(state);
  return doing({ ...put.state, leaving: true }, ...put.effects, { kind: 'leave' });
}

/** A paste is text for a field; anywhere else it is refused, so that pasted lines answer nothing. */
function paste(state: State, text: string): Step<State> {
  const mode = currentMode(state);
  if (mode !== 'text' && mode !== 'form-text' && mode !== 'reading')
    return still({
      ...state,
      notice: { kind: 'told', text: 'There is no text field here to paste into.' },
    });
  const line = text.replace(/\s+/g, ' ').trim();
  return Array.from(line).reduce<Step<State>>((step, token) => {
    const next = route(step.state, { command: 'type', token, mode });
    return doing(next.state, ...step.effects, ...next.effects);
  }, still(state));
}
