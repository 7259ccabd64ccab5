import { expect, test } from 'vitest';
import { at } from '../../../../src/core/at.ts';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import { environmentOf, type Environment } from '../../../../src/core/reason/plan/episode.ts';
import { advisedPolicy, type Policy } from '../../../../src/core/reason/plan/policies.ts';
import { runEpisode } from '../../../../src/core/reason/plan/simulate.ts';
import type { HiddenVehicle } from '../../../../src/core/reason/plan/vehicle.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { blockOf } from '../../../../src/core/tree/written/branches.ts';
import type { Branches } from '../../../../src/core/tree/written/branches-model.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';
import { typicalVehicle } from '../../../helpers/typical.ts';

const { accesses } = shippedShop();

type Block = { readonly tree: Tree; readonly id: string; readonly block: Branches };

const blocks = shippedTrees().flatMap((tree) =>
  Object.entries(tree.written?.branches ?? {}).map(([id, block]): Block => ({ tree, id, block })),
);

/** A vehicle with this cause on this branch: the probes show where it is, all else answers as is usual. */
function vehicleWith(
  { tree, id, block }: Block,
  { input: { model } }: Environment,
  on: { readonly cause: number; readonly branch: string },
) {
  const usual = typicalVehicle(model, on.cause);
  const name = block.of[on.branch]?.name ?? '';
  let probes = 0;
  const show: HiddenVehicle['show'] = (check, mended) => {
    const { id: asked, results } = at(model.checks, check);
    if (blockOf(tree.written, asked) !== id || !results.includes('here'))
      return usual.show(check, mended);
    probes += 1;
    const isParted = (tree.checks[asked]?.how ?? []).some((step) => step.includes(name));
    return isParted && !mended.includes(on.cause) ? 1 : 0;
  };
  return { vehicle: { causes: [on.cause], show }, probes: () => probes };
}

/** Probes of each job on a vehicle with a cause of the block, with how often there is such a one. */
function probesOf(one: Block, environment: Environment, policy: Policy) {
  const { causes } = environment.input.model;
  return Object.entries(one.block.of).flatMap(([branch, { hangs }]) =>
    Object.entries(hangs).map(([id, share]) => {
      const cause = causes.findIndex((listed) => listed.id === id);
      const { vehicle, probes } = vehicleWith(one, environment, { cause, branch });
      runEpisode(environment, vehicle, policy);
      return { often: (at(causes, cause).odds * share) / 100, probes: probes() };
    }),
  );
}

test.each(blocks.map((one) => [`${one.tree.id} ${one.id}`, one] as const))(
  '%s finds the branch in about the logarithm of the branches, led by the advice',
  (_, one) => {
    const environment = environmentOf(fillTree(one.tree, {}), accesses);
    // Behind the last branch there is "none of them".
    const places = Object.keys(one.block.of).length + 1;

    const begun = probesOf(one, environment, advisedPolicy()).filter(({ probes }) => probes > 0);

    const often = begun.reduce((all, job) => all + job.often, 0);
    const mean = begun.reduce((all, job) => all + job.often * job.probes, 0) / often;
    expect(begun).not.toEqual([]);
    expect(mean).toBeLessThanOrEqual(Math.log2(places) + 1);
  },
);
