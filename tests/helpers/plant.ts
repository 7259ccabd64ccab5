import type { Parsed } from '../../src/core/problem.ts';
import { smallTreeData } from './tree.ts';

/** A place in the small tree and what stands there instead. */
export type Fault = readonly [path: string, value: unknown];

type Branch = Record<string, unknown>;

/** The small tree as data with one value put elsewhere: `checks.look.results.0.next`. */
export function planted(...faults: readonly Fault[]): unknown {
  const whole: Branch = structuredClone(smallTreeData());
  for (const [path, value] of faults) {
    const steps = path.split('.');
    const last = steps.pop() ?? '';
    const owner = steps.reduce((part, step) => part[step] as Branch, whole);
    if (value === undefined) delete owner[last];
    else owner[last] = value;
  }
  return whole;
}

/** Each problem as `code path`, for tables. */
export const told = (parsed: Parsed<unknown>): readonly string[] =>
  parsed.kind === 'good' ? [] : parsed.problems.map(({ code, path }) => `${code} ${path ?? ''}`);
