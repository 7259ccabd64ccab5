import { printParseErrorCode, type ParseError } from 'jsonc-parser';
import type { Problem } from '../../problem.ts';
import { unclosedIn } from './brackets.ts';
import { linesOf } from './place.ts';

type Told = Pick<Problem, 'message' | 'mend'>;
type Trouble = Told & { readonly line: number; readonly column: number };

/** What stopped the reading of a text, said so that a person finds it: the first such thing alone. */
export function troubleIn(text: string, errors: readonly ParseError[]): Trouble {
  const [first] = errors;
  const at = linesOf(text);
  if (first === undefined || text.trim() === '')
    return {
      line: 1,
      column: 1,
      message: 'The file is empty.',
      mend: '"droplight trees new" makes a tree to begin with.',
    };
  const { offset, ...told } = found(text, first);
  return { ...at(offset), ...told };
}

type Found = Told & { readonly offset: number };

function found(text: string, error: ParseError): Found {
  const { offset, length } = error;
  const code = printParseErrorCode(error.error);
  const token = text.slice(offset, offset + length);
  const before = text.slice(0, offset).trimEnd();
  const bracket = maybeBracket(code, token, text, offset) ? unclosedIn(text) : undefined;
  if (bracket !== undefined) return bracket;
  if (code === 'InvalidSymbol') return { offset, ...strangeSign(token, text, offset) };
  if (decimalComma.test(before.slice(-3) + token) && code !== 'ColonExpected')
    return { offset: before.lastIndexOf(','), ...commaInNumber };
  if (code === 'UnexpectedEndOfString' && isAtEnd(text, offset + length)) return cutOff(text);
  if (code === 'CommaExpected' || code === 'EndOfFileExpected')
    return quoteInside(before, text, offset) ?? { offset: before.length, ...missing.comma };
  return { offset, ...(byCode[code] ?? missing.value) };
}

const isAtEnd = (text: string, offset: number): boolean => offset >= text.trimEnd().length;

/** Whether a bracket may be the reason: one that closes too early, too late or not at all. */
const maybeBracket = (code: string, token: string, text: string, offset: number): boolean =>
  bracketCodes.has(code) || /^[\]}]/.test(token) || isAtEnd(text, offset);

const bracketCodes: ReadonlySet<string> = new Set([
  'CloseBraceExpected',
  'CloseBracketExpected',
  'EndOfFileExpected',
]);

/** `0,9`: a digit, a comma and a digit with no space between. */
const decimalComma = /\d,\d/;

const commaInNumber: Told = {
  message: 'A number has a decimal comma.',
  mend: 'Write the decimal point: 0.5, not 0,5.',
};

const missing = {
  comma: { message: 'A comma is missing here.', mend: 'Add it.' },
  value: {
    message: 'A value is missing here.',
    mend: 'Give the key its value, or take the key or the comma out.',
  },
} as const;

const byCode: Readonly<Record<string, Told>> = {
  ColonExpected: { message: 'The colon between a key and its value is missing.', mend: 'Add it.' },
  PropertyNameExpected: {
    message: 'A key in quotes should stand here.',
    mend: 'Put the key into quotes, or take out the comma before.',
  },
  UnexpectedEndOfString: {
    message: 'The text that begins here has no closing quote on its line.',
    mend: 'End it with a quote; a text stands on one line.',
  },
  UnexpectedEndOfComment: {
    message: 'The comment that begins here does not end.',
    mend: 'End it with */.',
  },
  UnexpectedEndOfNumber: {
    message: 'The number does not go on behind its point.',
    mend: 'Add the digit, or take the point out.',
  },
  InvalidCharacter: {
    message: 'The text that begins here holds a tab or another control character.',
    mend: 'Put a space in its place.',
  },
  InvalidEscapeCharacter: {
    message: 'The text that begins here holds a backslash.',
    mend: 'Write two of them, or another sign.',
  },
  InvalidUnicode: {
    message: 'The text that begins here holds a backslash with "u" and no number behind it.',
    mend: 'Write the letter itself.',
  },
};

const cutOff = (text: string): Found => ({
  offset: text.trimEnd().length,
  message: 'The file ends within a text: it may be cut off.',
  mend: 'Add what is missing.',
});

/** Quotes that word processors put in the place of the straight ones. */
const curly = /^[\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019\u201a\u2033\uff02]/;

const wordsForUs: Readonly<Record<string, string>> = {
  True: 'true',
  TRUE: 'true',
  yes: 'true',
  False: 'false',
  FALSE: 'false',
  no: 'false',
};

/** A sign or a bare word where none can stand. */
function strangeSign(token: string, text: string, offset: number): Told {
  if (curly.test(token))
    return {
      message: 'Curly quotes stand here in the place of straight ones.',
      mend: 'Use the straight quote ("); a plain text editor types it.',
    };
  if (token.startsWith("'"))
    return { message: 'Single quotes stand here.', mend: 'Use double quotes (").' };
  if (text[offset - 1] === '"') return insideQuote;
  if (/^[.+]\d/.test(token))
    return { message: `"${token}" is no number here.`, mend: 'Write it as 0.5, with its zero.' };
  if (token === ';') return { message: 'A semicolon stands here.', mend: 'Use a comma.' };
  if (token.startsWith('='))
    return { message: 'An equals sign stands here.', mend: 'Use a colon between key and value.' };
  if (/^\s*:/.test(text.slice(offset + token.length)))
    return { message: `The key ${token} has no quotes.`, mend: `Write "${token}".` };
  const meant = wordsForUs[token];
  if (meant !== undefined) return { message: `${token} is not known.`, mend: `Write ${meant}.` };
  if (/^[a-z]/i.test(token))
    return {
      message: `The word ${token.slice(0, 30)} has no quotes.`,
      mend: 'Put texts into quotes; a number is written in digits.',
    };
  return {
    message: `This sign cannot stand here: ${token.slice(0, 10)}`,
    mend: 'Take it out, or put the text into quotes.',
  };
}

const insideQuote: Told = {
  message: 'A quote within the text ends it too early.',
  mend: 'Write \\" for a quote within a text, or use single ones there.',
};

/** A text that goes on behind its closing quote on the same line. */
function quoteInside(before: string, text: string, offset: number): Found | undefined {
  const between = text.slice(before.length, offset);
  if (!before.endsWith('"') || between.includes('\n') || text[offset] !== '"') return undefined;
  return between === '' ? { offset: before.length - 1, ...insideQuote } : undefined;
}
