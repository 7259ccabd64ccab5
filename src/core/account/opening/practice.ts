import { isPractice } from '../../session/header/is-practice.ts';
import { currentLeg, type Story } from '../../session/story.ts';
import { count } from '../../text.ts';
import { sum } from '../../sum.ts';
import { revealedWords } from '../clauses/practice.ts';
import { sentence } from '../words/wording.ts';

/** What stands first in everything made of a practice session; undefined for a job. */
export function practiceLine(story: Story): string | undefined {
  if (!isPractice(story.header)) return undefined;
  const { hints, revealed, header } = story;
  const set = header.practice?.set;
  const from = set === undefined ? '' : `, number ${set.number} of the set "${set.name}"`;
  const told =
    revealed === undefined
      ? 'What is hidden has not been told yet.'
      : sentence(revealedWords(story, revealed));
  const paid = sum(hints.map(({ minutes }) => minutes));
  const hinted =
    hints.length === 0 ? '' : ` ${count(hints.length, 'hint')}, ${count(paid, 'minute')}.`;
  return `PRACTICE on a hidden fault of "${currentLeg(story).tree.title}"${from}: no job on a vehicle, and its minutes are the planned ones. ${told}${hinted}`;
}
