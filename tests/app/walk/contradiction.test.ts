import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { update } from '../../../src/app/update.ts';
import { contradictionLines, openLine } from '../../../src/app/walk/contradiction.ts';
import { suspectRows } from '../../../src/app/walk/suspect-rows.ts';
import { whyLines } from '../../../src/app/walk/why.ts';
import { makeProgram, passPages, press, startKeys, thoughtOut } from '../../helpers/program.ts';
import { stampAt } from '../../helpers/story.ts';

/** A session in which a check was good before and shows worse now, with nothing changed. */
function contradicted() {
  const made = makeProgram();
  press(made.program, `${startKeys()}y2o`);
  const told = (action: Action) => made.program.dispatch({ kind: 'acted', action });
  press(made.program, '<esc>');
  told({ do: 'find', check: 'dwell-run', result: 'good' });
  told({ do: 'begin', check: 'dwell-run' });
  passPages(made.program);
  press(made.program, '3');
  return made;
}

const screenOf = ({ program }: ReturnType<typeof makeProgram>): string =>
  program.state().screen.kind;
const storyOf = ({ program }: ReturnType<typeof makeProgram>) => {
  const { session } = program.state();
  if (session === undefined) throw new Error('no session');
  return session.story;
};

test('a check that shows worse than before with nothing changed is asked about', () => {
  expect(screenOf(contradicted())).toBe('contradiction');
});

/** What `s` and the page write: the kinds of the events that the keys add. */
const addedBy = (made: ReturnType<typeof makeProgram>, keys: string): readonly unknown[] => {
  const before = storyOf(made).entries.length;
  press(made.program, keys);
  return storyOf(made)
    .entries.slice(before)
    .map(({ event }) => ('as' in event ? event.as : event.kind));
};
const dwell = (made: ReturnType<typeof makeProgram>): readonly string[] =>
  storyOf(made).findings.flatMap(({ check, result }) => (check === 'dwell-run' ? [result] : []));

test.each([
  ['1', 'misread-then', ['off']],
  ['2', 'misread-now', ['good']],
  // The key that answered the check marks its line only: Enter says it.
  ['3<enter>', 'comes-and-goes', ['good', 'off']],
] as const)('%s says that it was %s', (key, as, left) => {
  const made = contradicted();

  expect(addedBy(made, key)).toEqual([as]);
  expect(screenOf(made)).toBe('walk');
  expect(dwell(made).map((result) => (result === 'good' ? 'good' : 'off'))).toEqual(left);
});

test('a hand that leans on Enter says nothing, nor does a number that stands for nothing', () => {
  const made = contradicted();

  expect(addedBy(made, '<enter><enter><enter>4')).toEqual([]);
  expect(screenOf(made)).toBe('contradiction');
  expect(addedBy(made, '<down><enter>')).toEqual(['misread-then']);
});

test('the key whose answer brought the question, held down, says nothing', () => {
  const held = makeProgram();
  press(held.program, startKeys());
  const told = (action: Action) => held.program.dispatch({ kind: 'acted', action });
  told({ do: 'find', check: 'choke-hot', result: 'open' });
  told({ do: 'begin', check: 'choke-hot' });
  passPages(held.program);
  expect(addedBy(held, '2')).toContain('found');
  expect(screenOf(held)).toBe('contradiction');
  expect(addedBy(held, '2222')).toEqual([]);
  expect(addedBy(held, '1')).toEqual(['misread-then']);
});

test('it may wait: the line under every step says that it is open, and s asks again', () => {
  const made = contradicted();

  expect(addedBy(made, '<esc>')).toEqual([]);
  expect(openLine(storyOf(made))).toContain('a check got worse');
  press(made.program, 'z');
  expect(screenOf(made)).toBe('contradiction');
  expect(addedBy(made, '2')).toEqual(['misread-now']);
  expect(openLine(storyOf(made))).toBe('');
  press(made.program, 'z');
  expect(screenOf(made)).toBe('walk');
});

test('b takes back what was said, and the question is open again', () => {
  const made = contradicted();
  press(made.program, '1');

  expect(addedBy(made, 'b')).toEqual(['corrected']);
  expect(dwell(made)).toHaveLength(2);
  expect(openLine(storyOf(made))).not.toBe('');
});

test('with a repair between it may be new since that', () => {
  const made = makeProgram();
  press(made.program, startKeys());
  const told = (action: Action) => made.program.dispatch({ kind: 'acted', action });
  told({ do: 'find', check: 'dwell-run', result: 'good' });
  told({ do: 'repair', cause: 'idle-mix', acknowledged: true });
  told({ do: 'find', check: 'dwell-run', result: 'off' });
  press(made.program, 'z');

  expect(contradictionLines(storyOf(made)).map(({ as }) => as)).toContain('new-since');
  expect(addedBy(made, '4')).toEqual(['new-since']);
});

/** No check stands on the screen. */
const here = { check: undefined };

test('the advice is said to be on its way only while it is', async () => {
  const { program } = contradicted();
  const { session } = program.state();
  if (session === undefined) throw new Error('no session');
  expect(whyLines({ ...session, advice: undefined }, here)).toEqual(['Still being worked out.']);
  await thoughtOut(program);
  expect(program.state().session?.advice).toBeDefined();

  const events = session.events.length;
  const told = update(
    { ...program.state(), session: { ...session, advice: undefined } },
    { kind: 'not-advised', events, why: 'the tree has no such check.' },
    stampAt(1),
  ).state.session;
  if (told === undefined) throw new Error('no session');
  expect(whyLines(told, here)).toEqual([
    'The suspects cannot be told: the tree has no such check.',
  ]);
  expect(suspectRows(told, here, { rows: 3, columns: 78 })).toEqual([
    'SUSPECTS  cannot be told (w says why)',
  ]);
  press(program, '<esc>');
  program.dispatch({ kind: 'acted', action: { do: 'close', as: 'given-up' } });
  const closed = program.state().session;
  if (closed === undefined) throw new Error('no session');
  expect(whyLines({ ...closed, advice: undefined }, here).join(' ')).not.toContain('Still being');
});

test('the same result again is no contradiction', () => {
  const made = makeProgram();
  press(made.program, startKeys());
  const told = (action: Action) => made.program.dispatch({ kind: 'acted', action });

  told({ do: 'find', check: 'dwell-run', result: 'off' });
  told({ do: 'find', check: 'dwell-run', result: 'off' });

  expect(screenOf(made)).toBe('walk');
});
