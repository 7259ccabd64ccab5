import { expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { drive } from '../../helpers/drive/drive.ts';
import { readVehicle } from '../../helpers/drive/script.ts';
import { shippedShop, shippedTree, shippedTrees } from '../../helpers/library.ts';

test('proved by the test of the complaint that it was led to, it says so, and what is owed', () => {
  const vehicle = readVehicle('tests/vehicles/run-on-gasket.json');
  const books = { tree: shippedTree('run-on'), shop: shippedShop(), library: shippedTrees() };
  const { header, events } = drive(vehicle, books, 'tree').recorded;
  const told = { events: events.length, passedOver: 0, link: 'ab' };
  const { markdown } = writeUp(fold(header, events), told);

  expect(markdown).toContain(
    'Proved by the test of "idle stays high, or the throttle sticks": it fell to idle. Its first test, the switching off, was not made again.',
  );
  expect(markdown).not.toContain("Proved by the complaint's own test");
});
