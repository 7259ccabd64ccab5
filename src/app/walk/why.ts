import { unlisted, type Tree } from '../../core/tree/model.ts';
import { gradedNames, sidesOf, suspectsNow } from '../../core/reason/history/suspect-words.ts';
import {
  aboutMinutes,
  adviceSentence,
  becauseOf,
  heldLines,
  percent,
  savesWords,
  stepWords,
} from '../../core/reason/history/wording.ts';
import type { Advice, NextStep } from '../../core/reason/advice/advice.ts';
import type { OpenSession } from '../state.ts';
import type { Before } from './suspect-rows.ts';
import { feedView, type FeedView, type Leads } from '../../core/drawing/feed-view.ts';
import { ladderLine, ladderLines } from '../../core/drawing/ladder-view.ts';
import { currentLeg } from '../../core/session/story.ts';
import { noOdds } from '../../core/reason/history/from-story.ts';
import { countedSentence } from '../../core/tree/counted/words.ts';
import { isOwn } from '../../core/tree/own/bare.ts';

/** The page of reasons: who is suspected, what would be done next and why. */
export function whyLines(session: OpenSession, before: Before): readonly string[] {
  const { story, advice } = session;
  const { tree } = currentLeg(story);
  if (isOwn(tree)) return withoutTree(tree);
  if (advice === undefined) return [withoutAdvice(session)];
  return [
    adviceSentence(tree, advice),
    ' ',
    ...partingLines(tree, advice, before),
    'Several can be there at once: these do not add up to 100.',
    ...(advice.coverage < 0.999
      ? [`They rest on at least ${percent(advice.coverage)} of the evidence.`]
      : []),
    ...[countedSentence(tree)].filter((line) => line !== undefined),
    '  ',
    'NEXT, THE BEST FIRST',
    ...advice.next.slice(0, 6).map((step, index) => {
      const saves = savesWords(step.versusTree);
      return `${index + 1}. ${stepWords(tree, step)}${saves === '' ? '' : `, ${saves}`}. ${becauseOf(tree, step)}`;
    }),
    ...heldLines(tree, advice),
  ];
}

/** Of a job without a tree: what was named, in the order of naming, and no number that nobody gave. */
const withoutTree = ({ causes }: Tree): readonly string[] => [
  noOdds.message,
  ' ',
  ...(Object.keys(causes).length === 0
    ? ['Nothing is named yet that it may be: R names it.']
    : ['NAMED', ...Object.values(causes).map(({ name }) => `  ${name}`)]),
];

/** The suspects with their numbers: by what the check on screen would part, or by their word. */
function partingLines(tree: Tree, advice: Advice, { check }: Before): readonly string[] {
  const suspects = suspectsNow(advice);
  const sides = check === undefined ? [] : sidesOf(tree, check, suspects, 'numbers');
  if (sides.length === 0)
    return ['SUSPECTS', ...gradedNames(tree, suspects, 'numbers').map((names) => `  ${names}`)];
  return [
    'THIS CHECK WOULD PART',
    ...sides.map(({ shows, names }) => `  ${shows}: ${names(Infinity)}`),
  ];
}

/** Why there is no advice: it is only said to be on its way while it is. */
function withoutAdvice({ story, unadvised }: OpenSession): string {
  if (story.closed !== undefined) return 'The job is closed: nothing is advised any more.';
  return unadvised === undefined
    ? 'Still being worked out.'
    : `The suspects cannot be told: ${unadvised}`;
}

/** What is said where the tree's own way names a cause before a short check that would still tell. */
function lookFirst({ story, own }: LedWalk, { held, next }: Advice): string | undefined {
  const waits = 'cause' in own && held.find(({ cause }) => cause === own.cause);
  if (!waits) return undefined;
  const [first] = next;
  const key = first?.do === 'check' && first.id === waits.check ? 's' : 'o';
  const ask = stepWords(currentLeg(story).tree, { do: 'check', id: waits.check });
  return `FIRST     a short check would still tell (${key}): ${ask}`;
}

type LedWalk = Pick<OpenSession, 'story' | 'own' | 'advice'>;

/** `QUICKER   likely quicker (s): ...`; what the advice would do instead. */
export function quickerLine(session: LedWalk): string {
  const { story, own, advice } = session;
  const [first] = advice?.next ?? [];
  if (own.kind === 'exhausted' && story.due.kind !== 'exhausted')
    return "ADVISED   the tree's own way ends here; what follows is the advice";
  if (advice === undefined || first === undefined) return '';
  const { tree } = currentLeg(story);
  const step = `${stepWords(tree, first)}, ${aboutMinutes(first.minutes)}`;
  const look = lookFirst(session, advice);
  if (look !== undefined) return look;
  const asked = own.kind === 'check' ? own.check : undefined;
  // Nothing is quicker than making the complaint show itself: without it nothing can be proven.
  // And what is still being searched may change: nothing is promised before it is settled.
  if (asked === tree.complaint.confirm || !advice.final) return '';
  return `QUICKER   ${savedBy(step, first, asked)}`;
}

const savedBy = (words: string, step: NextStep, asked: string | undefined): string => {
  if (step.do === 'check' && step.id === asked) return 'nothing: the next step is the best';
  const saves = savesWords(step.versusTree);
  return saves === '' ? 'nothing that is worth leaving the way for' : `${saves} (s): ${words}`;
};

const viewOf = ({ story, advice }: OpenSession): FeedView | undefined =>
  feedView(story, advice && leadsOf(advice));

const leadsOf = ({ suspects, unlisted: other, next }: Advice): Leads => ({
  chances: new Map([
    ...suspects.map(({ cause, chance }) => [cause, chance] as const),
    [unlisted, other],
  ]),
  ranked: next.flatMap((step) => (step.do === 'check' ? [step.id] : [])),
});

/** `FEED      post 12.6 ─ stud 12.6 ╳ bulkhead 0.2 ╌ ammeter ?`; empty for a tree without a feed path. */
export function feedLine(session: OpenSession): string {
  const view = viewOf(session);
  return view === undefined ? '' : `FEED      ${ladderLine(view)}`;
}

/** The whole ladder as a page to read. */
export function feedLines(session: OpenSession): readonly string[] {
  const view = viewOf(session);
  return view === undefined ? ['This tree has no feed path.'] : ladderLines(view);
}
