import { describe, expect, test } from 'vitest';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import { inputOf } from '../../../../src/core/reason/belief/evidence.ts';
import { makeModel } from '../../../../src/core/reason/belief/model.ts';
import { OwnRoutes } from '../../../../src/core/reason/plan/routes.ts';
import { showDoubt, soundness } from '../../../../src/core/reason/plan/soundness.ts';
import { shippedTree } from '../../../helpers/library.ts';
import { smallTree } from '../../../helpers/tree.ts';

const routesOf = (id: string, least: number) => {
  const tree = fillTree(shippedTree(id), {});
  const model = makeModel(tree);
  return { tree, model, ...new OwnRoutes(tree, model, least).run() };
};

describe('the routes of the own way', () => {
  test('of a small tree are all there, and their shares add up to every vehicle', () => {
    const tree = smallTree();

    const { routes, followed } = new OwnRoutes(tree, makeModel(tree), 0).run();

    expect(routes.map(({ shown }) => shown.map(({ result }) => result).join(' '))).toEqual([
      '1 0 0',
      '1 0 1',
      '1 0 2',
      '1 1',
    ]);
    expect(followed).toBeCloseTo(1, 9);
  });

  test.each(['no-supply', 'rough-idle', 'slow-crank'])(
    'of %s have the chances that the exact belief gives',
    (id) => {
      const { tree, model, routes } = routesOf(id, 0.002);
      const input = (shown: (typeof routes)[number]['shown']) => {
        const made = inputOf(model, {
          findings: shown.map(({ check, result }) => ({ check, lo: result, hi: result, at: 0 })),
          repairs: [],
        });
        const belief = made.kind === 'good' ? believe(made.value) : made;
        if (belief.kind === 'bad') throw new Error(belief.problems[0]?.message);
        return belief.value;
      };
      const begun = input([]).logEvidence;

      expect(tree.id).toBe(id);
      expect(routes.length).toBeGreaterThan(20);
      // Sets of four causes and more are left out: few vehicles, but more of those with odd findings.
      for (const { shown, share, chances } of routes) {
        const exact = input(shown);
        expect(Math.abs(share / Math.exp(exact.logEvidence - begun) - 1)).toBeLessThan(0.1);
        const most = Math.max(
          ...chances.map((one, at) => Math.abs(one - (exact.chances[at] ?? 0))),
        );
        expect(most).toBeLessThan(0.05);
      }
    },
  );
});

// That the trees we ship have no problem is held where `trees check` follows all their routes.
describe('soundness', () => {
  test('tells what share a wrong condemnation has, and what is likelier', () => {
    const tree = smallTree();
    const look = tree.checks['look'];
    if (look === undefined) throw new Error('no look');
    const [whole, burnt] = look.results;
    const results = [whole, { ...burnt, next: 'cause:wire' }] as typeof look.results;
    const checks = { ...tree.checks, look: { ...look, results } };

    const { problems } = soundness({ ...tree, checks }, 'small.json');

    expect(problems.map(({ code, path, value }) => [code, path, value])).toEqual([
      ['condemns-wrongly', 'checks.look.results[1].next', 'wire'],
    ]);
    expect(problems[0]?.message).toMatch(/there on \d+ %.*"fuse" is on \d+ %/);
  });

  test('tells doubtful routes to the author as one line each', () => {
    // A flat battery twice as common: some routes then end at a cause that is not the likeliest.
    const shipped = shippedTree('slow-crank');
    const flat = shipped.causes['battery-flat'];
    if (flat === undefined) throw new Error('no flat battery');
    const tree = {
      ...shipped,
      causes: { ...shipped.causes, 'battery-flat': { ...flat, odds: flat.odds * 2 } },
    };

    const { doubts } = soundness(tree, 'slow-crank.json');

    expect(doubts.length).toBeGreaterThan(0);
    expect(doubts.map(({ share }) => share)).toEqual(
      doubts.map(({ share }) => share).toSorted((one, other) => other - one),
    );
    for (const doubt of doubts) {
      expect(doubt.likelierChance).toBeGreaterThan(doubt.chance);
      expect(showDoubt(tree, doubt)).toMatch(/^slow-crank: .* % of the vehicles end at .*\.$/);
    }
  });
});
