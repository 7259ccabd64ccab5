/** The account in pieces, before anything is decided about how it is written down. All text is plain. */
export type Block =
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string }
  /** A paragraph that begins with a word in bold: `Complaint. ...`. */
  | { readonly kind: 'named'; readonly name: string; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly numbered: boolean }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  /** Something that can hurt: set apart, and near the step it belongs to. */
  | { readonly kind: 'warning'; readonly text: string }
  | { readonly kind: 'picture'; readonly file: string; readonly caption: string };
