import type {
  JobState,
  CheckFinding,
  RepairMade,
} from '../../../src/core/reason/belief/evidence.ts';
import { makeRandom } from '../../../src/core/reason/plan/random.ts';
import type { Random } from '../../../src/core/reason/plan/random.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { Tree as TreeShape } from '../../../src/core/tree/shapes.ts';

export type TreeSize = {
  readonly causes: number;
  readonly checks: number;
  /** Chance that a check names a cause. */
  readonly links?: number;
  readonly unlisted?: number;
};

const whole = (random: Random, from: number, to: number): number =>
  from + Math.floor(random() * (to - from + 1));

function distribution(random: Random, length: number, least: number): number[] {
  const raw = Array.from({ length }, () => random() ** 2);
  const sum = raw.reduce((all, value) => all + value, 0);
  return raw.map((value) => least + ((1 - least * length) * value) / sum);
}

/** Mostly healthy, each abnormal result at least 0.005. */
function background(random: Random, length: number): number[] {
  const abnormal = Array.from({ length: length - 1 }, () => 0.005 + 0.05 * random());
  return [1 - abnormal.reduce((all, value) => all + value, 0), ...abnormal];
}

function randomCheck(random: Random, size: TreeSize, complaint: boolean) {
  const length = whole(random, 2, 4);
  const points: Record<string, number[]> = {};
  for (let cause = 0; cause < size.causes; cause += 1)
    if (random() < (size.links ?? 0.3)) points[`c${cause}`] = distribution(random, length, 0.006);
  if (random() < 0.2) points['unlisted'] = distribution(random, length, 0.006);
  return {
    kind: 'look',
    ask: 'What does it show?',
    minutes: whole(random, 1, 15),
    access: random() < 0.3 ? ['cover'] : [],
    results: Array.from({ length }, (_, index) => ({ id: `r${index}`, label: `result ${index}` })),
    ...(complaint ? {} : { background: background(random, length) }),
    points,
  };
}

/** A tree that lint would pass as far as its numbers go; every draw comes from the seed. */
export function randomTree(seed: number, size: TreeSize): Tree {
  const random = makeRandom(seed);
  const causes = Array.from({ length: size.causes }, (_, index) => [
    `c${index}`,
    {
      name: `Cause ${index}`,
      odds: whole(random, 1, 40),
      repair: {
        do: ['Mend it.'],
        minutes: whole(random, 5, 90),
        access: random() < 0.2 ? ['cover'] : [],
      },
    },
  ]);
  const checks = Array.from({ length: size.checks }, (_, index) => [
    `k${index}`,
    randomCheck(random, size, index === 0),
  ]);
  return TreeShape.parse({
    format: 1,
    id: 'random',
    title: 'Random',
    complaint: { say: 'It is there.', confirm: 'k0' },
    start: 'k0',
    alsoLikely: 0.05 + 0.4 * random(),
    unlisted: size.unlisted ?? (random() < 0.8 ? whole(random, 1, 10) : 0),
    causes: Object.fromEntries(causes),
    checks: Object.fromEntries(checks),
  });
}

/** Findings and repairs in the order made; some findings are intervals, some checks repeated. */
export function randomState(seed: number, tree: Tree, length: number): JobState {
  const random = makeRandom(seed);
  const findings: CheckFinding[] = [];
  const repairs: RepairMade[] = [];
  const causes = Object.keys(tree.causes);
  const checks = Object.entries(tree.checks);
  for (let step = 0; step < length; step += 1) {
    if (random() < 0.2 && repairs.length < 3) {
      repairs.push({ cause: causes[whole(random, 0, causes.length - 1)]!, at: repairs.length });
      continue;
    }
    const [check, { results }] = checks[whole(random, 0, checks.length - 1)]!;
    const lo = whole(random, 0, results.length - 1);
    const hi = random() < 0.3 ? whole(random, lo, results.length - 1) : lo;
    findings.push({ check, lo, hi, at: repairs.length });
  }
  return { findings, repairs };
}
