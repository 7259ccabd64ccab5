import { preparations, type Preparation } from '../../core/session/preparation.ts';
import { unread } from '../../core/session/rules/lookup.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import type { Cause, Check } from '../../core/tree/model.ts';
import { today, type AskedCondition } from '../../core/session/today.ts';
import { standardReading } from '../../core/trade/standard.ts';
import type { Screen } from '../screen.ts';
import type { State } from '../state.ts';

type Walk = Extract<Screen, { kind: 'walk' }>;

/** A check that the walk is asked now, and what its answer will be. */
export type AskedCheck = {
  readonly id: string;
  readonly check: Check;
  readonly purpose: 'check' | 'proof' | 'correct';
  /** The finding that is answered anew. */
  readonly n?: number;
};

/** The check on the walk screen, if it is a check that is asked. */
export function askedCheck(story: Story, correcting: number | undefined): AskedCheck | undefined {
  const { checks, complaint } = currentLeg(story).tree;
  const wanted = wantedCheck(story, correcting, complaint.confirm);
  const check = wanted && checks[wanted.id];
  return wanted && check && { ...wanted, check };
}

function wantedCheck(
  story: Story,
  correcting: number | undefined,
  confirm: string,
): Omit<AskedCheck, 'check'> | undefined {
  const mended = story.findings.find(({ n }) => n === correcting);
  if (mended !== undefined) return { id: mended.check, purpose: 'correct', n: mended.n };
  if (story.due.kind === 'check') return { id: story.due.check, purpose: 'check' };
  return story.due.kind === 'proof' ? { id: confirm, purpose: 'proof' } : undefined;
}

/** The story as the screen faces it: a cause picked by the mechanic stands as if the tree had named it. */
export const withPickedCause = (story: Story, { pickedCause }: Pick<Walk, 'pickedCause'>): Story =>
  pickedCause === undefined ? story : { ...story, due: { kind: 'named', cause: pickedCause } };

/** The cause on the walk screen: named by the tree, or condemned and to be repaired. */
export function namedCause(story: Story): { id: string; cause: Cause } | undefined {
  const { due } = story;
  if (due.kind !== 'named' && due.kind !== 'repair') return undefined;
  const cause = currentLeg(story).tree.causes[due.cause];
  return cause && { id: due.cause, cause };
}

/** What stands between the mechanic and the step on screen: cautions to be read, then things to be set. */
export type Blocker =
  /** The first of `cautions` is the one to read now; all of them are still unread. */
  | { readonly kind: 'caution'; readonly cautions: readonly string[] }
  | { readonly kind: 'prepare'; readonly preparation: Preparation }
  | { readonly kind: 'condition'; readonly condition: AskedCondition }
  | { readonly kind: 'nothing' };

/** @param seen cautions that were paged past already */
export function blocker(story: Story, asked: AskedCheck | undefined, seen = 0): Blocker {
  if (asked === undefined) return causeBlocker(story, seen);
  if (asked.purpose === 'correct') return { kind: 'nothing' };
  const cautions = unread(story, `check:${asked.id}`, asked.check.cautions).slice(seen);
  if (cautions.length > 0) return { kind: 'caution', cautions };
  const [preparation] = preparations(story, asked.check);
  if (preparation !== undefined) return { kind: 'prepare', preparation };
  const condition = missingCondition(story, asked.check);
  return condition === undefined ? { kind: 'nothing' } : { kind: 'condition', condition };
}

/**
 * All cautions of a repair are read before its cause is condemned, for the record says of all that
 * they were; what is to be set comes after.
 */
function causeBlocker(story: Story, seen: number): Blocker {
  const named = namedCause(story);
  if (named === undefined) return { kind: 'nothing' };
  const { repair } = named.cause;
  const read = story.acknowledged[`cause:${named.id}`] ?? [];
  const cautions = repair.cautions.filter((id) => !read.includes(id)).slice(seen);
  if (story.due.kind === 'named' && cautions.length > 0) return { kind: 'caution', cautions };
  const [preparation] = story.due.kind === 'repair' ? preparations(story, repair) : [];
  return preparation === undefined ? { kind: 'nothing' } : { kind: 'prepare', preparation };
}

/** The condition that a check's reading is judged by, if it is not recorded and was not asked yet. */
function missingCondition(story: Story, check: Check): AskedCondition | undefined {
  if (check.reading?.standard === undefined) return undefined;
  const { unit, standard } = check.reading;
  const needs = standardReading(
    standard,
    { value: check.reading.plausible[1], unit },
    today(story),
  );
  if (needs.kind !== 'needs' || needs.condition === 'volts') return undefined;
  return story.notKnown.includes(needs.condition) ? undefined : needs.condition;
}

/** Which keys count now. Every binding of the keymap belongs to one or more of these. */
export type Mode =
  | 'home'
  | 'list'
  | 'form-text'
  | 'form-choice'
  | 'look'
  | 'measure'
  | 'reading'
  | 'insist'
  | 'text'
  | 'caution'
  | 'cause-caution'
  | 'prepare'
  | 'cause-prepare'
  | 'condition'
  | 'named'
  | 'repair'
  | 'leg'
  | 'stop'
  | 'proven'
  | 'closed'
  | 'apart'
  | 'settings'
  | 'keys'
  /** A figure worked out. */
  | 'worked'
  | 'replay';

export function walkMode(told: Story, screen: Walk): Mode {
  const story = withPickedCause(told, screen);
  if (screen.input.kind !== 'ready') return screen.input.kind;
  const asked = askedCheck(story, screen.correcting);
  const first = blocker(story, asked, screen.seen);
  if (asked === undefined && (first.kind === 'caution' || first.kind === 'prepare'))
    return `cause-${first.kind}`;
  if (first.kind !== 'nothing') return first.kind;
  if (asked !== undefined) return asked.check.reading === undefined ? 'look' : 'measure';
  const { kind } = story.due;
  // A step that asks a check was handled above; what is left has a mode of its own name.
  return kind === 'check' || kind === 'proof' || kind === 'exhausted' ? 'stop' : kind;
}

export function modeOf(state: State, isTextField: boolean): Mode {
  const { screen, session } = state;
  switch (screen.kind) {
    case 'walk':
      return session === undefined ? 'home' : walkMode(session.story, screen);
    case 'start':
      return isTextField ? 'form-text' : 'form-choice';
    case 'settings':
      return screen.typed === undefined ? 'settings' : 'text';
    case 'home':
    case 'apart':
    case 'keys':
    case 'replay':
      return screen.kind;
    case 'full':
    case 'why':
    case 'ladder':
      return 'keys';
    case 'figure':
      return screen.page.result.length > 0 ? 'worked' : 'form-text';
    case 'sessions':
    case 'figures':
    case 'others':
    case 'suspects':
    case 'close':
    case 'contradiction':
      return 'list';
  }
}
