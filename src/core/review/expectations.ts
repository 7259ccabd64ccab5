import { isAsExpected } from '../session/expecting/expected.ts';
import type { Decision } from './decision.ts';

/** One expectation that was answered: whether it came true, and how likely the belief then made it. */
type Answered = { readonly right: boolean; readonly likely: number | undefined };

/** What somebody said to expect, counted. */
export type Expectations = {
  readonly said: number;
  readonly right: number;
  /** How many would come true by the belief at those times, of the `weighed` ones. */
  readonly foreseen: number;
  readonly weighed: number;
  /** Of those that the belief made likelier than not, and of the others: said, and come true. */
  readonly likely: { readonly said: number; readonly right: number };
  readonly unlikely: { readonly said: number; readonly right: number };
};

/** So many expectations make a line about how often somebody is right. */
export const enoughExpectations = 10;

export function expectationsOf(decisions: readonly Decision[]): Expectations {
  const answered = decisions.flatMap(({ expected, finding, foreseen }): readonly Answered[] =>
    expected === undefined || finding === undefined
      ? []
      : [
          {
            right: isAsExpected(finding, { result: expected }),
            likely: foreseen.get(expected),
          },
        ],
  );
  const weighed = answered.flatMap(({ right, likely }) =>
    likely === undefined ? [] : [{ right, likely }],
  );
  const count = (some: readonly { readonly right: boolean }[]) => ({
    said: some.length,
    right: some.filter(({ right }) => right).length,
  });
  return {
    ...count(answered),
    foreseen: weighed.reduce((sum, { likely }) => sum + likely, 0),
    weighed: weighed.length,
    likely: count(weighed.filter(({ likely }) => likely >= 0.5)),
    unlikely: count(weighed.filter(({ likely }) => likely < 0.5)),
  };
}
