import { describe, expect, test } from 'vitest';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import { makeModel, type Model } from '../../../../src/core/reason/belief/model.ts';
import { freshCase } from '../../../../src/core/reason/belief/evidence.ts';
import { runEpisode } from '../../../../src/core/reason/plan/simulate.ts';
import type { HiddenVehicle } from '../../../../src/core/reason/plan/vehicle.ts';
import { advisedPolicy, oddsOnly, type Policy } from '../../../../src/core/reason/plan/policies.ts';
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

/** Sends a policy to one typical vehicle for each cause; counts repairs of what was sound. */
function needless(model: Model, policy: Policy): readonly number[] {
  const fresh = freshCase(model, shippedShop().accesses);
  return model.causes.map(
    (_, cause) => runEpisode(fresh, typicalVehicle(model, cause), policy).repairs - 1,
  );
}

const total = (counts: readonly number[]): number => counts.reduce((sum, one) => sum + one, 0);

describe('vehicles with one cause that answer typically', () => {
  test.each(shippedTrees().map((tree) => [tree.id, tree] as const))(
    'are mended by the advice with far fewer needless repairs than by the odds: %s',
    (_, tree) => {
      const model = makeModel(fillTree(tree, {}));
      const advised = needless(model, advisedPolicy([]));

      expect(advised).toHaveLength(model.causes.length);
      expect(total(advised)).toBeLessThan(0.25 * total(needless(model, oddsOnly)));
    },
  );
});
