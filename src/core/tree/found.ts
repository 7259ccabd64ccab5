import MiniSearch from 'minisearch';
import { groupedTitle } from './groups.ts';
import type { Tree } from './model.ts';
import { tellingWords } from './owner-words.ts';

/** What a complaint is found by. */
export type FoundBy = Pick<Tree, 'id' | 'title' | 'group' | 'complaint' | 'causes'>;

/**
 * The complaints that words of a person find, the nearest first. Each of its phrases (title, what owners
 * say, names of causes) is weighed by itself, so that one which is all in what was typed counts most;
 * a word counts the more the fewer phrases have it (BM25+), a slip of a letter and a word begun count less.
 */
export function complaintsFound<T extends FoundBy>(
  trees: readonly T[],
  typed: string,
): readonly T[] {
  if (typed.trim() === '') return trees;
  const weights = new Map<number, number>();
  for (const { id, score } of indexOf(trees).search(typed)) {
    const at = placeOf(String(id));
    const best = weights.get(at) ?? 0;
    weights.set(at, Math.max(best, score) + furtherPhrase * Math.min(best, score));
  }
  const least = Math.max(0, ...weights.values()) * faint;
  return [...weights]
    .filter(([, weight]) => weight >= least)
    .toSorted((one, other) => other[1] - one[1] || one[0] - other[0])
    .flatMap(([at]) => trees[at] ?? []);
}

// The numbers below: judgment, no source; found-shipped.test holds them to what owners type.
/** What a second phrase of the same complaint adds to its best. */
const furtherPhrase = 0.1;

/** What is so far behind the best is not what was meant. */
const faint = 0.2;

/** What a phrase counts by where it stands. */
const kinds = { title: 1.4, say: 1, heard: 1.4, cause: 0.5 } as const;

type Phrase = { readonly id: string; readonly text: string };

const phrasesOf = (tree: FoundBy, at: number): readonly Phrase[] => {
  const phrase = (kind: keyof typeof kinds, text: string, index = 0): Phrase => ({
    id: `${at} ${kind} ${index}`,
    text,
  });
  return [
    phrase('title', `${groupedTitle(tree)} ${tree.id.replaceAll('-', ' ')}`),
    phrase('say', tree.complaint.say),
    ...(tree.complaint.heard ?? []).map((text, index) => phrase('heard', text, index)),
    ...Object.values(tree.causes).map(({ name, short = '' }, index) =>
      phrase('cause', `${name} ${short}`, index),
    ),
  ];
};

/** Letters that may be wrong in a word of so many. */
function slipsTaken(letters: number): number | false {
  if (letters < 4) return false;
  return letters < 8 ? 1 : 2;
}

const placeOf = (id: string): number => Number.parseInt(id, 10);

const kindOf = (id: string): keyof typeof kinds =>
  Object.keys(kinds).find((kind): kind is keyof typeof kinds => id.includes(kind)) ?? 'cause';

/** The index made last: the same trees are asked at every key. */
const made = new WeakMap<FoundBy, { trees: readonly FoundBy[]; index: MiniSearch<Phrase> }>();

function indexOf(trees: readonly FoundBy[]): MiniSearch<Phrase> {
  const [first] = trees;
  const kept = first && made.get(first);
  if (kept?.trees.length === trees.length && trees.every((tree, at) => tree === kept.trees[at]))
    return kept.index;
  const index = new MiniSearch<Phrase>({
    fields: ['text'],
    tokenize: (text) => [...tellingWords(text)],
    processTerm: (term) => term,
    searchOptions: {
      prefix: (term) => term.length >= 3,
      fuzzy: (term) => slipsTaken(term.length),
      boostDocument: (id) => kinds[kindOf(String(id))],
    },
  });
  index.addAll(trees.flatMap(phrasesOf));
  if (first !== undefined) made.set(first, { trees, index });
  return index;
}
