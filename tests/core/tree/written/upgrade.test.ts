import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import { trusted } from '../../../../src/core/problem.ts';
import { makeModel } from '../../../../src/core/reason/belief/model.ts';
import type { Facts } from '../../../../src/core/tree/facts.ts';
import { factsAsked, fitTree } from '../../../../src/core/tree/fit.ts';
import { edgesOf } from '../../../../src/core/tree/limits.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { upgrade } from '../../../../src/core/tree/written/upgrade.ts';
import { planted } from '../../../helpers/plant.ts';

// Trees as they were written before chances went by name, kept as they were.
const folder = new URL('../../../fixtures/format-one/', import.meta.url);
const read = (name: string): Record<string, unknown> =>
  JSON.parse(readFileSync(new URL(name, folder), 'utf8'));
const parse = (value: unknown): Tree => trusted(parseTreeValue(value, 'tree.json'));

/** Vehicles that differ in each fact that these trees ask for. */
const vehicles: readonly Facts[] = [
  {},
  {
    ignition: 'points',
    ballast: 'fitted',
    'feed-meter': 'ammeter',
    charging: 'alternator-internal',
  },
  { ignition: 'electronic', ballast: 'none', 'feed-meter': 'voltmeter', charging: 'generator' },
  { pcv: 'fitted', egr: 'none', tappets: 'solid', 'charge-lamp': 'lamp' },
];

/** All that the belief, the advice and the plan go by, and where each result leads. */
function workings(tree: Tree, facts: Facts) {
  const fitted = fillTree(fitTree(tree, facts), facts);
  return {
    model: makeModel(fitted),
    ways: Object.entries(fitted.checks).map(([id, check]) => [
      id,
      check.results.map((result) => [result.id, result.next, edgesOf(result)]),
    ]),
  };
}

/** Every number beside its twin, so that a difference names its place. */
function differences(one: unknown, other: unknown, path = ''): readonly string[] {
  if (typeof one === 'number' && typeof other === 'number')
    return one === other || Math.abs(one - other) < 1e-9 ? [] : [`${path}: ${one} and ${other}`];
  if (typeof one !== 'object' || one === null || typeof other !== 'object' || other === null)
    return one === other ? [] : [`${path}: ${String(one)} and ${String(other)}`];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) =>
    differences(Reflect.get(one, key), Reflect.get(other, key), `${path}.${key}`),
  );
}

describe('a tree of format 1 in the words of format 2', () => {
  for (const name of readdirSync(folder))
    test(`${name} believes, advises and leads as it did`, () => {
      const file = read(name);
      const before = parse(file);
      const after = parse(upgrade(file, before));
      expect(after.format).toBe(2);
      expect(factsAsked(after)).toEqual(factsAsked(before));
      for (const facts of vehicles)
        expect(differences(workings(before, facts), workings(after, facts))).toEqual([]);
    });

  test('chances go by name, the rest to the healthy result; bands by their limits', () => {
    const file = planted() as Record<string, unknown>;
    const made = upgrade(file, parse(file)) as { checks: Record<string, Record<string, unknown>> };
    expect(JSON.stringify(made)).not.toMatch(/"(background|points|from|below)"/);
    expect(made.checks['volts']).toMatchObject({
      sound: { low: 2, dead: 1 },
      'shows-with': { wire: { low: 15, dead: 80 } },
      limits: [12, 2],
    });
    expect(made.checks['lamp']?.['shows-with']).toMatchObject({ fuse: { always: 'dark' } });
  });

  test('what is by name already stays as it is', () => {
    const file = planted() as Record<string, unknown>;
    const once = upgrade(file, parse(file));
    expect(upgrade(once, parse(once))).toEqual(once);
  });
});
