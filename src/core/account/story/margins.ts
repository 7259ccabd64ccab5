import { quickAdvice } from '../../reason/advice/advise.ts';
import { percent } from '../../reason/history/wording.ts';
import { inputFrom, leftOut } from '../../reason/history/from-story.ts';
import { fold } from '../../session/fold.ts';
import type { Repaired, Story } from '../../session/story.ts';
import { unlisted } from '../../tree/model.ts';
import { chanceBefore, guessUnder } from '../clauses/repairs.ts';
import { oneIn } from '../clauses/grammar.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, causeIn, checkIn, minuteWords } from '../words/wording.ts';
import type { Beside } from './beside.ts';
import { surprises } from './surprise.ts';

/** What a mentor reads in the margin: what stood open before a guess, what was expected, and what to ask. */
export function marginsOf(context: AccountContext): readonly Beside[] {
  const { story, audience } = context;
  if (audience !== 'mentor') return [];
  return [
    ...story.repairs.flatMap((repair) => guessMargin(context, repair)),
    ...[...surprises(context)].map(([n, expected]) =>
      margin(
        n,
        `By the odds ${oneIn(expected)} shows this here. To ask: what was expected, and was it read twice?`,
      ),
    ),
    ...[...context.open.keys()].map((n) =>
      margin(
        n,
        'Two findings do not agree. To ask: which one was misread, and how would you know?',
      ),
    ),
  ].toSorted((one, other) => one.at - other.at);
}

const margin = (at: number, text: string): Beside => ({ at, block: { kind: 'margin', text } });

/** A repair on a guess: what led then, which short check stood open, and its price. */
function guessMargin(context: AccountContext, repair: Repaired): readonly Beside[] {
  const { story } = context;
  const chance = chanceBefore(context, repair.n, repair.cause);
  if (chance === undefined || chance >= guessUnder) return [];
  const told = `${leaderWords(context, repair)}${openCheck(story, repair)}`;
  const price =
    repair.minutes === undefined ? '' : ` The repair took ${minuteWords(repair.minutes)}.`;
  return [
    margin(
      repair.n,
      `Mended at ${percent(chance)}.${told}${price} To ask: what spoke for it, and what would have changed your mind?`,
    ),
  ];
}

function leaderWords({ story, history }: AccountContext, { n, leg, cause }: Repaired): string {
  const before = history.findLast((step) => step.n < n && step.leg === leg)?.after;
  const [first] = [...(before ?? [])].toSorted((one, other) => other[1] - one[1]);
  if (first === undefined || first[0] === cause) return '';
  const name = first[0] === unlisted ? 'something not on the list' : causeIn(story, first[0], leg);
  return ` In front then: ${name} (${percent(first[1])}).`;
}

/** The short check that the advice would have waited for, or the best one from there. */
function openCheck(story: Story, { n, cause, leg }: Repaired): string {
  const before = fold(
    story.header,
    story.entries.map(({ event }) => event).filter((event) => event.n < n),
  );
  const input = inputFrom(before);
  const advised =
    input.kind === 'good' ? quickAdvice(input.value, { leaveOut: leftOut(before) }) : undefined;
  if (advised?.kind !== 'good') return '';
  const { held, next } = advised.value;
  const check =
    held.find((one) => one.cause === cause)?.check ?? next.find((one) => one.do === 'check')?.id;
  const minutes = check === undefined ? undefined : checkIn(story, check, leg)?.minutes;
  return check === undefined || minutes === undefined
    ? ''
    : ` Open then: ${askedThing(story, check, leg)}, about ${minuteWords(minutes)}.`;
}
