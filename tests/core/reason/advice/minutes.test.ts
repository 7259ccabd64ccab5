import { expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { otherChecks } from '../../../../src/app/walk/lists.ts';
import { quickAdvice } from '../../../../src/core/reason/advice/advise.ts';
import { Costs } from '../../../../src/core/reason/advice/costs.ts';
import {
  moveMinutes,
  placeAfterMove,
  placeOf,
  type Move,
} from '../../../../src/core/reason/advice/minutes.ts';
import { inputFrom } from '../../../../src/core/reason/history/from-story.ts';
import { currentLeg, type Story } from '../../../../src/core/session/story.ts';
import { shippedShop, shippedTree, shippedTrees } from '../../../helpers/library.ts';
import { after, headerFor } from '../../../helpers/story.ts';

const trees = shippedTrees();
const shop = shippedShop();

/** A job just begun, and one with two findings, something open and another standing. */
function standings(id: string): readonly Story[] {
  const header = headerFor(shippedTree(id), shop);
  const fresh = after([], header).story;
  const { tree } = currentLeg(fresh);
  const [first] = Object.values(tree.checks).flatMap(({ access }) => access);
  const found = Object.entries(tree.checks)
    .filter(([, { after: gates, cautions }]) => gates === undefined && cautions.length === 0)
    .map(([check, { results }]) => ({ do: 'find', check, result: results[0]?.id ?? '' }) as const)
    .filter((action) => !isRefused(fresh, action))
    .slice(0, 2);
  const opened = first === undefined ? [] : [{ do: 'access', open: first } as const];
  const run = { do: 'standing', key: 'run', heat: 'hot' } as const;
  const stand = isRefused(fresh, run) ? ({ do: 'standing', heat: 'hot' } as const) : run;
  return [fresh, after([...found, ...opened, stand], header).story];
}

/** A safeguard of the tree may come before it. */
const isRefused = (story: Story, action: Action): boolean =>
  decide(story, action, { shop, tree: () => undefined }).kind === 'refused';

const inputOf = (story: Story) => {
  const made = inputFrom(story);
  if (made.kind === 'bad') throw new Error(JSON.stringify(made.problems));
  return made.value;
};

test.each(trees.map(({ id }) => id))(
  'the list, the advice and the search of %s price a step alike',
  (id) => {
    for (const story of standings(id)) {
      const input = inputOf(story);
      const costs = new Costs(input);
      const price = (move: Move) => moveMinutes(input, move).total;
      const advice = quickAdvice(input);
      if (advice.kind === 'bad') throw new Error(JSON.stringify(advice.problems));
      const listed = new Map(
        otherChecks({ story, advice: advice.value }).map((line) => [line.id, line.minutes]),
      );

      input.model.checks.forEach((check, index) => {
        const minutes = price({ do: 'check', index });
        expect(listed.get(check.id)).toBeCloseTo(minutes, 9);
        expect(costs.minutes(index, costs.opened, costs.standing)).toBeCloseTo(minutes, 9);
      });
      input.model.causes.forEach((_, index) => {
        const step = costs.repair(index);
        const minutes = price({ do: 'repair', index });
        expect(costs.minutes(step, costs.opened, costs.standing)).toBeCloseTo(minutes, 9);
      });
      expect(advice.value.next.length).toBeGreaterThan(0);
      for (const { do: kind, id: step, minutes } of advice.value.next) {
        const from = kind === 'check' ? input.model.checks : input.model.causes;
        const index = from.findIndex((one) => one.id === step);
        expect(minutes).toBeCloseTo(price({ do: kind, index }), 9);
      }
    }
  },
);

test.each(trees.map(({ id }) => id))('the search of %s prices what follows a step alike', (id) => {
  const input = inputOf(after([], headerFor(shippedTree(id), shop)).story);
  const costs = new Costs(input);
  const moves: readonly Move[] = [
    ...input.model.checks.map((_, index) => ({ do: 'check', index }) as const),
    ...input.model.causes.map((_, index) => ({ do: 'repair', index }) as const),
  ];

  moves.forEach((first, step) => {
    const place = placeAfterMove(input, first, placeOf(input.openAccess, input.standing));
    const opened = costs.opened | (costs.masks[step] ?? 0);
    const standing = costs.standingAfter(step, costs.standing);
    moves.forEach((second, next) => {
      const { total } = moveMinutes(input, second, place);
      expect(costs.minutes(next, opened, standing)).toBeCloseTo(total, 9);
    });
  });
});

test('of a tree with more accesses than the search has bits, the rest are still paid for', () => {
  const [tree] = trees;
  if (tree === undefined) throw new Error('no trees');
  const ids = Array.from({ length: 40 }, (_, index) => `cover-${index}`);
  const accesses = Object.fromEntries(ids.map((id) => [id, { open: 3, close: 2 }]));
  const base = inputOf(after([], headerFor(tree, shop)).story);
  const checks = base.model.checks.map((check, index) =>
    index === 0 ? { ...check, access: ids, standing: {} } : check,
  );
  const input = { ...base, accesses, model: { ...base.model, checks, complaint: 1 } };

  const costs = new Costs(input);

  const first = checks[0]?.minutes ?? NaN;
  expect(costs.minutes(0, costs.opened, costs.standing)).toBe(first + 200);
});

test('the worked example: opening, closing, standing, repeats and a proof are all counted', () => {
  const { model, ...base } = inputOf(after([], headerFor(shippedTree('fuel-loss'), shop)).story);
  const [check, cause] = [model.checks[model.complaint], model.causes[0]];
  if (check === undefined || cause === undefined) throw new Error('an empty tree');
  const input = {
    ...base,
    tries: 2,
    accesses: { hood: { open: 1, close: 2 }, cover: { open: 10, close: 5 } },
    openAccess: ['hood'],
    standing: { key: 'run', heat: 'cold' } as const,
    model: {
      checks: [
        { ...check, minutes: 4, access: ['hood'], standing: { heat: 'hot' } as const },
        { ...check, minutes: 3, access: ['hood', 'cover'], standing: {} },
      ],
      causes: [
        {
          ...cause,
          minutes: 30,
          access: ['hood', 'cover'],
          standing: { key: 'off' } as const,
          repeats: [1],
        },
      ],
      complaint: 0,
    },
  };

  // Common practice, no source: 2 minutes to turn the key, 25 to warm a cold engine through.
  expect(moveMinutes(input, { do: 'repair', index: 0 })).toEqual({
    own: 30,
    access: 15,
    standing: 2,
    state: 0,
    proof: 3 + 2 * 4 + 25,
    total: 83,
  });
});
