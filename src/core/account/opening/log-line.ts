import { costsOf } from '../../session/costs/costs.ts';
import { moneyWords } from '../../session/costs/words.ts';
import { dateOf } from '../../session/clock.ts';
import type { Story } from '../../session/story.ts';
import { accountTitle, type AccountContext } from '../context.ts';
import { asClause, joined, minuteWords, sentence } from '../words/wording.ts';
import { asFound } from './as-found.ts';
import { mendedCauses, outcomeOf, partsOf, type Part } from './part.ts';

/** The job in a line, as a log keeps it: the day, what it was, what was done, whether it is proven, time and money. */
export function logLine(context: AccountContext): string {
  const { story } = context;
  const money = moneyWords(costsOf(story).spent);
  return sentence(
    [
      `${dateOf(story.header.opened)}, ${accountTitle(context)}`,
      ...new Set(partsOf(story).map((part) => partWords(story, part))),
      [minuteWords(story.minutes), money].filter((words) => words !== '').join(', '),
    ].join('; '),
  );
}

function partWords(story: Story, part: Part): string {
  const causes = joined(mendedCauses(part).map((id) => asFound(story, id)));
  const done = part.repairs.map(({ did }) => (did === undefined ? '' : asClause(did))).at(-1) ?? '';
  switch (outcomeOf(story, part)) {
    case 'proven':
      return `${causes}${done === '' ? '' : `, ${done}`}, proven`;
    case 'tried':
      return `${causes === '' ? 'no cause found' : `suspected ${causes}`}${done === '' ? '' : `, ${done}`}, not proven`;
    case 'named':
      return `found ${joined(part.named.slice(-1).map((id) => asFound(story, id)))}, not mended`;
    case 'went away':
      return 'went away by itself, not explained';
    case 'inspection':
      return 'for inspection';
    case 'open':
      return 'no cause found';
  }
}
