/** A run of plain text, or text that leads to a heading of the same account. */
export type Inline = string | { readonly text: string; readonly to: string };
export type Words = string | readonly Inline[];

/** The account in pieces, before anything is decided about how it is written down. All text is plain. */
export type Block =
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string; readonly level: 2 | 3 }
  | { readonly kind: 'paragraph'; readonly text: Words }
  | { readonly kind: 'list'; readonly items: readonly Words[]; readonly numbered: boolean }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  /** Something that can hurt: set apart, and near the step it belongs to. */
  | { readonly kind: 'warning'; readonly name: string; readonly text: string }
  /** A long note in its own lines. */
  | { readonly kind: 'quote'; readonly lines: readonly string[] }
  /** What stands in the margin for a mentor. */
  | { readonly kind: 'margin'; readonly text: Words }
  | { readonly kind: 'picture'; readonly file: string; readonly caption: string }
  /** A Mermaid chart; its text has come out of `wayMermaid`. */
  | { readonly kind: 'chart'; readonly text: string };

export const heading = (text: string, level: 2 | 3 = 2): Block => ({
  kind: 'heading',
  text,
  level,
});

export const paragraph = (text: Words): Block => ({ kind: 'paragraph', text });
