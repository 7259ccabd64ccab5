import { bad, good, trusted, type Parsed } from '../../problem.ts';

/** One thing that is asked, and how a line of text answers it. */
export type Question<T = unknown> = {
  /** What is asked, in words of the trade. */
  readonly text: string;
  /** Lines to choose from, or that say how things stand. */
  readonly list?: readonly string[];
  /** What an answer may be. */
  readonly may: string;
  readonly example: string;
  /** What an empty line stands for; without it something must be typed. */
  readonly offered?: string;
  readonly read: (line: string) => Parsed<T>;
};

/** A part of the conversation: it asks questions, takes their answers and comes to a value. */
export type Asking<T> = Generator<Question, T, string>;

/** Asks one question; whoever runs the conversation gives only lines that `readAnswer` takes. */
export function* ask<T>(question: Question<T>): Asking<T> {
  const line = yield question;
  return trusted(readAnswer(question, line));
}

/** What a line means as the answer to a question. */
export function readAnswer<T>({ offered, read }: Question<T>, line: string): Parsed<T> {
  const said = line.trim().replace(/\s+/g, ' ');
  if (said !== '') return read(said);
  return offered === undefined ? notUnderstood('An answer is wanted here.') : read(offered);
}

/** A line that answers nothing: why, and what would. */
export const notUnderstood = (message: string, mend = 'Type "?" for what it may be.') =>
  bad({ code: 'not-understood', message, mend });

/** A text of at most so many characters, as it stands. */
export const textOf =
  (most = 400) =>
  (line: string): Parsed<string> =>
    line.length > most
      ? notUnderstood(`That is ${line.length} characters; there is room for ${most}.`)
      : good(line);
