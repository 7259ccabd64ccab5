import type { PayloadOf } from '../../session/event.ts';
import type { Finding } from '../../session/story.ts';
import type { Block } from '../block.ts';
import { sentence } from '../words/wording.ts';

/** The ways in which a finding may begin; the teller takes one that the sentence before did not begin with. */
export const forms = ['person', 'next', 'thing', 'then'] as const;
export type Form = (typeof forms)[number];

/** How a clause is to be said: with its time or without, what it was to tell, and how it begins. */
export type Phrasing = {
  /** `At 10:48`, or empty. */
  readonly when: string;
  /** `to tell the points from the condenser`, or empty. */
  readonly why?: string;
  readonly form?: Form;
  /** What a person noted of the finding. */
  readonly noted?: string;
};

/** One thing worth telling of the way; several are put together to paragraphs afterwards. */
export type Clause = {
  readonly n: number;
  readonly at: string;
  /** Clauses of one kind may be told together; what is only beside the way is left out of a long story. */
  readonly kind:
    | 'finding'
    | 'quiet finding'
    | 'taking off'
    | 'closing'
    | 'repair'
    | 'proof'
    | 'note'
    | 'beside'
    | 'aside'
    | 'other';
  /** Begins a new paragraph. */
  readonly begins: boolean;
  readonly finding?: Finding;
  /** A part that came off. */
  readonly taken?: PayloadOf<'part-off'>;
  /** A part put back. */
  readonly closed?: string;
  /** A person's own words, as they were noted. */
  readonly noted?: string;
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
  ...more,
  phrase: ({ when }) => (when === '' ? sentence(text) : sentence(`${when} ${text}`)),
});
