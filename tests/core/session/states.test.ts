import { describe, expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import { refinedAdvice } from '../../../src/core/reason/advice/advise.ts';
import { moveMinutes, placeOf, placeAfterMove } from '../../../src/core/reason/advice/minutes.ts';
import { Costs } from '../../../src/core/reason/advice/costs.ts';
import { checkMinutes, inputFrom } from '../../../src/core/reason/history/from-story.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import type { Action } from '../../../src/core/session/action.ts';
import type { Story } from '../../../src/core/session/story.ts';
import { broughtBack, overAfter } from '../../../src/core/tree/states.ts';
import { shippedTree } from '../../helpers/library.ts';
import { readingsAfter, see } from '../../helpers/readings.ts';

const weak = see('pull-test', 'weak');
const look = see('bowl-look', 'still');
const brought: Action = { do: 'begin', check: 'bowl-look', brought: true };
const storyOf = (...actions: readonly Action[]): Story => readingsAfter(actions).story;
const inputOf = (story: Story) => {
  const input = inputFrom(story);
  if (input.kind === 'bad') throw new Error('the session can be believed');
  return input.value;
};
const warnings = (story: Story, action: Action) => {
  const ruling = decide(story, action, { tree: () => undefined });
  return ruling.kind === 'accepted' ? ruling.warnings : ['refused'];
};

test('a step leaves behind what it spends, and what it needs was there', () => {
  expect(overAfter([], { spends: ['hot'] })).toEqual(['hot']);
  expect(overAfter(['hot', 'dry'], { brings: ['hot'] })).toEqual(['dry']);
  expect(overAfter(['hot'], { brings: ['hot'], spends: ['hot'] })).toEqual(['hot']);
  expect(overAfter(['cold', 'untouched'], { brings: ['untouched', 'cold'] })).toEqual([]);
});

test('what was brought back brings along what comes with it', () => {
  const { states } = shippedTree('cold-run');

  expect(broughtBack({ states }, ['untouched'])).toEqual(['untouched', 'cold']);
  expect(broughtBack({ states }, ['cold'])).toEqual(['cold']);
});

describe('a state that passes', () => {
  test('is there until a step spends it, and again once it is said or shown to be', () => {
    expect(storyOf(weak).over).toEqual([]);
    expect(storyOf(weak, look).over).toEqual(['refuses']);
    expect(storyOf(weak, look, brought).over).toEqual([]);
    expect(storyOf(weak, { do: 'unsure', check: 'bowl-look' }).over).toEqual(['refuses']);
    expect(storyOf(weak, { do: 'skip', check: 'bowl-look', reason: 'dark' }).over).toEqual([]);
  });

  test('is told where it is needed and was spent, unless it is said to be there again', () => {
    const told = [
      'This tells something only while it refuses to start, hot; a step before has spent that, and nobody said it is so again.',
    ];

    expect(warnings(storyOf(weak), look)).toEqual([]);
    expect(warnings(storyOf(weak, look), look)).toEqual(told);
    expect(warnings(storyOf(weak, look), { do: 'begin', check: 'bowl-look' })).toEqual(told);
    expect(warnings(storyOf(weak, look), brought)).toEqual([]);
    expect(warnings(storyOf(weak, look, brought), look)).toEqual([]);
  });

  test('is told in the account: brought back, or not noted', () => {
    const record = { events: 9, passedOver: 0, link: 'ab'.repeat(32) };
    const written = (...actions: readonly Action[]) =>
      writeUp(storyOf(weak, look, ...actions, see('bowl-look', 'boils')), record).markdown;

    expect(written()).toContain(
      'The check tells something only while it refuses to start, hot, which a step before had spent; whether it was so again is not noted.',
    );
    expect(written(brought)).toContain(
      'brought back what the next check needs: it refuses to start, hot',
    );
    expect(written(brought)).not.toContain('is not noted.');
  });
});

describe('what it costs to bring back', () => {
  test('is part of the one cost of a step, wherever that is asked for', () => {
    // The look takes 3 minutes from where the vehicle stands; bringing the state back takes 25.
    expect(checkMinutes(storyOf(weak, look), 'bowl-look')).toBe(28);
    expect(checkMinutes(storyOf(weak, look, brought), 'bowl-look')).toBe(3);

    const input = inputOf(storyOf(weak, look));
    const index = input.model.checks.findIndex(({ id }) => id === 'bowl-look');
    const parts = moveMinutes(input, { do: 'check', index });
    expect(parts).toEqual({ own: 3, access: 0, standing: 0, state: 25, proof: 0, total: 28 });
    const costs = new Costs(input);
    expect(costs.minutes(index, costs.opened, costs.standing)).toBe(28);
  });

  test('counts from the step that spends it on, in a search as well', () => {
    const input = inputOf(storyOf(weak));
    const index = input.model.checks.findIndex(({ id }) => id === 'bowl-look');
    const move = { do: 'check', index } as const;
    const costs = new Costs(input);
    const once = costs.minutes(index, costs.opened, costs.standing);
    const again = costs.minutes(index, costs.opened, costs.standingAfter(index, costs.standing));
    const left = placeAfterMove(input, move, placeOf(input.openAccess, input.standing));

    expect(left.over).toEqual(['refuses']);
    // Only the way to its standing is behind it the second time.
    expect(again).toBe(28);
    expect(once).toBe(moveMinutes(input, move).total);
    expect(moveMinutes(input, move).state).toBe(0);
  });

  test('stands among the parts of the advised steps', () => {
    const advice = refinedAdvice(inputOf(storyOf(weak, { do: 'unsure', check: 'bowl-look' })));
    const step =
      advice.kind === 'good' ? advice.value.next.find(({ id }) => id === 'bowl-look') : undefined;

    expect(step?.parts.state).toBe(25);
  });
});
