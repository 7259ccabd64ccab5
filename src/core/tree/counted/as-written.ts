import type { VariedNumber } from './counted.ts';
import type { Facts } from '../facts.ts';
import type { Tree } from '../model.ts';
import { valueFor } from '../written/varying.ts';

/** The odds of a cause as its tree was written. */
export const oddsWritten = (tree: Pick<Tree, 'causes' | 'counted'>, cause: string, facts: Facts) =>
  writtenAs(tree.counted?.odds[cause], facts) ?? tree.causes[cause]?.odds ?? 0;

/** The minutes of a check as its tree was written. */
export const minutesWritten = (
  tree: Pick<Tree, 'checks' | 'counted'>,
  check: string,
  facts: Facts,
) => writtenAs(tree.counted?.checks[check]?.minutes, facts) ?? tree.checks[check]?.minutes ?? 0;

const writtenAs = (value: VariedNumber | undefined, facts: Facts): number | undefined =>
  value === undefined ? undefined : valueFor<number>(value, facts);
