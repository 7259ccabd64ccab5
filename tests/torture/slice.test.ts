import { expect, test } from 'vitest';
import { attacks } from './all.ts';

// How much memory a long day takes is told by `npm run torture`: other tests share this process.
const sliced = Object.entries(attacks).filter(([name]) => name !== 'long');

test.each(sliced)('a short slice of %s finds nothing', async (_, { run, seed, short }) => {
  const { tries, failures } = await run({ seed, count: short });

  expect(failures).toEqual([]);
  expect(tries).toBeGreaterThan(0);
});
