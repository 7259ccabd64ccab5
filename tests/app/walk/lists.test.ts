import { expect, test } from 'vitest';
import { gradeOf, grades } from '../../../src/core/reason/grade.ts';
import { currentLeg } from '../../../src/core/session/story.ts';
import { otherChecks, suspects } from '../../../src/app/walk/lists.ts';
import { makeProgram, press, startKeys, thoughtOut } from '../../helpers/program.ts';

function confirmed() {
  const made = makeProgram();
  press(made.program, `${startKeys()}y2`);
  return made;
}

const sessionOf = ({ program }: ReturnType<typeof makeProgram>) => {
  const { session } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return session;
};

test('other checks: each check once, what the advice ranks first, what is done last', async () => {
  const made = confirmed();
  await thoughtOut(made.program);
  const session = sessionOf(made);

  const lines = otherChecks(session);
  const ranked = (session.advice?.next ?? []).filter((step) => step.do === 'check');

  const { tree } = session.story.legs[0] ?? {};
  expect(lines.map(({ id }) => id).toSorted()).toEqual(Object.keys(tree?.checks ?? {}).toSorted());
  expect(lines.slice(0, ranked.length).map(({ id }) => id)).toEqual(ranked.map(({ id }) => id));
  expect(lines.at(-1)).toMatchObject({ id: 'idle-check', done: true });
});

test('other checks: the line that is picked is the check that is begun', async () => {
  const made = confirmed();
  await thoughtOut(made.program);
  const third = otherChecks(sessionOf(made))[2];

  press(made.program, 'o3');

  expect(sessionOf(made).story.due).toEqual({ kind: 'check', check: third?.id, why: 'chosen' });
});

test('suspects: the surest step first, on a step the shortest repair, and an unlikely one is picked with a word of warning', async () => {
  const made = confirmed();
  await thoughtOut(made.program);
  const lines = suspects(sessionOf(made));
  const steps = lines.map(({ chance }) => grades.indexOf(gradeOf(chance ?? -1)));
  const { causes } = currentLeg(sessionOf(made).story).tree;
  const maybe = lines.filter(({ chance }) => gradeOf(chance ?? -1) === 'maybe');
  const minutes = maybe.map(({ id }) => causes[id]?.repair.minutes ?? -1);

  press(made.program, 'r2');

  expect(steps).toEqual(steps.toSorted((one, other) => one - other));
  expect(minutes).toEqual(minutes.toSorted((one, other) => one - other));
  expect(made.program.state().screen).toMatchObject({ pickedCause: lines[1]?.id });
  expect(made.program.state().notice?.text).toMatch(
    /^Only (?:maybe|faint): .* would tell more first/,
  );
  expect(made.program.state().question.due?.cause?.id).toBe(lines[1]?.id);
});

test('a page opened from a picked cause tells of that cause, and gives way to it again', async () => {
  const made = confirmed();
  await thoughtOut(made.program);
  const { id = '' } = suspects(sessionOf(made))[1] ?? {};
  press(made.program, 'r2');
  const { screen } = made.program.state();

  press(made.program, 'i');
  expect(made.program.state().question).toMatchObject({ mode: 'full', due: { cause: { id } } });
  press(made.program, 'b');

  expect(made.program.state().screen).toEqual(screen);
});

test('apart: each thing goes back by itself, and the list stays up until it is empty', () => {
  const made = confirmed();
  press(
    made.program,
    'pair filter<enter><enter><enter><enter><enter>phorn<enter><enter><enter><enter><enter>a',
  );

  press(made.program, 'y');
  expect(made.program.state().screen.kind).toBe('apart');
  press(made.program, '1y');

  expect(made.program.state().screen.kind).toBe('walk');
  expect(sessionOf(made).story.partsOff).toEqual([]);
});

test.each([
  ['2', 'handed-on'],
  ['3', 'given-up'],
  ['4', 'not-reproduced'],
] as const)('close: line %s ends the session as %s', (key, as) => {
  const made = confirmed();

  press(made.program, `c${key}y`);

  expect(sessionOf(made).story.closed).toMatchObject({ as });
});

test('close: nothing is closed as fixed before it is proven', () => {
  const made = confirmed();

  press(made.program, 'c1y');

  expect(sessionOf(made).story.closed).toBeUndefined();
  expect(made.program.state().notice?.kind).toBe('problem');
});

test.each(['o', 'r', 'a', 'c'])('the list that %s opens gives way to the walk unchanged', (key) => {
  const made = confirmed();
  const before = sessionOf(made).events.length;

  press(made.program, `${key}<down><left>`);

  expect(made.program.state().screen.kind).toBe('walk');
  expect(sessionOf(made).events).toHaveLength(before);
});

test('sessions: the list opens the one that is picked', () => {
  const made = confirmed();
  press(made.program, 'qa');
  expect(made.program.state().screen.kind).toBe('sessions');

  press(made.program, '1');

  expect(sessionOf(made).story.findings).toMatchObject([{ check: 'idle-check' }]);
});

test('a line past the ninth is picked by its number among the nine around the cursor', () => {
  const made = confirmed();
  press(made.program, 'r');
  const tenth = made.program.state().screen;
  press(made.program, `${'<down>'.repeat(9)}<enter>`);
  const byArrows = made.program.state().screen;
  press(made.program, '<esc>r<pgdn>1');

  expect(tenth.kind).toBe('suspects');
  expect(made.program.state().screen).toEqual(byArrows);
});

/** Opens the list of checks and picks one by its number among the nine around the cursor. */
function pickCheck(made: ReturnType<typeof confirmed>, id: string): void {
  const at = otherChecks(sessionOf(made)).findIndex((line) => line.id === id);
  if (at < 0) throw new Error(`no check ${id}`);
  press(made.program, `o${'<pgdn>'.repeat(Math.floor(at / 9))}${(at % 9) + 1}`);
}

test('a check that could not be judged yet is not made: what it waits for stands in its place', () => {
  const made = confirmed();
  pickCheck(made, 'vac-level');

  expect(sessionOf(made).story.due).toMatchObject({ kind: 'check', check: 'choke-hot' });
  expect(made.program.state().notice?.text).toMatch(
    /^This can be judged only after "Choke and fast-idle cam when hot" has shown good\. It comes first\.$/,
  );
});

test('where that has shown something else, the list stays and nothing is begun', () => {
  const made = confirmed();
  made.program.dispatch({
    kind: 'acted',
    action: { do: 'find', check: 'choke-hot', result: 'part', acknowledged: true },
  });
  const events = sessionOf(made).events.length;
  pickCheck(made, 'vac-level');

  expect(sessionOf(made).events).toHaveLength(events);
  expect(made.program.state().screen.kind).toBe('others');
  expect(made.program.state().notice?.text).toContain('choose another check');
});
