import type { When } from '../tree/basics.ts';
import { unlisted, type Check, type Tree } from '../tree/model.ts';

/** A cause as it stands in a sentence. */
export const causeWords = ({ causes }: Tree, id: string): string =>
  id === unlisted
    ? 'something that is not on the list'
    : (causes[id]?.short ?? `"${causes[id]?.name ?? id}"`);

/** A check as it stands in a sentence. */
export const checkWords = ({ told, ask }: Check): string => told ?? `"${ask}"`;

/** A chance as a mechanic says it: of a hundred vehicles, so many. */
export const ofHundred = (chance: number): string => {
  const percent = 100 * chance;
  if (percent < 0.05) return 'never';
  return percent < 9.95 ? String(Number(percent.toFixed(1))) : String(Math.round(percent));
};

/** Words parted by commas, the last by "and". */
export const andWords = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;

/** On which vehicles something stands: `only where ignition is points or electronic`. */
export const whenWords = (when: When): string =>
  Object.entries(when)
    .map(([fact, values]) => `${fact} is ${[values].flat().join(' or ')}`)
    .join(' and ');

/** A sentence begins with a capital letter. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
