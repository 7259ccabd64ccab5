import type { ActionOf } from '../action.ts';
import { baselineLines } from '../baseline/baseline.ts';
import type { Story } from '../story.ts';
import { accept, refuse, refuseUnknown, type Ruling } from './ruling.ts';

/** A thing of the shop's baseline is taken down, or passed over with a reason. */
export function baseline({ item, seen, reason }: ActionOf<'baseline'>, story: Story): Ruling {
  const lines = baselineLines(story).filter(({ kind }) => kind === 'item');
  const line = lines.find(({ id }) => id === item);
  if (line === undefined)
    return refuseUnknown(
      'baseline',
      item,
      lines.map(({ id }) => id),
    );
  if (reason !== undefined && reason.trim() === '')
    return refuse('no-reason', 'It is passed over with a reason.', 'Say why in a few words.');
  if (reason === undefined && line.first !== undefined)
    return refuse(
      'baseline-held',
      `"${line.say}" waits: first "${line.first}"`,
      'Make that check first, or pass this over with a reason.',
      item,
    );
  return accept([
    reason === undefined
      ? { kind: 'baseline', item, ...(seen !== undefined && { seen }) }
      : { kind: 'baseline', item, reason },
  ]);
}
