import { expect, test } from 'vitest';
import {
  beginEpisode,
  checkIndex,
  environmentOf,
  findIn,
  forcedCheck,
} from '../../../../src/core/reason/plan/episode.ts';
import { shippedShop, shippedTree } from '../../../helpers/library.ts';

test('where a safeguard hands the job to another tree, the test of the complaint is made in the end', () => {
  const tree = shippedTree('hot-restart');
  const environment = environmentOf(tree, shippedShop().accesses);
  const { model } = environment.input;
  const looked = checkIndex(model, 'leak-look');
  expect(forcedCheck(environment, beginEpisode(environment))).toBe(looked);

  const wet = findIn(beginEpisode(environment), { check: looked, result: 2 }, environment);

  expect(forcedCheck(environment, wet)).toBe(checkIndex(model, tree.complaint.confirm));
});
