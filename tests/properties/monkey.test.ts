import { expect, test } from 'vitest';
import { monkey } from '../helpers/monkey.ts';

/** `npm run monkey` strikes a hundred thousand. */
const times = Number(process.env['MONKEY_KEYS'] ?? 3000);
const seeds = [1955, 1964, 1973, 1985, 2026];

/** A hundredth of a second a key, on a machine that is busy with other things. */
const timeout = 20_000 + times * 10;

test('keys struck at random leave nothing false', { timeout }, () => {
  const runs = seeds.map((seed) => monkey(seed, Math.ceil(times / seeds.length)));

  expect(runs.flatMap(({ wrong }) => wrong)).toEqual([]);
  // It got somewhere: answers and claims are among what it recorded.
  const recorded = new Set(runs.flatMap(({ kinds }) => Object.keys(kinds)));
  expect([...recorded]).toEqual(expect.arrayContaining(['check-begun', 'found', 'standing']));
});
