import type { Problem } from '../../problem.ts';
import type { Result } from '../model.ts';
import { unknown, type Named } from '../unknown.ts';

/** Where a result leads. */
export type Next =
  | { readonly kind: 'check'; readonly check: string }
  | { readonly kind: 'cause'; readonly cause: string }
  | { readonly kind: 'tree'; readonly tree: string }
  | { readonly kind: 'stop' };

/** Reads a result's `next`: `CHECK`, `cause:ID`, `tree:ID` or `stop`. */
export function parseNext(next: string): Next {
  if (next === 'stop') return { kind: 'stop' };
  if (next.startsWith('cause:')) return { kind: 'cause', cause: next.slice('cause:'.length) };
  if (next.startsWith('tree:')) return { kind: 'tree', tree: next.slice('tree:'.length) };
  return { kind: 'check', check: next };
}

/** Every place that a result may lead to, by whatever is known. */
export const nextsOf = ({ next, leads = [] }: Result): readonly string[] => [
  ...leads.map(({ go }) => go),
  ...(next === undefined ? [] : [next]),
];

/** Where a result leads now: the first lead whose checks have all shown what it asks for, else `next`. */
export function nextOf(
  { next, leads = [] }: Result,
  shown: (check: string) => string | undefined,
): string | undefined {
  const lead = leads.find((one) =>
    Object.entries(one.if).every(([check, results]) => results.includes(shown(check) ?? '')),
  );
  return lead?.go ?? next;
}

/** What is wrong with where a result leads: a check or a cause that the tree has not. */
export function strayNext(
  { checks, causes }: { readonly checks: Named; readonly causes: Named },
  text: string,
): Omit<Problem, 'file'> | undefined {
  const next = parseNext(text);
  if (next.kind === 'check' && !Object.hasOwn(checks, next.check))
    return {
      ...unknown('check', next.check, '', checks),
      ...(Object.hasOwn(causes, next.check) && {
        mend: `A cause is called so: "cause:${next.check}".`,
      }),
    };
  if (next.kind === 'cause' && !Object.hasOwn(causes, next.cause))
    return {
      ...unknown('cause', next.cause, '', causes),
      ...(Object.hasOwn(checks, next.cause) && { mend: `A check is called so: "${next.cause}".` }),
    };
  return undefined;
}
