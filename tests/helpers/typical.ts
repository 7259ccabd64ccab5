import type { Model } from '../../src/core/reason/belief/model.ts';
import type { HiddenVehicle } from '../../src/core/reason/plan/vehicle.ts';

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
export const typicalVehicle = (model: Model, cause: number): HiddenVehicle => ({
  causes: [cause],
  show: (check, mended) => {
    if (mended.includes(cause)) return 0;
    return check === model.complaint ? complaintOf(model, cause) : typical(model, cause, check);
  },
});
