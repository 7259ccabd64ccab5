import { describe, expect, test } from 'vitest';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import { makeModel, type Model } from '../../../../src/core/reason/belief/model.ts';
import { freshCase } from '../../../../src/core/reason/belief/evidence.ts';
import { runEpisode } from '../../../../src/core/reason/plan/simulate.ts';
import type { HiddenVehicle } from '../../../../src/core/reason/plan/vehicle.ts';
import { advisedPolicy } from '../../../../src/core/reason/plan/policies.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';

const chances = (totals: readonly number[]): readonly number[] =>
  totals.map((total, at) => total - (totals[at - 1] ?? 0));
const mostLikely = (totals: readonly number[]): number => {
  const list = chances(totals);
  return list.indexOf(Math.max(...list));
};

/** The one result that a check shows most often with this cause and no other. */
function typical(model: Model, cause: number, check: number): number {
  const tested = model.checks[check];
  if (tested === undefined) return 0;
  const sound = mostLikely(tested.background);
  const own = tested.links[cause];
  return own === undefined ? sound : Math.max(sound, mostLikely(own));
}

/** How the complaint shows most often with this cause: never as its absence. */
function complaintOf(model: Model, cause: number): number {
  const [, ...there] = chances(model.checks[model.complaint]?.links[cause] ?? []);
  return 1 + there.indexOf(Math.max(...there));
}

/** A vehicle with exactly this cause, whose checks answer most typically; its complaint is there. */
const typicalVehicle = (model: Model, cause: number): HiddenVehicle => ({
  causes: [cause],
  show: (check, mended) => {
    if (mended.includes(cause)) return 0;
    return check === model.complaint ? complaintOf(model, cause) : typical(model, cause, check);
  },
});

const cases = shippedTrees().flatMap((tree) => {
  const filled = fillTree(tree, {});
  const model = makeModel(filled);
  return model.causes.map(({ id }, cause) => ({
    name: `${tree.id} ${id}`,
    model,
    cause,
  }));
});

describe('a vehicle with one cause that answers typically', () => {
  test.each(cases)('the advice mends $name', ({ model, cause }) => {
    const accesses = shippedShop().accesses;
    const vehicle = typicalVehicle(model, cause);
    const walked = runEpisode(freshCase(model, accesses), vehicle, advisedPolicy([]));

    expect(walked.repairs).toBeGreaterThan(0);
  });
});
