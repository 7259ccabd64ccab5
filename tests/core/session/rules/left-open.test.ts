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

test('what was put on for a while is named until it is off', () => {
  const on: Action = { do: 'aid-on', aid: 'jumper at the coil' };
  const off: Action = { do: 'aid-off', aid: 'jumper at the coil' };

  expect(leftLines(after([on]).story)).toEqual([
    'Put on for a while and still on: jumper at the coil.',
  ]);
  expect(leftLines(after([on, off]).story)).toEqual([]);
});
