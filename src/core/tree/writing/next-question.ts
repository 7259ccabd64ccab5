import { bad, good, problemsOf, type Parsed } from '../../problem.ts';
import type { Shop } from '../shop.ts';
import { emptyDraft, type Draft } from './draft.ts';
import { interview } from './interview.ts';
import { readAnswer, type Question } from './question.ts';

/** Where the conversation stands after some answers. */
export type Stand =
  | { readonly kind: 'asks'; readonly question: Question; readonly draft: Draft }
  | { readonly kind: 'whole'; readonly draft: Draft };

/**
 * What is asked after these answers, or the draft once all is told. The answers are the whole truth:
 * the conversation is held anew each time. Bad where one of them is no answer, as after editing.
 */
export function nextQuestion(answers: readonly string[], shop: Shop): Parsed<Stand> {
  const draft = emptyDraft();
  const asking = interview(draft, shop);
  let step = asking.next();
  for (const [index, line] of answers.entries()) {
    if (step.done === true) break;
    const read = readAnswer(step.value, line);
    if (read.kind === 'bad')
      return bad(...problemsOf(read).map((one) => ({ ...one, line: index + 1, value: line })));
    step = asking.next(line);
  }
  return good(
    step.done === true ? { kind: 'whole', draft } : { kind: 'asks', question: step.value, draft },
  );
}

/** The answers that stand: each `back` takes back the one before it. */
export const standingAnswers = (lines: readonly string[]): readonly string[] =>
  lines.reduce<readonly string[]>(
    (standing, line) => (isBack(line) ? standing.slice(0, -1) : [...standing, line]),
    [],
  );

export const isBack = (line: string): boolean => /^\s*back\s*$/i.test(line);
