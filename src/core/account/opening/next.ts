import { quickAdvice } from '../../reason/advice/advise.ts';
import { chancesAtFirst } from '../../reason/history/belief-history.ts';
import { inputFrom, leftOut } from '../../reason/history/from-story.ts';
import { suspectFrom } from '../../reason/grade.ts';
import type { Story } from '../../session/story.ts';
import { unlisted } from '../../tree/model.ts';
import { subject } from '../clauses/grammar.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, causeIn, sentence, quoted } from '../words/wording.ts';
import { outcomeOf, type Part } from './part.ts';

/** Who stood lower than this at first was never much of a suspect. */
const worthClearing = 0.04;
const mostCleared = 5;
/** After more findings than any job has the next step is not searched for. */
const mostWeighed = 200;

/** How a job that is not proven goes on: to whom, what is cleared, what comes next; nothing for a proven one. */
export function nextWords(context: AccountContext, part: Part): readonly string[] {
  const { story } = context;
  const outcome = outcomeOf(story, part);
  if (outcome === 'proven' || outcome === 'inspection') return handedWords(story);
  return [...handedWords(story), ...clearedWords(context), ...nextStep(context)];
}

function handedWords({ closed }: Story): readonly string[] {
  if (closed?.as !== 'handed-on') return [];
  const text = closed.text?.trim() ?? '';
  return [text === '' ? 'The vehicle was handed on.' : `Handed on: "${quoted(text)}".`];
}

/** Suspects of weight that what was found has cleared. */
function clearedWords({ story, history }: AccountContext): readonly string[] {
  const leg = story.legs.length - 1;
  const [first, now] = [chancesAtFirst(story, leg), history.at(-1)?.after];
  if (first === undefined || now === undefined) return [];
  const cleared = [...first]
    .filter(
      ([id, chance]) =>
        id !== unlisted &&
        chance >= worthClearing &&
        (now.get(id) ?? 0) < suspectFrom &&
        !story.repairs.some(({ cause }) => cause === id),
    )
    .toSorted(([, one], [, other]) => other - one)
    .slice(0, mostCleared)
    .map(([id]) => causeIn(story, id, leg));
  return cleared.length === 0 ? [] : [sentence(`${subject(cleared)} cleared`)];
}

/** The best step from here, as the advice has it; only a check is told, a repair is nobody's to order. */
function nextStep({ story }: AccountContext): readonly string[] {
  if (story.closed?.as === 'fixed' || story.findings.length > mostWeighed) return [];
  const input = inputFrom(story);
  if (input.kind === 'bad') return [];
  const advised = quickAdvice(input.value, { leaveOut: leftOut(story) });
  if (advised.kind === 'bad') return [];
  const [best] = advised.value.next;
  if (best === undefined) return [];
  const leg = story.legs.length - 1;
  return [
    sentence(
      best.do === 'check'
        ? `next in line: ${askedThing(story, best.id, leg)}`
        : `next in line: to make sure that it is ${best.id === unlisted ? 'something on no list' : causeIn(story, best.id, leg)}`,
    ),
  ];
}
