import { expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import { leftLines } from '../../../../src/core/session/rules/left-open.ts';
import { after } from '../../../helpers/story.ts';

test.each([
  ['disconnected', ['The battery is disconnected.']],
  ['meter-in-series', ['A meter is in series in the ground lead.']],
  ['connected', []],
] as const)('a battery left %s is named before the job is closed', (battery, lines) => {
  const set: Action = { do: 'standing', battery };

  expect(leftLines(after([set]).story)).toEqual(lines);
});
