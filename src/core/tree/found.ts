import { groupedTitle } from './groups.ts';
import { hasWord } from './shop-search.ts';
import type { Tree } from './model.ts';

/** What a complaint is found by. */
export type FoundBy = Pick<Tree, 'id' | 'title' | 'group' | 'complaint' | 'causes'>;

/**
 * The complaints that words of a person find, the nearest first: those whose title has all that was
 * typed, those that have it in what is said of them, those that have each word in a cause too. Only
 * where there is none, those that have some of the words: the more telling a word (fewer complaints
 * have it), the more it counts.
 */
export function complaintsFound<T extends FoundBy>(
  trees: readonly T[],
  typed: string,
): readonly T[] {
  const words = typed
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== '');
  if (words.length === 0) return trees;
  const whole = [titleOf, saidOf]
    .map((textOf) => trees.filter((tree) => words.every((word) => textOf(tree).includes(word))))
    .concat([trees.filter((tree) => words.every((word) => hasStem(allOf(tree), word)))])
    .flat();
  return whole.length > 0 ? [...new Set(whole)] : nearest(trees, words);
}

/** The complaints that have words in common with what was typed, those with the most telling ones first. */
function nearest<T extends FoundBy>(trees: readonly T[], words: readonly string[]): readonly T[] {
  const telling = words
    .filter((word) => word.length >= leastLetters)
    .map((word) => new Set(trees.filter((tree) => hasStem(allOf(tree), word))))
    .filter((found) => found.size <= trees.length / 3);
  const weight = (tree: T): number =>
    telling.reduce((sum, found) => sum + (found.has(tree) ? 1 / found.size : 0), 0);
  return trees
    .map((tree) => ({ tree, weight: weight(tree) }))
    .filter((one) => one.weight > 0)
    .toSorted((one, other) => other.weight - one.weight)
    .map(({ tree }) => tree);
}

/** Shorter words stand in nearly every sentence. */
const leastLetters = 4;

const titleOf = (tree: FoundBy): string => groupedTitle(tree).toLowerCase();

const saidOf = (tree: FoundBy): string =>
  `${titleOf(tree)} ${tree.complaint.say} ${tree.id.replaceAll('-', ' ')}`.toLowerCase();

const allOf = (tree: FoundBy): string =>
  [
    saidOf(tree),
    ...Object.values(tree.causes).map(({ name, short = '' }) => `${name} ${short}`),
  ].join(' ');

/** Whether a text has the word or another form of it: "wipers" is found by "wiper", "stalls" by "stalling". */
const hasStem = (text: string, word: string): boolean => hasWord(text, stemOf(word));

/** A word without the ending of its form; no rule of grammar, enough to find by. */
const stemOf = (word: string): string => {
  const stem = word.replace(/ies$/, 'y').replace(/(ing|ed|es|s)$/, '');
  return stem.length >= leastLetters ? stem : word;
};
