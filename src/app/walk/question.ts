import { readAnswer } from '../../core/session/answer.ts';
import { askedNow } from '../../core/session/answered.ts';
import type { Shown } from '../../core/session/finding-words.ts';
import { beforeProof } from '../../core/session/apart/before-proof.ts';
import { refitLines, type BoardLine } from './board.ts';
import { isPractice } from '../../core/session/header/is-practice.ts';
import { preparations, type Preparation } from '../../core/session/preparation.ts';
import { holdsBefore } from '../../core/session/safeguard.ts';
import { byDanger, stepOfCause, stepOfCheck, unreadOf } from '../../core/session/rules/cautions.ts';
import { currentLeg, type Guarded, type Hold, type Story } from '../../core/session/story.ts';
import { today, type AskedCondition } from '../../core/session/today.ts';
import { standardReading } from '../../core/trade/standard.ts';
import type { Cause, Check } from '../../core/tree/model.ts';
import { neededBy, type Needed } from '../../core/tree/states.ts';
import type { Mode } from '../keys/command.ts';
import { walk, type At, type Screen, type WalkInput } from '../screen.ts';
import { textOf } from '../typing/typing.ts';

/** A check that the walk asks now, and what its answer will be. */
export type AskedCheck = {
  readonly id: string;
  readonly check: Check;
} & (
  | { readonly purpose: 'check' | 'proof' }
  /** `n` is the finding that is answered anew. */
  | { readonly purpose: 'correct'; readonly n: number }
);

export type NamedCause = { readonly id: string; readonly cause: Cause };

/** What stands between the mechanic and the step on screen: cautions to be read, then things to be set. */
export type Blocker =
  /** Safeguards of the tree that are shut: the check of the first is the step to be made first. */
  | { readonly kind: 'safeguard'; readonly holds: readonly [Hold, ...Hold[]] }
  /** Before a proof: what is not back as it was when the complaint last showed. */
  | { readonly kind: 'before-proof'; readonly lines: readonly [BoardLine, ...BoardLine[]] }
  /** All that are still unread, what kills first; as many as fit stand on the page that is read now. */
  | { readonly kind: 'caution'; readonly cautions: readonly string[] }
  /** All that is to be set before the step, in the safe order. */
  | { readonly kind: 'prepare'; readonly preparations: readonly [Preparation, ...Preparation[]] }
  /** A passing state that the step needs has been spent: it is brought back first. */
  | { readonly kind: 'state'; readonly needed: Needed }
  | { readonly kind: 'condition'; readonly condition: AskedCondition }
  | { readonly kind: 'nothing' };

/** What the reading typed so far would be. */
type TypedReading = {
  /** Index of the result that it stands in. */
  readonly index: number;
  /** What would be kept of it. */
  readonly shown: Shown;
};

/** What the walk has to be done now. Neither a check nor a cause: the walk is at an end. */
export type DueOnScreen = {
  /** A cause picked by the mechanic stands in it as if the tree had named it. */
  readonly story: Story;
  readonly asked: AskedCheck | undefined;
  /** The cause named, or condemned and to be repaired. */
  readonly cause: NamedCause | undefined;
  readonly blocker: Blocker;
  /** Undefined while what is typed is no reading yet. */
  readonly typed: TypedReading | undefined;
};

/** What is asked of the person at the keys: worked out once a key, and read by all that follows. */
export type Question = {
  /** Which keys count now. */
  readonly mode: Mode;
  /** What is due in the open session, if one is open. */
  readonly due: DueOnScreen | undefined;
};

/** What is due on the walk, or on the walk behind another screen. */
export function dueOn(screen: Screen, session: { readonly story: Story } | undefined) {
  return session && dueOnWalk(session.story, walkBehind(screen));
}

/** The walk that a page was opened from; any other screen stands before the walk as it begins. */
function walkBehind(screen: Screen): At<'walk'> {
  if (screen.kind === 'walk') return screen;
  return 'from' in screen ? walkBehind(screen.from) : walk;
}

function dueOnWalk(kept: Story, screen: At<'walk'>): DueOnScreen {
  const story = withPicked(kept, screen);
  const asked = askedCheck(story, screen.correcting);
  const cause = asked === undefined ? namedCause(story) : undefined;
  return {
    story,
    asked,
    cause,
    blocker: blocker({
      story,
      asked,
      cause,
      seen: (screen.seen ?? []).flat(),
      past: screen.past === true,
    }),
    typed: asked && typedReading(story, asked, screen.input),
  };
}

function withPicked(story: Story, { pickedCause, pickedCheck }: At<'walk'>): Story {
  if (pickedCause !== undefined) return { ...story, due: { kind: 'named', cause: pickedCause } };
  return pickedCheck === undefined
    ? story
    : { ...story, due: { kind: 'check', check: pickedCheck, why: 'chosen' } };
}

function askedCheck(story: Story, correcting: number | undefined): AskedCheck | undefined {
  const { checks, complaint } = currentLeg(story).tree;
  const asked = (id: string, purpose: 'check' | 'proof'): AskedCheck | undefined => {
    const check = checks[id];
    return check && { id, check, purpose };
  };
  const wrong = story.findings.find(({ n }) => n === correcting);
  const check = wrong && checks[wrong.check];
  if (wrong !== undefined && check !== undefined)
    return { id: wrong.check, check, purpose: 'correct', n: wrong.n };
  if (story.due.kind === 'check') return asked(story.due.check, 'check');
  return story.due.kind === 'proof' ? asked(complaint.confirm, 'proof') : undefined;
}

