import { expect, test } from 'vitest';
import { refinedAdvice } from '../../../../src/core/reason/advice/advise.ts';
import { inputFrom, leftOut } from '../../../../src/core/reason/history/from-story.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { holdsBefore } from '../../../../src/core/session/safeguard.ts';
import { guardedAfter, opened, see } from '../../../helpers/guarded.ts';

const idsOf = (actions: readonly Action[]): readonly string[] =>
  leftOut(guardedAfter(actions).story).map(({ id }) => id);

test('what a shut safeguard holds back is left out, checks and repairs alike, until it is shown', () => {
  expect(idsOf([])).toEqual(
    expect.arrayContaining(['heat-run', 'flow-see', 'timing-light', 'late']),
  );
  expect(idsOf([])).not.toContain('oil-look');
  expect(idsOf([])).not.toContain('gasket');
  expect(idsOf(opened)).toEqual([]);
});

test('a check that was passed over is left out beside it', () => {
  const skip: Action = { do: 'skip', check: 'fan-spin', reason: 'no light' };

  expect(idsOf([...opened, skip])).toEqual(['fan-spin']);
});

test.each<readonly [string, readonly Action[]]>([
  ['nothing', []],
  ['milky oil', [see('oil-look', 'milky')]],
  ['an empty radiator', [see('oil-look', 'clean'), see('cold-level', 'empty')]],
  ['both in order', opened],
])('after %s nothing is advised that the session would refuse', (_, actions) => {
  const { story } = guardedAfter(actions);
  const made = inputFrom(story);
  const advice =
    made.kind === 'good' ? refinedAdvice(made.value, { leaveOut: leftOut(story) }) : made;
  if (advice.kind === 'bad') throw new Error(JSON.stringify(advice.problems));

  const refused = advice.value.next.filter(
    ({ do: kind, id }) =>
      holdsBefore(story, kind === 'check' ? { kind, check: id } : { kind, cause: id }).length > 0,
  );

  expect(advice.value.next.length).toBeGreaterThan(0);
  expect(refused).toEqual([]);
});
