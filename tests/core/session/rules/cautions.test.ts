import { expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import { stepOfCheck, unreadOf } from '../../../../src/core/session/rules/cautions.ts';
import { currentLeg } from '../../../../src/core/session/story.ts';
import { shippedShop, shippedTree } from '../../../helpers/library.ts';
import { after, headerFor } from '../../../helpers/story.ts';

const tree = shippedTree('no-start');
const shop = shippedShop();

const left = (actions: readonly Action[], id: string): readonly string[] => {
  const { story } = after(actions, headerFor(tree, shop));
  const check = currentLeg(story).tree.checks[id];
  if (check === undefined) throw new Error(`no check ${id}`);
  return unreadOf(story, stepOfCheck(id, check));
};
const read = (check: string, ...acknowledged: string[]): Action => ({
  do: 'begin',
  check,
  acknowledged,
  // Safeguards stand before some of these steps.
  despite: 'both were looked at',
});

test('a caution read for one step of a job is not read again for another like it', () => {
  expect(left([], 'leak-look')).toContain('fuel-fire');
  expect(left([read('leak-look', 'fuel-fire')], 'leak-look')).not.toContain('fuel-fire');
  expect(left([read('spark-plug', 'ht', 'crank')], 'spark-coil')).not.toContain('crank');
});

test('it is read again where the danger is new: read at rest, and now the engine turns', () => {
  expect(left([read('leak-look', 'fuel-fire')], 'spark-plug')).toContain('fuel-fire');
});

test('what was named as read that the step does not have is not kept', () => {
  const { story } = after([read('leak-look', 'fuel-fire', 'rotate')], headerFor(tree, shop));

  expect(story.acknowledged.map(({ cautions }) => cautions)).toEqual([['fuel-fire']]);
});
