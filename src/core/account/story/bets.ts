import { chancesAtFirst } from '../../reason/history/belief-history.ts';
import { unlisted } from '../../tree/model.ts';
import type { AccountContext } from '../context.ts';
import { causeIn } from '../words/wording.ts';

/** So many are named as what experience would bet on. */
const bets = 3;

/** What experience would have bet on before anything was looked at; nothing without a tree. */
export function firstBets({ story }: AccountContext): string {
  const chances = chancesAtFirst(story);
  if (chances === undefined || story.findings.length === 0) return '';
  const named = [...chances]
    .filter(([id, chance]) => id !== unlisted && chance > 0.01)
    .toSorted(([, one], [, other]) => other - one)
    .slice(0, bets)
    .map(([id]) => causeIn(story, id, 0));
  const [first, ...others] = named;
  if (first === undefined || others.length === 0) return '';
  return `Going by experience the first bet was ${[first, ...others].join(', then ')}.`;
}
