import { expect, test } from 'vitest';
import { noticeNow } from '../../../src/app/notice.ts';
import { timerLines } from '../../../src/app/pages/timers.ts';
import type { Settings } from '../../../src/core/settings.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

function begun(settings: Partial<Settings> = {}) {
  const made = makeProgram({ settings });
  press(made.program, startKeys());
  return made;
}

test('a timer is typed, stands over the keys, and is stopped from its line', () => {
  const { program } = begun();

  press(program, 'T');
  const other = timerLines(program.state()).findIndex(({ action }) => action === undefined);
  press(program, `${'<down>'.repeat(other + 1)}<enter>15 min charge<enter>`);

  expect(program.state().screen.kind).toBe('walk');
  expect(noticeNow(program.state()).left).toBe('charge 15 min left');
  press(program, `T${'<down>'.repeat(other + 2)}<enter>`);
  expect(noticeNow(program.state()).left).toBe('');
});

test('it is shown on other screens of the job, behind what was just said', () => {
  const { program } = begun();
  program.dispatch({ kind: 'acted', action: { do: 'timer', label: 'soak', minutes: 20 } });

  press(program, 'w');
  expect(noticeNow(program.state()).left).toBe('soak 20 min left');
  press(program, '<esc>z');
  expect(noticeNow(program.state()).left).toMatch(/^No finding .*\| {2}soak 20 min left$/);
});

test.each([
  ['on', 1],
  ['off', 0],
] as const)('with the bell %s it rings %i times when it has run out', (bell, times) => {
  const { program, rung } = begun({ bell });
  // The clock of these tests goes on a second a message.
  program.dispatch({ kind: 'acted', action: { do: 'timer', label: 'soak', minutes: 0.1 } });

  for (let tick = 0; tick < 12; tick += 1) program.dispatch({ kind: 'ticked' });

  expect(rung()).toBe(times);
  expect(noticeNow(program.state()).left).toBe('soak: done now');
});

test('opening and leaving the page records nothing, and a digit only marks', () => {
  const { program } = begun();
  const before = program.state().session?.events.length;

  press(program, 'T1<esc>T<enter><esc>');

  expect(program.state().session?.events).toHaveLength(before ?? -1);
});

test('the wait that the step speaks of is offered by its own words', () => {
  const { program } = begun();
  press(program, 'y');

  press(program, 'T1');

  expect(timerLines(program.state())[0]?.words).toBe('Start 1 min: watch the speed for a minute');
  press(program, '<enter>');
  expect(noticeNow(program.state()).left).toBe('watch the speed for a minute 1 min left');
});
