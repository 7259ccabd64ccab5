import type { PayloadOf } from '../../session/event.ts';
import type { Finding } from '../../session/story.ts';
import type { Block } from '../block.ts';
import { sentence } from '../words/wording.ts';

/** How a clause is to be said: with its time or without, and as which of several in turn. */
export type Phrasing = { readonly when: string; readonly turn: number };

export type Closed = { readonly part: string } | { readonly access: string };

/** One thing worth telling of the way; several are put together to paragraphs afterwards. */
export type Clause = {
  readonly n: number;
  readonly at: string;
  /** Clauses of one kind may be told together. */
  readonly kind:
    | 'finding'
    | 'quiet finding'
    | 'taking off'
    | 'closing'
    | 'repair'
    | 'proof'
    | 'aside'
    | 'other';
  /** Begins a new paragraph. */
  readonly begins: boolean;
  readonly finding?: Finding;
  /** A part that came off. */
  readonly taken?: PayloadOf<'part-off'>;
  /** A thing put back or closed up. */
  readonly closed?: Closed;
  readonly cautions: readonly string[];
  /** All its cautions are told in full before it, not those alone that can maim. */
  readonly whole?: boolean;
  readonly picture?: Block;
  readonly phrase: (phrasing: Phrasing) => string;
};

/** Plain words: `At 10:43 we noted ...`, or the same without its time. */
export const plain = (
  text: string,
  more: Partial<Omit<Clause, 'n' | 'at' | 'phrase'>> = {},
): Omit<Clause, 'n' | 'at'> => ({
  kind: 'other',
  begins: false,
  cautions: [],
  ...more,
  phrase: ({ when }) => (when === '' ? sentence(text) : sentence(`${when} ${text}`)),
});
