import { never } from '../../core/problem.ts';
import { bookWords } from '../../core/session/book.ts';
import { currentLeg, type Leg, type Story } from '../../core/session/story.ts';
import { byDanger } from '../../core/session/rules/cautions.ts';
import type { Cause, Check } from '../../core/tree/model.ts';
import { show, transition, type Transition } from '../effect.ts';
import type { Binding, KeyPress, Mode } from '../keys/command.ts';
import { bindingsOf, keyName } from '../keys/keymap.ts';
import { moved } from '../keys/cursor.ts';
import type { Message } from '../message.ts';
import type { Page } from '../page.ts';
import type { At } from '../screen.ts';
import type { State } from '../state.ts';
import { deferWords, fullCaution } from '../walk/caution-words.ts';
import type { DueOnScreen } from '../walk/question.ts';
import { bothConditions } from '../walk/conditions.ts';
import { beforeNow } from '../walk/suspect-rows.ts';
import { feedLines, whyLines } from '../walk/why.ts';
import { healthyWords, standingWords } from '../wording.ts';

type ReadingKind = 'keys' | 'jobs' | 'full' | 'why' | 'ladder';
export type ReadingScreen = At<ReadingKind>;

/** A page is read on by a line, never past its last one, or left for where it was opened from. */
function read(state: State, screen: ReadingScreen, { command }: KeyPress): Transition {
  if (command === 'go-back') return show(state, screen.from);
  const lines = readingLines(state, screen).length;
  const cursor = Math.max(0, moved(screen.cursor, command, lines));
  return show(state, { ...screen, cursor });
}

const opening =
  (kind: Exclude<ReadingKind, 'keys' | 'jobs'>) =>
  (state: State): Transition =>
    show(state, { kind, from: state.screen, cursor: 0 });

/** What past jobs turned out to be, as "droplight history" tells it; read behind the keys. */
export function openJobs(state: State): Transition {
  const lines = ['Reading the sessions.'];
  return show(state, { kind: 'jobs', from: state.screen, cursor: 0, lines }, { kind: 'read-jobs' });
}

/** What the disk said of the sessions: their list, or what they come to, if its page is still the one on screen. */
export function sessionsTold(
  state: State,
  message: Extract<Message, { kind: 'sessions-listed' | 'jobs-read' }>,
): Transition {
  if (message.kind === 'sessions-listed')
    return transition({ ...state, sessions: message.sessions });
  const { lines } = message;
  return state.screen.kind === 'jobs' ? show(state, { ...state.screen, lines }) : transition(state);
}

/** Opened by the program itself: its lines are the keys of all screens. */
export const keysPage: Page<'keys'> = { mode: () => 'keys', update: read };
export const jobsPage: Page<'jobs'> = { mode: () => 'jobs', update: read, open: openJobs };
export const fullPage: Page<'full'> = {
  mode: () => 'full',
  update: (state, screen, press) =>
    press.command === 'conditions' ? bothConditions(state) : read(state, screen, press),
  open: opening('full'),
};
export const whyPage: Page<'why'> = { mode: () => 'why', update: read, open: opening('why') };
export const ladderPage: Page<'ladder'> = {
  mode: () => 'ladder',
  update: read,
  open: opening('ladder'),
};

/** The lines of a page, folded on the screen only. */
export function readingLines({ session, question }: State, page: ReadingScreen): readonly string[] {
  if (page.kind === 'keys' || page.kind === 'jobs') return page.lines;
  if (session === undefined || question.due === undefined) return [];
  switch (page.kind) {
    case 'full':
      return fullLines(question.due);
    case 'why':
      return whyLines(session, beforeNow(question.due));
    case 'ladder':
      return feedLines(session);
    default:
      return never(page);
  }
}

/** The keys of a mode, out of the keymap itself. */
export const keyLines = (bindings: readonly Binding[], mode: Mode): readonly string[] =>
  bindingsOf(bindings, mode).map(
    ({ keys, about }) => `${keys.map(keyName).join(' ').padEnd(17)} ${about}`,
  );

/** The check or cause on the walk with everything the tree says of it. */
function fullLines({ story, asked, cause }: DueOnScreen): readonly string[] {
  const leg = currentLeg(story);
  if (asked !== undefined) return checkLines(story, asked.check, leg);
  return cause === undefined
    ? ['There is nothing more to say here.']
    : causeLines(cause.cause, leg);
}

const part = (name: string, text: string | undefined): readonly string[] =>
  text === undefined || text === '' ? [] : [`${name}: ${text}`];

const toolNames = (ids: readonly string[], { shop }: Leg): string =>
  ids.map((id) => shop.tools[id]?.name ?? id).join('; ');

const cautionLines = (leg: Leg, ids: readonly string[]): readonly string[] =>
  byDanger(leg.shop, ids).map((id) => `! ${fullCaution(leg, id)}${deferWords(leg, id)}`);

function checkLines(story: Story, check: Check, leg: Leg): readonly string[] {
  return [
    check.ask,
    ...cautionLines(leg, check.cautions),
    ...part('Standing', standingWords(check.standing).join('; ')),
    ...check.how.map((step, index) => `${index + 1}. ${step}`),
    ...part('Healthy', healthyWords(check)),
    ...part('Judged', bookWords(story, leg, check)),
    ...part('Tools', toolNames(check.tools, leg)),
    ...part('Source', check.source),
  ];
}

function causeLines({ name, where, shows, repair }: Cause, leg: Leg): readonly string[] {
  return [
    name,
    ...cautionLines(leg, repair.cautions),
    ...part('Where', where),
    ...part('Shows', shows),
    ...part('Standing', standingWords(repair.standing).join('; ')),
    ...repair.do.map((step, index) => `${index + 1}. ${step}`),
    ...part('Parts', repair.parts.join('; ')),
    ...part('Tools', toolNames(repair.tools, leg)),
  ];
}
