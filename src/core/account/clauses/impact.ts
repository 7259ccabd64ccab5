import { impactOf, toldLittle, type Impact, type Shift } from '../../reason/history/impact.ts';
import { unlisted } from '../../tree/model.ts';
import type { BeliefStep } from '../../reason/history/belief-history.ts';
import { percent } from '../../reason/history/wording.ts';
import type { Story } from '../../session/story.ts';
import type { AccountContext } from '../context.ts';
import { causeThing, joined, numberWord } from '../words/wording.ts';

const nameIn = (story: Story, cause: string): string =>
  cause === unlisted ? 'something not on the list' : causeThing(story, cause);

/** `27 to 48 %`; the ends keep their words. */
const shiftWords = ({ from, to }: Shift): string => {
  const [before, after] = [percent(from), percent(to)];
  return /^\d/.test(before) && /^\d/.test(after)
    ? `${before.replace(' %', '')} to ${after}`
    : `${before} to ${after}`;
};

/** A suspect that stands lower than this is not worth pointing out. */
const worthNaming = 0.12;

/** Cleared causes are named when they are few. */
const mostNamed = 3;

export type Manner = {
  /** How many findings brought it about together. */
  readonly together: number;
  /** Counts on through the account, so that two sentences in a row do not begin alike. */
  readonly turn: number;
};

/** What one finding, or several in a row, did to the suspects; empty where that is nothing. */
export function effectSentences(
  story: Story,
  steps: readonly BeliefStep[],
  { together, turn }: Manner,
): readonly string[] {
  const [first, last] = [steps[0], steps.at(-1)];
  if (first === undefined || last === undefined) return [];
  if (first.before === undefined) return [];
  if (last.after === undefined)
    return [
      'With what was found before, that cannot all be true: one of the findings must be doubted.',
    ];
  const impact = impactOf({ ...last, before: first.before });
  if (impact === undefined || toldLittle(impact)) return [];
  const it = together > 1 ? 'Between them they' : (['That', 'This', 'It'][turn % 3] ?? 'That');
  const cleared = clearedSentence(story, impact, it);
  return [...cleared, ...shiftSentence(story, impact, cleared.length === 0 ? it : undefined)];
}

function clearedSentence(
  story: Story,
  { cleared, suspects, settles }: Impact,
  it: string,
): readonly string[] {
  if (cleared.length === 0 || (settles && cleared.length < 3)) return [];
  const share =
    cleared.length === suspects
      ? suspects === 1
        ? 'the last suspect'
        : suspects === 2
          ? 'both suspects'
          : `all ${numberWord(suspects)} suspects`
      : `${numberWord(cleared.length)} of ${numberWord(suspects)} suspects`;
  const names =
    cleared.length > mostNamed ? '' : `: ${joined(cleared.map((id) => nameIn(story, id)))}`;
  return [`${it} cleared ${share}${names}.`];
}

function shiftSentence(story: Story, impact: Impact, it: string | undefined): readonly string[] {
  const { leader, newLeader, settles } = impact;
  if (leader !== undefined && settles)
    return [
      `${it ?? 'What was left'} pointed at one cause, from ${shiftWords(leader)}: ${nameIn(story, leader.cause)}.`,
    ];
  if (leader !== undefined && newLeader && leader.to >= worthNaming && leader.to > leader.from)
    return [
      `${it === undefined ? 'A new suspect came to the front' : `${it} brought a new suspect to the front`}, at ${percent(leader.to)}: ${nameIn(story, leader.cause)}.`,
    ];
  return movedSentence(story, impact, it);
}

/** Which suspect moved most, where nothing larger happened. */
function movedSentence(
  story: Story,
  { up, down, cleared }: Impact,
  it: string | undefined,
): readonly string[] {
  if (up !== undefined && up.to >= worthNaming)
    return [
      `${it === undefined ? 'One suspect rose' : `${it} raised one suspect`} from ${shiftWords(up)}: ${nameIn(story, up.cause)}.`,
    ];
  return down !== undefined && cleared.length === 0
    ? [
        `${it ?? 'It'} took one suspect down from ${shiftWords(down)}: ${nameIn(story, down.cause)}.`,
      ]
    : [];
}

/** The same in the fewest words, for a table. */
export function impactCell(context: AccountContext, n: number): string {
  return [movedCell(context, n), context.setAside.get(n) ?? '']
    .filter((words) => words !== '')
    .join('; ');
}

function movedCell({ story, stepAt, impactAt }: AccountContext, n: number): string {
  const step = stepAt(n);
  if (step === undefined) return '';
  const impact = impactAt(n);
  if (impact === undefined) return step.before === undefined ? '' : 'contradicts what was found';
  if (toldLittle(impact)) return 'little';
  const { cleared, suspects, up, down, leader, newLeader } = impact;
  const moved =
    up ?? (cleared.length === 0 ? (down ?? (newLeader ? leader : undefined)) : undefined);
  return [
    ...(cleared.length === 0 ? [] : [`cleared ${cleared.length} of ${suspects}`]),
    ...(moved === undefined ? [] : [`${nameIn(story, moved.cause)}: ${shiftWords(moved)}`]),
  ].join('; ');
}
