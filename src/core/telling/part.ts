/** A part of a page that is read aloud: a heading, a paragraph, a list of sentences. */
export type Part =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  | { readonly kind: 'say'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] };

export const heading = (level: 1 | 2 | 3, text: string): Part => ({ kind: 'heading', level, text });
export const say = (text: string): Part => ({ kind: 'say', text });

/** A list, or nothing where it has no entries. */
export const list = (items: readonly string[]): readonly Part[] =>
  items.length === 0 ? [] : [{ kind: 'list', items }];
