import { describe, expect, test } from 'vitest';
import { writeUp } from '../src/core/account/account.ts';
import { fold, type Recorded } from '../src/core/session/fold.ts';
import { fitTree } from '../src/core/tree/fit.ts';
import { storyFaults, storyOf } from './helpers/account-lint.ts';
import { drive } from './helpers/drive/drive.ts';
import { readVehicles } from './helpers/drive/script.ts';
import { faultsOf, slipsOf } from './helpers/drive/verdict.ts';
import { shippedShop, shippedTree, shippedTrees } from './helpers/library.ts';

const accountOf = ({ header, events }: Recorded): string =>
  writeUp(fold(header, events), { events: events.length, passedOver: 0, link: 'ab' }).markdown;

const vehicles = readVehicles();
const shop = shippedShop();
const library = shippedTrees();

describe.each(vehicles)('$name', ({ name, script }) => {
  const tree = shippedTree(script.tree);

  test('is a vehicle of its tree', () => {
    expect(name.startsWith(`${script.tree}-`)).toBe(true);
    const onto = script.onto.map((id) => fitTree(shippedTree(id), script.facts));
    expect(slipsOf(script, fitTree(tree, script.facts), ...onto)).toEqual([]);
  });

  test('leaves an account with nothing that an editor would strike out', () => {
    const { recorded } = drive({ name, script }, { tree, shop, library }, 'tree');

    expect(storyFaults(storyOf(accountOf(recorded)))).toEqual([]);
  });

  test.each(['tree', 'quicker'] as const)('is driven to its end, led by the %s way', (lead) => {
    const done = drive({ name, script }, { tree, shop, library }, lead);

    expect(faultsOf(script, done, lead)).toEqual([]);
  });
});

test.each(shippedTrees().map(({ id }) => id))(
  '%s has four vehicles, one with two faults',
  (tree) => {
    const own = vehicles.filter(({ script }) => script.tree === tree);

    expect(own.length).toBeGreaterThanOrEqual(4);
    expect(own.some(({ script }) => script.causes.length > 1)).toBe(true);
  },
);
