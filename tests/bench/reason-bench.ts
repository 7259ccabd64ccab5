import { makeModel } from '../../src/core/reason/belief/model.ts';
import { inputOf } from '../../src/core/reason/belief/evidence.ts';
import { optimalMinutes } from '../helpers/optimum.ts';
import { policyMinutes } from '../helpers/policy.ts';
import type { Policy } from '../helpers/policy.ts';
import { usualPrudence } from '../../src/core/reason/prudence.ts';
import { rounds } from '../../src/core/reason/advice/search.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import { accessMinutes, cut, dearRepairs, drawTree, mixed, realistic } from './models.ts';
import { advised, fixedOrder, informationPerMinute, oddsOnly } from './policies.ts';
import type { Bench } from './policies.ts';

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Without the rule that holds repairs back: what the search alone is worth against the optimum. */
const without = (bench: Bench): Bench => ({ ...bench, prudence: { ...usualPrudence, sure: 0 } });

const policies: Readonly<Record<string, (bench: Bench) => Policy>> = {
  'fixed order': () => fixedOrder,
  'odds only': () => oddsOnly,
  'information per minute': () => informationPerMinute,
  'one step': (bench) => advised(without(bench), []),
  'depth 2': (bench) => advised(without(bench), rounds.slice(0, 1)),
  'depth 3, no rule': (bench) => advised(without(bench)),
  'depth 3, as it is': (bench) => advised(bench),
};

function ratios(trees: readonly Tree[], name: string): void {
  const all: Record<string, number[]> = {};
  let [solving, solved] = [0, 0];
  for (const tree of trees) {
    const bench = { model: makeModel(tree), accesses: accessMinutes, prudence: usualPrudence };
    const input = inputOf(bench.model, { findings: [], repairs: [], accesses: bench.accesses });
    if (input.kind === 'bad') throw new Error(JSON.stringify(input.problems));
    const before = performance.now();
    const best = optimalMinutes(input.value);
    solving = Math.max(solving, performance.now() - before);
    if (best === undefined) continue;
    solved += 1;
    for (const [policy, make] of Object.entries(policies))
      (all[policy] ??= []).push(policyMinutes(input.value, make(bench)) / best);
  }
  say(
    `${name}: ${solved} of ${trees.length} models solved exactly, slowest ${(solving / 1000).toFixed(1)} s`,
  );
  for (const [policy, list] of Object.entries(all)) {
    const mean = list.reduce((sum, ratio) => sum + ratio, 0) / list.length;
    say(`  ${policy.padEnd(24)} mean ${mean.toFixed(4)}  worst ${Math.max(...list).toFixed(4)}`);
  }
}

const seeds = (first: number, count: number) => Array.from({ length: count }, (_, i) => first + i);
const count = Number(process.argv[2] ?? 100);
ratios(
  seeds(1000, count).map((seed) => drawTree(seed, mixed)),
  'mixed, seeds from 1000',
);
ratios(
  seeds(2000, count).map((seed) => drawTree(seed, dearRepairs)),
  'dear repairs, seeds from 2000',
);
ratios(
  seeds(3000, Math.ceil(count / 2)).map((seed) =>
    cut(drawTree(seed, realistic), seed, { causes: 4, checks: 5 }),
  ),
  'realistic cuts, seeds from 3000',
);
