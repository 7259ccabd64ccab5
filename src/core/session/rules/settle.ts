import type { ActionOf } from '../action.ts';
import { contradictions, settlings } from '../contradiction.ts';
import type { Story } from '../story.ts';
import { accept, refuse, type Ruling } from './ruling.ts';

/** Says what a contradiction comes from; nothing is rewritten, and a correction takes it back. */
export function settle({ as, n }: ActionOf<'settle'>, story: Story): Ruling {
  const open = contradictions(story);
  const found = n === undefined ? open.at(-1) : open.find(({ later }) => later.n === n);
  if (found === undefined)
    return refuse(
      'no-contradiction',
      n === undefined
        ? 'No finding contradicts an earlier one, or it was said already what that is.'
        : `Event ${n} is no finding that contradicts an earlier one and waits for an answer.`,
      open.length === 0
        ? 'There is nothing to settle.'
        : `Open: ${open.map(({ later }) => later.n).join(', ')}.`,
      ...(n === undefined ? [] : [String(n)]),
    );
  if (!settlings(found).includes(as))
    return refuse(
      'no-repair-between',
      'No repair lies between the two findings, so it cannot be new since the repair.',
      'Settle it as misread-then, misread-now or comes-and-goes.',
      as,
    );
  const { check, earlier, later } = found;
  return accept([{ kind: 'settled', as, check, earlier: earlier.n, later: later.n }]);
}
