import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { complaintsFound } from '../../../src/core/tree/found.ts';
import { shippedTrees } from '../../helpers/library.ts';

// 120 things that an owner may type, with slips and British words, written by somebody who had seen the
// titles alone and none of what the trees list as heard. Judgment of one person, no source.
const said = JSON.parse(
  readFileSync('tests/fixtures/owner-says.json', 'utf8'),
) as readonly (readonly [typed: string, ids: string])[];

test('what owners say finds its complaint first or second, nine times in ten', () => {
  const missed = said.filter(([typed, ids]) => {
    const near = complaintsFound(shippedTrees(), typed).slice(0, 2);
    return !near.some(({ id }) => ids.split(',').includes(id));
  });

  expect(said).toHaveLength(120);
  expect(said.length - missed.length).toBeGreaterThanOrEqual(108);
});

test.each([
  ['blower motor', 'accessory-dead'],
  ['thermostat stuck open', 'runs-cold'],
  ['a condenser that shorts when hot', 'hot-restart'],
])('a part finds what it is a cause of: "%s"', (typed, id) => {
  const near = complaintsFound(shippedTrees(), typed).slice(0, 3);

  expect(near.map((tree) => tree.id)).toContain(id);
});
