import { heading, paragraph, type Block, type Inline, type Words } from '../block.ts';
import { glossaryWords } from '../words/glossary-words.ts';
import { headingSlugs } from '../words/slugs.ts';

const terms = Object.keys(glossaryWords);
const pattern = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:${terms
    .toSorted((one, other) => other.length - one.length || (one < other ? -1 : 1))
    .join('|')})(?![\\p{L}\\p{N}])`,
  'giu',
);

const termOf = (found: string): string | undefined =>
  terms.find((term) => term === found.toLowerCase());

/** Words that mean something else in other places, and what stands before them where they mean this. */
const onlyAfter: Readonly<Record<string, RegExp>> = {
  points: /(?:^|\b)the $/i,
};

/** Whether a trade word that was found means what the glossary tells of it. */
const isMeant = (term: string, before: string): boolean => onlyAfter[term]?.test(before) ?? true;

/**
 * Links each trade word where it first stands in running text, and adds what they mean as a
 * section of its own.
 */
export function withGlossary(blocks: readonly Block[]): readonly Block[] {
  const used = usedTerms(blocks);
  if (used.length === 0) return blocks;
  const section = sectionOf(used);
  const slugs = headingSlugs([...blocks, ...section]);
  const linker = new Linker(
    new Map(used.map((term, index) => [term, slugs.at(index - used.length) ?? ''])),
  );
  return [...blocks.map((block) => linker.block(block)), ...section];
}

const sectionOf = (used: readonly string[]): readonly Block[] => [
  heading('Words'),
  ...used.flatMap((term): Block[] => [heading(term, 3), paragraph(glossaryWords[term] ?? '')]),
];

/** Running text of a block, in which words are linked; headings, lists, tables and cautions stay bare. */
const runningText = (block: Block): readonly Words[] =>
  block.kind === 'paragraph' ? [block.text] : [];

function usedTerms(blocks: readonly Block[]): readonly string[] {
  const used = new Set<string>();
  for (const words of blocks.flatMap(runningText))
    for (const part of typeof words === 'string' ? [words] : [])
      for (const { 0: found, index } of part.matchAll(pattern)) {
        const term = termOf(found);
        if (term !== undefined && isMeant(term, part.slice(0, index))) used.add(term);
      }
  return [...used].toSorted();
}

/** Keeps which words are still to be linked. */
class Linker {
  readonly #left: Map<string, string>;

  constructor(slugs: ReadonlyMap<string, string>) {
    this.#left = new Map(slugs);
  }

  block(block: Block): Block {
    if (this.#left.size === 0) return block;
    if (block.kind === 'paragraph') return { ...block, text: this.#words(block.text) };
    return block;
  }

  #words(words: Words): Words {
    if (typeof words !== 'string') return words;
    const parts: Inline[] = [];
    let from = 0;
    for (const match of words.matchAll(pattern)) {
      const term = termOf(match[0]);
      const to = term === undefined ? undefined : this.#left.get(term);
      if (term === undefined || to === undefined) continue;
      if (!isMeant(term, words.slice(0, match.index))) continue;
      this.#left.delete(term);
      parts.push(words.slice(from, match.index), { text: match[0], to });
      from = match.index + match[0].length;
    }
    return from === 0 ? words : [...parts, words.slice(from)];
  }
}
