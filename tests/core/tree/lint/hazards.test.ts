import { expect, test } from 'vitest';
import { hazards, standingHazards } from '../../../../src/core/tree/lint/hazard-words.ts';
import { shippedShop } from '../../../helpers/library.ts';

const named = (text: string): readonly string[] =>
  hazards.filter(({ words }) => words.test(text)).map(({ name }) => name);

test('every caution that a hazard asks for is in the shop', () => {
  const { cautions } = shippedShop();
  const asked = [
    ...hazards,
    ...standingHazards({ engine: 'idling', heat: 'hot' }),
    ...standingHazards({ engine: 'road' }),
    ...standingHazards({ engine: 'cranking', heat: 'hot-soaked' }),
  ].flatMap((hazard) => hazard.cautions);

  expect(asked.filter((id) => !Object.hasOwn(cautions, id))).toEqual([]);
});

test.each([
  ['Parking brake on, chocked, neutral.'],
  ['Outdoors, brake set.'],
  ['Foot on the brake, lamps on.'],
  ['Wipe the crankcase breather.'],
  ['600 cranking amps or more.'],
  ['The key springs back.'],
  ['Seat belt off.'],
  ['Route the wire clear of exhaust and edges.'],
  ['It stands as long as it likes.'],
  ['A fantastic hotel.'],
])('"%s" speaks of no hazard', (text) => {
  expect(named(text)).toEqual([]);
});

test.each([
  ['Brakes bled by a helper.', ['brake']],
  ['CRANK it.', ['cranking']],
  ['Hot fuel on the exhaust.', ['fuel', 'hot part', 'exhaust']],
  ['Battery, fan and radiator out.', ['battery', 'fan or belt', 'coolant']],
])('"%s" speaks of hazards', (text, expected) => {
  expect(named(text)).toEqual(expected);
});

test('an engine that is off and cold is no hazard by itself', () => {
  expect(standingHazards({ engine: 'off', heat: 'cold' })).toEqual([]);
  expect(standingHazards({})).toEqual([]);
});
