import { parseMoney, times, totalsOf, type Money } from '../../trade/money/money.ts';
import { readPart, saysNone, type Part, type PartUse } from './parts.ts';
import type { Story } from '../story.ts';

/** One line of the list of parts. */
export type PartLine = {
  /** The event that says it. */
  readonly n: number;
  readonly name: string;
  readonly count: number;
  /** The price of one as typed; undefined where none was noted. */
  readonly each: string | undefined;
  /** What they cost together; undefined without a price, and where it cannot be read to the smallest unit. */
  readonly sum: Money | undefined;
  readonly use: PartUse;
  /** The cause in whose repair it was used; undefined for what was bought apart. */
  readonly cause: string | undefined;
};

/** What the job has cost, as far as it was entered. */
export type Costs = {
  readonly lines: readonly PartLine[];
  /** Of the lines that count, by currency. */
  readonly parts: readonly Money[];
  readonly withoutPrice: number;
  /** Prices and costs as typed that could not be read, and so do not count. */
  readonly notCounted: readonly string[];
  /** What was noted as the cost of a repair in all, by currency. */
  readonly repairs: readonly Money[];
  /** What was spent: of each repair its cost in all, or else its parts; and what was bought apart. */
  readonly spent: readonly Money[];
};

type Spending = Pick<Story, 'header' | 'repairs' | 'bought'>;

/** All parts and costs of a job: only what was entered. */
export function costsOf({ header: { currency = '' }, repairs, bought }: Spending): Costs {
  const line = (of: Pick<PartLine, 'n' | 'cause'>, part: Part, use: PartUse): PartLine => {
    const { name, count = 1, each } = part;
    const price = each === undefined ? undefined : parseMoney(each, currency);
    return { ...of, name, count, each, use, sum: price && times(price, count) };
  };
  const jobs = repairs.map(({ n, cause, parts, cost }) => ({
    cost,
    all: cost === undefined ? undefined : parseMoney(cost, currency),
    lines: (saysNone(parts) ? [] : parts.map(readPart)).map((part) =>
      line({ n, cause }, part, part.use ?? 'fitted'),
    ),
  }));
  const apart = bought.map(({ n, part: name, count, price: each, use }) =>
    line({ n, cause: undefined }, { name, count, each }, use),
  );
  const lines = [...jobs.flatMap((job) => job.lines), ...apart];
  return {
    lines,
    parts: totalsOf(sumsOf(lines)),
    withoutPrice: lines.filter(({ each }) => each === undefined).length,
    notCounted: [
      ...lines.flatMap(({ each, sum }) => (sum === undefined ? (each ?? []) : [])),
      ...jobs.flatMap(({ cost, all }) => (all === undefined ? (cost ?? []) : [])),
    ],
    repairs: totalsOf(jobs.flatMap(({ all }) => all ?? [])),
    spent: totalsOf([...jobs.flatMap((job) => job.all ?? sumsOf(job.lines)), ...sumsOf(apart)]),
  };
}

const sumsOf = (lines: readonly PartLine[]): readonly Money[] =>
  lines.flatMap(({ sum }) => sum ?? []);
