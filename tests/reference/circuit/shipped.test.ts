import { expect, test } from 'vitest';
import { networkOf } from '../../../src/core/feed/circuit.ts';
import { pathsOf } from '../../../src/core/feed/fitted.ts';
import { waysOf } from '../../../src/core/feed/fault.ts';
import type { Change, Setting } from '../../../src/core/feed/path.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import type { Facts } from '../../../src/core/tree/facts.ts';
import type { Feed } from '../../../src/core/tree/feed-model.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { shippedTrees } from '../../helpers/library.ts';
import { difference, engine } from './simulator.ts';

/** Each feed as every kind of vehicle has it that its parts tell apart. */
const withFeed = shippedTrees().flatMap((tree) => {
  const { feed } = tree;
  return feed === undefined
    ? []
    : kindsOf(feed).map((facts) => {
        const name = [tree.id, ...Object.values(facts)].join(', ');
        return [name, { ...tree, feed: pathsOf(feed, facts)() }] as const;
      });
});

/** The values of the facts that parts of a path hang on, each with each. */
function kindsOf(feed: Feed): readonly Facts[] {
  const values = new Map<string, Set<string>>();
  for (const { when } of [...feed.spans, ...feed.loads, ...Object.values(feed.stations)])
    for (const [fact, wanted] of Object.entries(when ?? {}))
      values.set(fact, new Set([...(values.get(fact) ?? []), ...[wanted].flat()]));
  return [...values].reduce<readonly Facts[]>(
    (kinds, [fact, all]) =>
      kinds.flatMap((kind) => [...all].map((one) => ({ ...kind, [fact]: one }))),
    [{}],
  );
}

/** The load sets that the checks of a tree name, each once. */
function settingsOf({ checks }: Tree): readonly Setting[] {
  const sets = Object.values(checks).flatMap(({ feed }) => (feed === undefined ? [] : [feed.load]));
  return [...new Map(sets.map((on) => [on.join(' '), { on }])).values()];
}

/** Sound, and each cause at the middle of its spread and (where it can be) open. */
function changesOf({ feed, causes }: Tree): readonly (readonly Change[])[] {
  if (feed === undefined) return [];
  const faults = Object.values(causes).flatMap((cause) => {
    const ways = waysOf(feed, cause);
    const open = ways.filter(({ change }) => change.kind === 'open');
    return [ways[Math.floor(ways.length / 2)], open[0]].flatMap((way) =>
      way === undefined ? [] : [[way.change]],
    );
  });
  return [[], ...faults];
}

test.skipIf(engine === undefined).each(withFeed)(
  'the feed of %s under every fault and load: volts as ngspice has them, within a millionth',
  async (_, tree) => {
    const apart: number[] = [];
    for (const setting of settingsOf(tree))
      for (const changes of changesOf(tree)) {
        if (tree.feed === undefined) continue;
        const { regime } = solveFeed(tree.feed, setting, changes);
        apart.push(await difference(networkOf(tree.feed, setting, regime, changes)));
      }

    expect(apart.length).toBeGreaterThan(5);
    expect(Math.max(...apart)).toBeLessThan(1e-6);
  },
  120_000,
);
