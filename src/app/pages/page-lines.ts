import { never } from '../../core/problem.ts';
import { currentLeg, type Leg, type Story } from '../../core/session/story.ts';
import type { Cause, Check } from '../../core/tree/model.ts';
import { askedCheck, namedCause, type Mode } from '../walk/question.ts';
import { bindings } from '../keys/bindings.ts';
import { fullCaution } from '../walk/caution-words.ts';
import { feedLines } from '../walk/feed-lines.ts';
import { currentMode } from '../walk/mode.ts';
import type { Screen } from '../screen.ts';
import type { State } from '../state.ts';
import { whyLines } from '../walk/why.ts';
import { healthyWords, standingWords } from '../wording.ts';

/** A page to read, from a line of it on. */
export type Page = Extract<Screen, { readonly kind: 'keys' | 'full' | 'why' | 'ladder' }>;

/** The lines of a page, folded on the screen only. */
export function pageLines(state: State, page: Page): readonly string[] {
  if (page.kind === 'keys') return keyLines(currentMode({ ...state, screen: page.from }));
  const { session } = state;
  if (session === undefined) return [];
  switch (page.kind) {
    case 'full':
      return fullLines(session.story);
    case 'why':
      return whyLines(session);
    case 'ladder':
      return feedLines(session);
    default:
      return never(page);
  }
}

/** The keys of a mode, out of the keymap itself. */
const keyLines = (mode: Mode): readonly string[] =>
  bindings
    .filter(({ modes }) => modes === 'all' || modes.includes(mode))
    .map(({ keys, about }) => `${keys.map(keyName).join(' ').padEnd(17)} ${about}`);

const keyNames: Readonly<Record<string, string>> = {
  'C-c': 'Ctrl+C',
  'C-l': 'Ctrl+L',
  ' ': 'space',
  digit: '1-9',
  line: '1-9 a-z',
  typed: 'any',
  back: 'backspace',
};
const keyName = (key: string): string => keyNames[key] ?? key;

/** The check or cause on the walk with everything the tree says of it. */
function fullLines(story: Story): readonly string[] {
  const leg = currentLeg(story);
  const asked = askedCheck(story, undefined);
  if (asked !== undefined) return checkLines(asked.check, leg);
  const named = namedCause(story);
  return named === undefined
    ? ['There is nothing more to say here.']
    : causeLines(named.cause, leg);
}

const part = (name: string, text: string | undefined): readonly string[] =>
  text === undefined || text === '' ? [] : [`${name}: ${text}`];

const toolNames = (ids: readonly string[], { shop }: Leg): string =>
  ids.map((id) => shop.tools[id]?.name ?? id).join('; ');

function checkLines(check: Check, leg: Leg): readonly string[] {
  return [
    check.ask,
    ...check.cautions.map((id) => `! ${fullCaution(leg, id)}`),
    ...part('Standing', standingWords(check.standing).join('; ')),
    ...check.how.map((step, index) => `${index + 1}. ${step}`),
    ...part('Healthy', healthyWords(check)),
    ...part('Tools', toolNames(check.tools, leg)),
    ...part('Source', check.source),
  ];
}

function causeLines({ name, where, shows, repair }: Cause, leg: Leg): readonly string[] {
  return [
    name,
    ...repair.cautions.map((id) => `! ${fullCaution(leg, id)}`),
    ...part('Where', where),
    ...part('Shows', shows),
    ...part('Standing', standingWords(repair.standing).join('; ')),
    ...repair.do.map((step, index) => `${index + 1}. ${step}`),
    ...part('Parts', repair.parts.join('; ')),
    ...part('Tools', toolNames(repair.tools, leg)),
  ];
}
