import { describe, expect, test } from 'vitest';
import { fillTree } from '../../../src/core/feed/fill.ts';
import { caseOf } from '../../../src/core/reason/case.ts';
import { Costs } from '../../../src/core/reason/costs.ts';
import { makeModel, type Model } from '../../../src/core/reason/model.ts';
import { walk, type Simulation } from '../../../src/core/reason/simulate.ts';
import type { HiddenVehicle } from '../../../src/core/reason/vehicle.ts';
import { advisedWalker } from '../../../src/core/reason/walkers.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { firstCheck, parseNext } from '../../../src/core/tree/next.ts';
import { shippedShop, shippedTrees } from '../../helpers/library.ts';

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
  const own = chances(model.checks[model.complaint]?.links[cause] ?? []);
  return own.indexOf(Math.max(...own.slice(1)));
}

/** A vehicle with exactly this cause, whose checks answer most typically; its complaint is there. */
const typicalVehicle = (model: Model, cause: number): HiddenVehicle => ({
  causes: [cause],
  show: (check, mended) => {
    if (mended.includes(cause)) return 0;
    return check === model.complaint ? complaintOf(model, cause) : typical(model, cause, check);
  },
});

/** Where the tree's own way comes out for this vehicle, and what it went by. */
function wayOf(tree: Tree, model: Model, vehicle: HiddenVehicle) {
  const by: string[] = [];
  let id = firstCheck(tree);
  for (;;) {
    if (by.includes(id)) return { by, end: `round at ${id}` };
    by.push(id);
    const check = model.checks.findIndex((one) => one.id === id);
    const next = tree.checks[id]?.results[vehicle.show(check, [])]?.next ?? 'stop';
    const lead = parseNext(next);
    if (lead.kind !== 'check') return { by, end: next };
    id = lead.check;
  }
}

const cases = shippedTrees().flatMap((tree) => {
  const filled = fillTree(tree, {});
  const model = makeModel(filled);
  return model.causes.map(({ id }, cause) => ({
    name: `${tree.id} ${id}`,
    tree: filled,
    model,
    id,
    cause,
  }));
});

/**
 * Where the own way ends without its cause, for a reason. Both pull the needle down evenly and pass
 * the balance more often than not, and the way keeps the long compression test for a dead cylinder;
 * the advice comes to it when the quick checks have found nothing.
 */
const exceptions: Readonly<Record<string, string>> = {
  'rough-idle compression': 'stop',
  'rough-idle tappets': 'stop',
};
const listed = cases.filter(({ id }) => id !== 'unlisted');

describe('a vehicle with one cause that answers typically', () => {
  test.each(listed)('the own way of $name ends at it', ({ name, tree, model, id, cause }) => {
    const { by, end } = wayOf(tree, model, typicalVehicle(model, cause));

    expect([end, by]).toEqual([exceptions[name] ?? `cause:${id}`, by]);
  });

  test.each(cases)('the advice mends $name', ({ model, cause }) => {
    const accesses = shippedShop().accesses;
    const given = caseOf(model, { findings: [], repairs: [], accesses });
    if (given.kind === 'bad') throw new Error('no case');
    const simulation: Simulation = { model, accesses, count: 1, seed: 1, walkers: {} };

    const walked = walk(
      simulation,
      new Costs(given.value),
      typicalVehicle(model, cause),
      advisedWalker([]),
    );
    expect(walked.repairs).toBeGreaterThan(0);
  });
});
