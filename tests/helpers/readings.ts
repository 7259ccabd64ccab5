import { readFileSync } from 'node:fs';
import type { Action } from '../../src/core/session/action.ts';
import type { Sheet } from '../../src/core/session/vehicle/vehicle.ts';
import { newHeader } from '../../src/core/session/header/new-header.ts';
import { parseShop, parseTree } from '../../src/core/tree/parse.ts';
import { after, stampAt } from './story.ts';

/** The folder of a small tree of the second format that uses everything a reading can be. */
export const readingsFolder = 'tests/fixtures/readings';

const parsed = <T>(read: { readonly kind: string; readonly value?: T }): T => {
  if (read.value === undefined) throw new Error(JSON.stringify(read));
  return read.value;
};
const text = (name: string): string => readFileSync(`${readingsFolder}/${name}`, 'utf8');

export const readingsShop = parsed(parseShop(text('shop.json'), 'shop.json'));
export const readingsTree = parsed(
  parseTree(text('weak-runner.json'), 'weak-runner.json', readingsShop),
);

/** A session on that tree after some actions; of a six unless said otherwise. */
export function readingsAfter(actions: readonly Action[], sheet: Sheet = {}) {
  const about = {
    tree: readingsTree,
    shop: readingsShop,
    vehicle: { name: 'Van', facts: { cylinders: 'six' }, sheet },
    who: 'JB',
    conditions: {},
    units: 'us' as const,
  };
  return after(actions, newHeader(about, stampAt(0).at));
}

export const find = (check: string, reading: string): Action => ({
  do: 'find',
  check,
  reading,
  acknowledged: true,
});
export const see = (check: string, result: string): Action => ({
  do: 'find',
  check,
  result,
  acknowledged: true,
});
