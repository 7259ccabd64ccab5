import { fromLegs, type Expected, type Finding, type Story } from '../story.ts';

type Answers = Pick<Story, 'expected' | 'findings' | 'unsure' | 'skipped'>;

/** What is expected of a check that is not answered yet; nothing where nobody said. */
export function expectedNow(story: Answers, check: string): Expected | undefined {
  const answered = [story.findings, story.unsure, story.skipped].flatMap((answers) =>
    answers.flatMap((one) => (one.check === check ? [one.n] : [])),
  );
  return story.expected.findLast((one) => one.check === check && answered.every((n) => n < one.n));
}

/** Whether a finding is what was expected; one between two results is, where either of them was. */
export const isAsExpected = (
  { result, orResult = result }: Pick<Finding, 'result' | 'orResult'>,
  expected: Pick<Expected, 'result'>,
): boolean => expected.result === result || expected.result === orResult;

/** A result of a check in the words of its tree. */
export const expectedLabel = (story: Pick<Story, 'legs'>, check: string, result: string): string =>
  fromLegs(
    story,
    ({ tree }) => tree.checks[check]?.results.find(({ id }) => id === result)?.label,
  ) ?? 'a result not in this tree';
