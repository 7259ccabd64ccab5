// How long the belief and the advice take on random trees: causes / checks / abnormal findings.
import { refinedAdvice } from '../../src/core/reason/advice/advise.ts';
import { believe } from '../../src/core/reason/belief/posterior.ts';
import {
  makeInput,
  type ReasoningInput,
  type CheckFinding,
} from '../../src/core/reason/belief/evidence.ts';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { randomTree } from '../core/reason/random-trees.ts';

const seed = 20_260_411;

/** A case on a random tree with so many abnormal findings; the complaint is confirmed. */
function drawCase(
  at: number,
  [causes, checks, abnormal]: readonly [number, number, number],
): ReasoningInput {
  const tree = randomTree(at, { causes, checks, links: 4 / causes });
  const random = makeRandom(at + 1);
  const ids = Object.keys(tree.checks).filter((id) => id !== tree.complaint.confirm);
  const findings: CheckFinding[] = ids.slice(0, abnormal).map((check) => {
    const worst = (tree.checks[check]?.results.length ?? 2) - 1;
    const result = 1 + Math.floor(random() * worst);
    return { check, lo: result, hi: result, at: 0 };
  });
  const last = (tree.checks[tree.complaint.confirm]?.results.length ?? 2) - 1;
  findings.unshift({ check: tree.complaint.confirm, lo: last, hi: last, at: 0 });
  const made = makeInput(tree, { findings, repairs: [] });
  if (made.kind === 'bad') throw new Error(made.problems[0]?.message);
  return made.value;
}

function times(
  runs: number,
  size: readonly [number, number, number],
  episode: (input: ReasoningInput) => unknown,
): string {
  const took = Array.from({ length: runs + 5 }, (_, run) => {
    const input = drawCase(seed + run, size);
    const began = performance.now();
    episode(input);
    return performance.now() - began;
  })
    .slice(5)
    .toSorted((a, b) => a - b);
  const at = (share: number): string =>
    (took[Math.floor(share * (took.length - 1))] ?? 0).toFixed(2);
  return `p50 ${at(0.5).padStart(8)}  p95 ${at(0.95).padStart(8)}  max ${at(1).padStart(8)} ms`;
}

console.log(`seed ${seed}; causes/checks/abnormal`);
console.log(`belief  30/40/12     ${times(200, [30, 40, 12], believe)}  (target: p95 at most 5)`);
console.log(`belief  100/200/12   ${times(60, [100, 200, 12], believe)}  (target: p95 at most 25)`);
console.log(
  `first advice 30/40/4 ${times(60, [30, 40, 4], (input) => refinedAdvice(input, { further: [], reckon: false }))}  (target: p95 at most 30)`,
);
console.log(
  `full advice  30/40/4 ${times(30, [30, 40, 4], (input) => refinedAdvice(input))}  (target: p95 at most 300)`,
);
