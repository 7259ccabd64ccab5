import { expect, test } from 'vitest';
import { jobOf } from '../../../src/core/jobs/tally.ts';
import type { Payload } from '../../../src/core/session/event.ts';
import { newEvent } from '../../../src/core/session/read-event.ts';
import { headerFor, stampAt } from '../../helpers/story.ts';

/** The minutes that a look counts with which was written so long after the complaint, by the tree 1. */
function counted(minutes: number, about: Partial<Payload> = {}, between: readonly Payload[] = []) {
  const said: Payload[] = [
    { kind: 'found', check: 'lamp', result: 'dark' },
    ...between,
    { kind: 'found', check: 'look', result: 'whole', ...about } as Payload,
  ];
  const last = said.length - 1;
  const events = said.map((payload, index) =>
    newEvent(index + 1, stampAt(index === last ? 10 + minutes : 10), payload),
  );
  const { took } = jobOf('job', { header: headerFor(), events, damage: [] });
  return took.find(({ check }) => check === 'look')?.minutes;
}

test.each([
  ['as it was measured', 2, 2],
  ['at most four times its plan: somebody did something else between', 45, 4],
  ['not at all under a tenth of it: it was typed in afterwards', 0.05, undefined],
])('counts %s', (_, minutes, expected) => {
  expect(counted(minutes)).toEqual(expected);
});

test('a finding that was told for another time is no measure', () => {
  expect(counted(2, { told: '2026-04-11T09:00:00+00:00' })).toBeUndefined();
});

test('what was opened up in the same go is not split off, so it is left out', () => {
  const opened: Payload = { kind: 'access', access: 'dash', now: 'open', implied: true };

  expect(counted(2, {}, [opened])).toBeUndefined();
});