function namedCause(story: Story): NamedCause | undefined {
  const { due } = story;
  if (due.kind !== 'named' && due.kind !== 'repair') return undefined;
  const cause = currentLeg(story).tree.causes[due.cause];
  return cause && { id: due.cause, cause };
}

type Unblocked = Pick<DueOnScreen, 'story' | 'asked' | 'cause'> & {
  /** Cautions that were read for this step already. */
  readonly seen: readonly string[];
  /** A safeguard is being gone past. */
  readonly past: boolean;
};

function blocker(step: Unblocked): Blocker {
  const { story, asked, cause, seen } = step;
  const guarded = asked?.purpose === 'correct' ? undefined : safeguardBlocker(step);
  if (guarded !== undefined) return guarded;
  if (cause !== undefined) return causeBlocker(story, cause, seen);
  if (asked === undefined || asked.purpose === 'correct') return { kind: 'nothing' };
  return (
    (asked.purpose === 'proof' ? notBackBefore(story) : undefined) ??
    checkBlocker(story, asked, seen)
  );
}

/** What comes before a check: its cautions, then what is to be set and said. */
function checkBlocker(
  story: Story,
  asked: Pick<AskedCheck, 'id' | 'check'>,
  seen: readonly string[],
): Blocker {
  const cautions = without(unreadOf(story, stepOfCheck(asked.id, asked.check)), seen);
  if (cautions.length > 0) return { kind: 'caution', cautions };
  const needed = neededBy(currentLeg(story).tree, asked.check);
  if (needed !== undefined && story.over.includes(needed.state)) return { kind: 'state', needed };
  const toSet = setUp(preparations(story, asked.check));
  if (toSet !== undefined) return toSet;
  const condition = missingCondition(story, asked.check);
  return condition === undefined ? { kind: 'nothing' } : { kind: 'condition', condition };
}

function notBackBefore(story: Story): Blocker | undefined {
  const [first, ...rest] = refitLines(story, beforeProof(story));
  return first && { kind: 'before-proof', lines: [first, ...rest] };
}

/** Shut safeguards stand before all else; gone past, every caution of the step is read first. */
function safeguardBlocker({ story, asked, cause, seen, past }: Unblocked): Blocker | undefined {
  const step: Guarded | undefined =
    asked !== undefined
      ? { kind: 'check', check: asked.id }
      : cause && { kind: 'repair', cause: cause.id };
  const [first, ...rest] = step === undefined ? [] : holdsBefore(story, step);
  if (first === undefined) return undefined;
  const all = (past ? (asked?.check ?? cause?.cause.repair)?.cautions : undefined) ?? [];
  const cautions = without(byDanger(currentLeg(story).shop, all), seen);
  return cautions.length > 0
    ? { kind: 'caution', cautions }
    : { kind: 'safeguard', holds: [first, ...rest] };
}

const without = (all: readonly string[], some: readonly string[]): readonly string[] =>
  all.filter((id) => !some.includes(id));

/** The cautions of a repair are read before its cause is condemned; what is to be set comes after. */
function causeBlocker(
  story: Story,
  { id, cause: { repair } }: NamedCause,
  seen: readonly string[],
): Blocker {
  const cautions = without(unreadOf(story, stepOfCause(id, repair)), seen);
  if (story.due.kind === 'named' && cautions.length > 0) return { kind: 'caution', cautions };
  const toSet = story.due.kind === 'repair' ? setUp(preparations(story, repair)) : undefined;
  return toSet ?? { kind: 'nothing' };
}

const setUp = ([first, ...rest]: readonly Preparation[]): Blocker | undefined =>
  first && { kind: 'prepare', preparations: [first, ...rest] };

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

function typedReading(story: Story, asked: AskedCheck, input: WalkInput): TypedReading | undefined {
  if (input.kind !== 'reading' && input.kind !== 'insist') return undefined;
  const { id, check } = asked;
  const typed = { reading: textOf(input.typed), insist: true };
  const answered = readAnswer(askedNow(story, id, check), typed);
  return answered.kind === 'shown' ? { index: answered.index, shown: answered.shown } : undefined;
}

/** Which keys count on the walk. */
export function walkMode({ input, past }: At<'walk'>, due: DueOnScreen): Mode {
  if (input.kind !== 'ready') return input.kind;
  const { story, asked, blocker: first } = due;
  if (first.kind !== 'nothing') return blockedMode(first, asked === undefined || past === true);
  if (asked !== undefined) return answeredBy(story, asked);
  const { kind } = story.due;
  // What asks a check was handled above; what is left has a mode of its own name.
  return kind === 'check' || kind === 'proof' || kind === 'exhausted' ? 'stop' : kind;
}

/** Who answers a check: the person at the keys, or in practice the hidden vehicle. */
function answeredBy({ header }: Story, { purpose, check }: AskedCheck): Mode {
  if (isPractice(header) && purpose !== 'correct') return 'make';
  return check.reading === undefined ? 'look' : 'measure';
}

/** @param bare no check can be answered as it stands: unsure and passing over mean nothing */
function blockedMode({ kind }: Exclude<Blocker, { kind: 'nothing' }>, bare: boolean): Mode {
  if (kind === 'state') return 'prepare';
  return bare && (kind === 'caution' || kind === 'prepare') ? `cause-${kind}` : kind;
}
