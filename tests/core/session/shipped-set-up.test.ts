import { expect, test } from 'vitest';
import { preparations, type Preparation } from '../../../src/core/session/preparation.ts';
import type { Standpoint } from '../../../src/core/session/story.ts';
import { shippedShop, shippedTrees } from '../../helpers/library.ts';
import { after, headerFor } from '../../helpers/story.ts';

const shop = shippedShop();
const trees = shippedTrees().map((tree) => [tree.id, tree] as const);

type Vehicle = Pick<Standpoint, 'standing' | 'open'>;

const done = ({ standing, open }: Vehicle, step: Preparation): Vehicle => {
  if (step.kind === 'standing') return { standing: { ...standing, ...step.set }, open };
  return {
    standing,
    open:
      step.kind === 'open'
        ? [...open, step.access]
        : open.filter((access) => access !== step.access),
  };
};

// A check picked out of turn is begun with the vehicle as it happens to be: parked, or with all that
// the tree opens lying open and the engine running.
test.each(trees)('%s sets the vehicle up for a check picked out of turn', (_, tree) => {
  const { legs } = after([], headerFor(tree, shop)).story;
  const parked: Vehicle = {
    standing: { battery: 'connected', key: 'off', engine: 'off' },
    open: [],
  };
  const left: Vehicle = {
    standing: { battery: 'connected', key: 'run', engine: 'idling', heat: 'hot' },
    open: Object.keys(shop.accesses),
  };
  for (const check of Object.values(tree.checks))
    for (const from of [parked, left]) {
      let vehicle = from;
      for (const step of preparations({ legs, ...from }, check)) {
        const opening = step.kind === 'open' ? shop.accesses[step.access]?.standing : undefined;
        expect(vehicle.standing).toMatchObject(opening ?? {});
        vehicle = done(vehicle, step);
      }
      expect(vehicle.standing).toMatchObject(check.standing);
      expect(vehicle.open).toEqual(expect.arrayContaining(check.access));
      expect(vehicle.open.filter((access) => check.shut?.includes(access))).toEqual([]);
    }
});

// The caution of the live ammeter: "Ground lead off before the cluster moves".
test('the ground lead is asked off before the ammeter is reached', () => {
  const reached = trees.flatMap(([, { checks }]) =>
    Object.values(checks)
      .filter(({ cautions, access }) => cautions.includes('ammeter-live') && access.length > 0)
      .flatMap(({ access }) => access),
  );

  expect(reached).not.toEqual([]);
  for (const access of reached)
    expect(shop.accesses[access]?.standing).toEqual({ battery: 'disconnected' });
});

// A step that says "air cleaner on" after one that took it off: it is asked back, each time.
test.each(trees)(
  '%s asks the air cleaner back where a step says that it is on',
  (_, { checks }) => {
    const silent = Object.entries(checks).flatMap(([id, { how, access, shut = [] }]) =>
      how.some((step) => /air cleaner on\b/i.test(step)) &&
      ![...access, ...shut].includes('air-cleaner')
        ? [id]
        : [],
    );

    expect(silent).toEqual([]);
  },
);
