import { inputFrom, leftOut } from '../reason/history/from-story.ts';
import { regretOf, type Regret } from '../reason/history/regret.ts';
import type { StepName } from '../reason/advice/minutes.ts';
import { suspectFrom } from '../reason/grade.ts';
import { stepWords } from '../reason/history/wording.ts';
import type { Event, UnknownEvent } from '../session/event.ts';
import { fold, type Recorded } from '../session/fold.ts';
import { dueByTree } from '../session/due.ts';
import { currentLeg, lastFinding, type Story } from '../session/story.ts';
import { lookAt } from '../tree/looked.ts';
import { isOwn } from '../tree/own/bare.ts';
import { isPartOfNext } from '../account/blocks/ledger.ts';
import { causeThing } from '../account/words/wording.ts';

/** One decision: what was known, what was chosen, what would have been best, and the price. */
export type Decision = {
  readonly n: number;
  readonly at: string;
  /**
   * `asked`: the tree asks it of everybody (complaint, baseline, retests), so it is not charged; nor
   * is `look`, an open look at a cause that was named, nor `own`, a step of a job without a tree:
   * nobody gave odds to weigh it by.
   */
  readonly kind: 'free' | 'asked' | 'look' | 'own';
  readonly known: {
    /** The likeliest suspect, and how a sentence calls it. */
    readonly leader: { readonly cause: string; readonly name: string } | undefined;
    readonly chance: number;
    readonly suspects: number;
  };
  readonly chosen: StepName & { readonly words: string };
  /** Nothing where what was found contradicts itself, or the complaint is gone. */
  readonly best:
    | (StepName & { readonly words: string; readonly expectedLeft: number | undefined })
    | undefined;
  /** Expected minutes given away by the choice; 0 for what is asked of everybody. */
  readonly lost: number;
  readonly tellsNothing: boolean;
  /** Chance of the cause when it was repaired; only for repairs. */
  readonly chance: number | undefined;
  /** Opened something although a quicker check needed no opening. */
  readonly openedEarly: boolean;
};

/** Every check and repair of a session, each weighed on the story as it stood before it. */
export function decisionsOf({ header, events }: Recorded): readonly Decision[] {
  const finished = fold(header, events);
  return events.flatMap((event, index): readonly Decision[] => {
    if (event.kind === 'not-this') return [lookOf(finished, event)];
    const chosen = stepOf(event);
    if (chosen === undefined) return [];
    const before = fold(header, events.slice(0, startOf(finished, index)));
    return decide(before, event, chosen);
  });
}

/** An open look at a cause, and what it showed. */
const lookOf = (
  story: Story,
  { n, at, cause }: Extract<Event, { kind: 'not-this' }>,
): Decision => ({
  ...unweighed,
  n,
  at,
  kind: 'look',
  chosen: {
    do: 'check',
    id: lookAt(cause),
    words: `looked at ${causeThing(story, cause)}, it was not that`,
  },
});

const stepOf = (event: Event | UnknownEvent): StepName | undefined => {
  if (event.kind === 'found' || event.kind === 'proved') return { do: 'check', id: event.check };
  return event.kind === 'repaired' ? { do: 'repair', id: event.cause } : undefined;
};

/** Where a decision began: before what was only implied by it, so that its opening up is paid for. */
function startOf({ entries }: Story, index: number): number {
  let start = index;
  for (let entry = entries[start - 1]; entry !== undefined; entry = entries[start - 1]) {
    if (!isPartOfNext(entry)) break;
    start -= 1;
  }
  return start;
}

function decide(story: Story, event: Event | UnknownEvent, chosen: StepName): readonly Decision[] {
  const { tree } = currentLeg(story);
  const asked = isAsked(story, event, chosen);
  const base = {
    n: event.n,
    at: event.at,
    kind: asked ? ('asked' as const) : isOwn(tree) ? ('own' as const) : ('free' as const),
    chosen: { ...chosen, words: stepWords(tree, chosen) },
  };
  const made = inputFrom(story);
  const judged =
    made.kind === 'good' ? regretOf(made.value, chosen, { leaveOut: leftOut(story) }) : made;
  if (judged.kind === 'bad') return [{ ...base, ...unweighed }];
  const weighed = {
    known: knownIn(story, judged.value),
    best: bestIn(story, judged.value),
    chance: chosen.do === 'repair' ? chanceOf(judged.value, chosen.id) : undefined,
  };
  if (asked) return [{ ...base, ...unweighed, ...weighed }];
  const { minutes: lost, tellsNothing } = judged.value;
  return [
    {
      ...base,
      ...weighed,
      lost,
      tellsNothing: tellsNothing || isRepeat(story, chosen),
      openedEarly: opensEarly(story, chosen, judged.value),
    },
  ];
}

function knownIn(story: Story, { advice: { suspects } }: Regret): Decision['known'] {
  const [leader] = suspects;
  return {
    leader: leader && { cause: leader.cause, name: causeThing(story, leader.cause) },
    chance: leader?.chance ?? 0,
    suspects: suspects.filter(({ chance }) => chance >= suspectFrom).length,
  };
}

function bestIn(story: Story, { best }: Regret): Decision['best'] {
  if (best === undefined) return undefined;
  const { do: kind, id, expectedLeft } = best;
  return { do: kind, id, words: stepWords(currentLeg(story).tree, best), expectedLeft };
}

const unweighed = {
  known: { leader: undefined, chance: 0, suspects: 0 },
  best: undefined,
  lost: 0,
  tellsNothing: false,
  chance: undefined,
  openedEarly: false,
} as const;

const chanceOf = ({ advice }: Regret, cause: string): number =>
  advice.suspects.find((suspect) => suspect.cause === cause)?.chance ?? 0;

/** The complaint made to show itself, baseline readings, what a repair asks to repeat, and proofs. */
function isAsked(story: Story, event: Event | UnknownEvent, { do: kind, id }: StepName): boolean {
  if (event.kind === 'proved') return true;
  const due = dueByTree(story);
  if (kind === 'repair' || due.kind !== 'check' || due.check !== id) return false;
  const { tree } = currentLeg(story);
  return due.why === 'repeat' || [tree.complaint.confirm, ...tree.baseline].includes(id);
}

/** Found already, and nothing repaired since. */
function isRepeat(story: Story, { do: kind, id }: StepName): boolean {
  return kind === 'check' && lastFinding(story, id)?.repairs === story.repairs.length;
}

function opensEarly(story: Story, chosen: StepName, { best, minutes }: Regret): boolean {
  const { tree } = currentLeg(story);
  const access =
    chosen.do === 'check' ? tree.checks[chosen.id]?.access : tree.causes[chosen.id]?.repair.access;
  const shut = (access ?? []).some((id) => !story.open.includes(id));
  const outside = best?.do === 'check' && (tree.checks[best.id]?.access ?? []).length === 0;
  return shut && outside && minutes >= 1;
}
