import { linesOf } from './place.ts';
import { closes, kind, opens, tokensOf, type Token } from './tokens.ts';

type Crooked = { readonly offset: number; readonly message: string; readonly mend: string };

const indentAt = (text: string, offset: number): string =>
  /^[ \t]*/.exec(text.slice(text.lastIndexOf('\n', offset - 1) + 1))?.[0] ?? '';

const startsLine = (text: string, { offset }: Token): boolean =>
  text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset).trim() === '';

/**
 * The first bracket that is not closed as its line's indent says, in a text whose brackets do not
 * fit: one that closes too early, or one that is still open where a bracket of an outer one follows.
 * Undefined where indents tell nothing.
 */
export function unclosedIn(text: string): Crooked | undefined {
  const at = linesOf(text);
  const open: Token[] = [];
  for (const token of tokensOf(text)) {
    if (opens(token)) open.push(token);
    if (!closes(token)) continue;
    const opener = open.pop();
    if (opener === undefined)
      return {
        offset: token.offset,
        message: 'This bracket closes nothing: one too many stands here or above.',
        mend: 'Take it out, or the one that closes too early.',
      };
    const fits = (token.kind === kind.closeBrace) === (opener.kind === kind.openBrace);
    const same = indentAt(text, token.offset) === indentAt(text, opener.offset);
    if (fits && (!startsLine(text, token) || same)) continue;
    return mismatch(token.value, { line: at(opener.offset).line, value: opener.value }, token);
  }
  const last = open.at(-1);
  if (last === undefined) return undefined;
  return {
    offset: text.trimEnd().length,
    message: `The file ends here, and the ${last.value} of line ${at(last.offset).line} is still open: it may be cut off.`,
    mend: 'Close it, or add what is missing.',
  };
}

const mismatch = (
  sign: string,
  opener: { readonly line: number; readonly value: string },
  { offset }: Token,
): Crooked => ({
  offset,
  message: `By its indent this ${sign} does not belong to the ${opener.value} of line ${opener.line}, which it closes.`,
  mend: 'Look between the two for a bracket that is missing or one too many.',
});
