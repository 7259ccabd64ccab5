import { createScanner } from 'jsonc-parser';

/** Kinds of a token that we ask for, as the library numbers them; it has no names at run time. */
export const kind = {
  openBrace: 1,
  closeBrace: 2,
  openBracket: 3,
  closeBracket: 4,
  colon: 6,
  text: 10,
  lineComment: 12,
  blockComment: 13,
  end: 17,
} as const;

export type Token = {
  readonly kind: number;
  readonly offset: number;
  /** One past its last character. */
  readonly end: number;
  /** A text as it reads, escapes and all; anything else as it is written. */
  readonly value: string;
  /** A text that ends with its line, or a comment that ends with the file. */
  readonly torn: boolean;
};

/** Goes through a text token by token, broken or cut off as it may be, without white space and comments. */
export function* tokensOf(text: string): Generator<Token> {
  const scanner = createScanner(text, true);
  for (;;) {
    const found: number = scanner.scan();
    if (found === kind.end) return;
    const offset = scanner.getTokenOffset();
    const error: number = scanner.getTokenError();
    yield {
      kind: found,
      offset,
      end: offset + scanner.getTokenLength(),
      value:
        found === kind.text ? scanner.getTokenValue() : text.slice(offset, scanner.getPosition()),
      torn: error === 1 || error === 2,
    };
  }
}

export const opens = (token: Token): boolean =>
  token.kind === kind.openBrace || token.kind === kind.openBracket;

export const closes = (token: Token): boolean =>
  token.kind === kind.closeBrace || token.kind === kind.closeBracket;
