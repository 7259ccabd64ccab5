import { asClause, joined } from '../words/wording.ts';

/** A verb form for one thing, and for several: `was` and `were`. */
export type Forms = readonly [one: string, several: string];

export const was: Forms = ['was', 'were'];

/** Nouns that end in s and are one thing all the same; of the trade, common practice, no source. */
const oneThing = /(ss|us|is|lens|gas|across|chassis)$/i;

/**
 * Whether a thing inside a sentence is several: `the points`, `both lamps`, `the oil and the water`.
 * The head noun tells, before the first preposition, or the number word in front of it.
 */
export function isSeveral(thing: string): boolean {
  const said = asClause(thing);
  if (/^(?:both|all|these|those|two|three|four|five|six|several|\d*[02-9])\s/.test(said))
    return true;
  if (/^(?:an?|one|each|every|what|how|where|when|which|whether)\s/.test(said)) return false;
  const [head = said] = said.split(afterHead);
  if (/\sand\s/.test(head)) return true;
  return head.endsWith('s') && !oneThing.test(head) && !head.endsWith("'s");
}

/** What ends the head of a noun phrase: a comma, a preposition, a clause, what was done to it. */
const afterHead =
  /,|\s(?:of|at|on|in|from|to|by|with|without|across|under|over|for|while|after|before|along|through|between|that|it|straight|as|into|when|until|against|lost|swapped|turned|wiped|opened|used|held|running|ten minutes)\b/;

/** A verb as its subject wants it: `the points were`, `the coil was`; several subjects want the second. */
export const agree = (things: readonly string[], [one, several]: Forms): string =>
  things.length > 1 || isSeveral(things[0] ?? '') ? several : one;

/** Subjects and their verb: `the points and the coil were`. */
export const subject = (things: readonly string[], forms: Forms = was): string =>
  `${joined(things)} ${agree(things, forms)}`;

/** A chance as people say it of vehicles: `one vehicle in seven`, `hardly one vehicle in fifty`. */
export function oneIn(chance: number): string {
  const many = Math.round(1 / Math.max(chance, 0.001));
  if (many > 50) return 'hardly one vehicle in fifty';
  return `about one vehicle in ${inWords[many] ?? String(many)}`;
}

const inWords = 'none one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** The words a sentence begins with, by which two of them are said to begin alike. */
export const startOf = (sentence: string): string =>
  sentence
    .trim()
    .split(/[\s,:;]+/)
    .slice(0, 1)
    .join(' ')
    .toLowerCase();

/** Words as a reader counts them: runs of letters and figures. */
export const wordCount = (text: string): number =>
  text.match(/[\p{L}\p{N}][\p{L}\p{N}.,'’-]*/gu)?.length ?? 0;
