import { readFileSync } from 'node:fs';
import type { Action, ActionOf } from '../../src/core/session/action.ts';
import type { Header } from '../../src/core/session/header/header.ts';
import { parseShop, parseTree } from '../../src/core/tree/parse.ts';
import { after, headerFor } from './story.ts';

/** The folder of a small tree with two safeguards: oil and level come before the engine runs. */
export const guardedFolder = 'tests/fixtures/guarded';

const parsed = <T>(read: { readonly kind: string; readonly value?: T }): T => {
  if (read.value === undefined) throw new Error(JSON.stringify(read));
  return read.value;
};
const text = (name: string): string => readFileSync(`${guardedFolder}/${name}`, 'utf8');

export const guardedShop = parsed(parseShop(text('shop.json'), 'shop.json'));
export const guardedTree = parsed(parseTree(text('boils.json'), 'boils.json', guardedShop));
export const guardedHeader = (): Header => headerFor(guardedTree, guardedShop);

/** A session on that tree after some actions. */
export const guardedAfter = (actions: readonly Action[]) => after(actions, guardedHeader());

export const see = (check: string, result: string): ActionOf<'find'> => ({
  do: 'find',
  check,
  result,
  acknowledged: true,
});

/** Both safeguards shown: the engine may run. */
export const opened: readonly Action[] = [see('oil-look', 'clean'), see('cold-level', 'low')];
