import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';

/** A switch that is a position of the key. */
const ofKey = /^key(-|$)/;

/** Switches on the feed path that stay open in every check: what lies behind them is always dead. */
export function lintSwitches({ feed, checks }: Tree, tell: Tell): void {
  if (feed === undefined) return;
  const closed = new Set([
    ...(feed.on ?? []),
    ...Object.values(checks).flatMap((check) => check.feed?.load ?? []),
  ]);
  for (const [index, span] of feed.spans.entries())
    if (span.switch !== undefined && !closed.has(span.switch) && !ofKey.test(span.switch))
      tell({
        code: 'switch-never-closed',
        path: `feed.spans[${index}].switch`,
        value: span.switch,
        message: `No check closes the switch "${span.switch}", so that nothing ever flows in "${span.name}".`,
        mend: 'Name it in the "load" of the checks that are made with it on, or take it out.',
      });
}
