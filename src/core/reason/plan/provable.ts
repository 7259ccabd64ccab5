import { at } from '../../at.ts';
import type { Safeguard, Tree } from '../../tree/model.ts';
import type { Model } from '../belief/model.ts';
import type { HiddenVehicle } from './vehicle.ts';

/**
 * Whether a hidden vehicle can be proven in the end: one whose safeguard stays shut with nothing left to
 * mend (oil that is always over-full) would never be let run, and no work changes it.
 */
export function provableBy(tree: Tree, model: Model): (vehicle: HiddenVehicle) => boolean {
  // A safeguard of repairs alone keeps nobody from running what is mended.
  const ofRuns = (tree.safeguards ?? []).filter(({ before }) => !isOfRepairs(before));
  const guards = ofRuns.flatMap(({ check, shows }) => {
    const index = model.checks.findIndex(({ id }) => id === check);
    const results = tree.checks[check]?.results ?? [];
    return index < 0 ? [] : [{ index, open: results.map(({ id }) => shows.includes(id)) }];
  });
  return ({ causes, show }) => guards.every(({ index, open }) => at(open, show(index, causes)));
}

const isOfRepairs = (before: Safeguard['before']): boolean =>
  Object.keys(before).every((key) => key === 'repair');
