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
