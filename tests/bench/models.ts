import { makeRandom } from '../../src/core/reason/plan/random.ts';
import type { Random } from '../../src/core/reason/plan/random.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import { Tree as TreeShape } from '../../src/core/tree/shapes.ts';

/** How a random tree for the bench is drawn. */
export type Shape = {
  readonly causes: readonly [number, number];
  readonly checks: readonly [number, number];
  readonly repairMinutes: readonly [number, number];
  readonly checkMinutes: readonly [number, number];
  readonly links: number;
};

export const mixed: Shape = {
  causes: [2, 4],
  checks: [3, 4],
  repairMinutes: [5, 60],
  checkMinutes: [1, 15],
  links: 0.45,
};

export const dearRepairs: Shape = { ...mixed, repairMinutes: [60, 240], checkMinutes: [1, 20] };

export const realistic: Shape = {
  causes: [16, 19],
  checks: [18, 23],
  repairMinutes: [10, 150],
  checkMinutes: [1, 12],
  links: 0.2,
};

const between = (random: Random, [from, to]: readonly [number, number]): number =>
  Math.round(from * (to / from) ** random());
const whole = (random: Random, [from, to]: readonly [number, number]): number =>
  from + Math.floor(random() * (to - from + 1));

/** A row that shows the cause in most vehicles, more or less sharply. */
function pointing(random: Random, length: number): number[] {
  const missed = 0.01 + 0.3 * random() ** 2;
  const shares = Array.from({ length: length - 1 }, () => random() ** 2 + 0.02);
  const sum = shares.reduce((all, share) => all + share, 0);
  return [missed, ...shares.map((share) => ((1 - missed) * share) / sum)];
}

const accesses = ['cover', 'wheel', 'dash'];
export const accessMinutes = {
  cover: { open: 4, close: 5 },
  wheel: { open: 8, close: 8 },
  dash: { open: 12, close: 15 },
};

function check(random: Random, shape: Shape, causes: number, complaint: boolean) {
  const length = complaint ? 2 : whole(random, [2, 3]);
  const strays = Array.from({ length: length - 1 }, () => 0.005 + 0.04 * random() ** 2);
  const healthy = 1 - strays.reduce((all, share) => all + share, 0);
  const points: Record<string, number[]> = {};
  const chance = complaint ? 0.2 : shape.links;
  for (let cause = 0; cause < causes; cause += 1)
    if (random() < chance) points[`c${cause}`] = pointing(random, length);
  return {
    kind: 'look',
    ask: 'What does it show?',
    minutes: between(random, shape.checkMinutes),
    access: !complaint && random() < 0.35 ? [accesses[whole(random, [0, 2])]] : [],
    results: Array.from({ length }, (_, index) => ({ id: `r${index}`, label: `result ${index}` })),
    ...(complaint ? {} : { background: [healthy, ...strays] }),
    points,
  };
}

export function drawTree(seed: number, shape: Shape): Tree {
  const random = makeRandom(seed);
  const causes = whole(random, shape.causes);
  const checks = whole(random, shape.checks) + 1;
  return TreeShape.parse({
    format: 1,
    id: 'drawn',
    title: 'Drawn',
    complaint: { say: 'It is there.', confirm: 'k0' },
    start: 'k1',
    alsoLikely: 0.1 + 0.3 * random(),
    unlisted: 2 + 8 * random(),
    causes: Object.fromEntries(
      Array.from({ length: causes }, (_, index) => [
        `c${index}`,
        {
          name: `Cause ${index}`,
          odds: between(random, [1, 40]),
          repair: {
            do: ['Mend it.'],
            minutes: between(random, shape.repairMinutes),
            access: random() < 0.3 ? [accesses[whole(random, [0, 2])]] : [],
            part: (['none', 'small', 'dear'] as const)[whole(random, [0, 2])],
          },
        },
      ]),
    ),
    checks: Object.fromEntries(
      Array.from({ length: checks }, (_, index) => [
        `k${index}`,
        check(random, shape, causes, index === 0),
      ]),
    ),
  });
}

/** Some causes and checks of a tree, with what they say of each other. */
export function cut(tree: Tree, seed: number, size: { causes: number; checks: number }): Tree {
  const random = makeRandom(seed);
  const take = (
    ids: readonly string[],
    weightOf: (id: string) => number,
    count: number,
  ): string[] => {
    const weights = ids.map(weightOf);
    const taken: string[] = [];
    while (taken.length < Math.min(count, ids.length)) {
      const index = drawIndex(random, weights);
      weights[index] = 0;
      taken.push(ids[index]!);
    }
    return ids.filter((id) => taken.includes(id));
  };
  const causes = take(Object.keys(tree.causes), (id) => tree.causes[id]!.odds, size.causes);
  const confirm = tree.complaint.confirm;
  const telling = (id: string) =>
    0.1 + causes.filter((cause) => Object.hasOwn(tree.checks[id]!.points, cause)).length;
  const others = Object.keys(tree.checks).filter((id) => id !== confirm);
  const checks = [confirm, ...take(others, telling, size.checks)];
  return {
    ...tree,
    causes: Object.fromEntries(causes.map((id) => [id, tree.causes[id]!])),
    checks: Object.fromEntries(checks.map((id) => [id, tree.checks[id]!])),
  };
}

/** Index drawn with these weights; weights need not sum to 1. */
function drawIndex(random: Random, weights: readonly number[]): number {
  const total = weights.reduce((all, weight) => all + weight, 0);
  let left = random() * total;
  for (const [index, weight] of weights.entries()) {
    left -= weight;
    if (left < 0) return index;
  }
  return weights.findLastIndex((weight) => weight > 0);
}
