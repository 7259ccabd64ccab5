import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

/** A session in which a check was good before and shows worse now, with nothing changed. */
function contradicted() {
  const made = makeProgram();
  press(made.program, `${startKeys()}<enter><enter><enter>2o`);
  const told = (action: Action) => made.program.dispatch({ kind: 'acted', action });
  press(made.program, '<esc>');
  told({ do: 'find', check: 'dwell-run', result: 'good' });
  told({ do: 'begin', check: 'dwell-run' });
  for (let guard = 0; guard < 6 && screenOf(made) === 'walk'; guard += 1)
    press(made.program, guard < 5 ? '<enter>' : '3');
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

test('misread: the last answer is given anew', () => {
  const made = contradicted();

  press(made.program, '1');

  const { screen } = made.program.state();
  expect(screen).toMatchObject({ kind: 'walk', correcting: storyOf(made).findings.at(-1)?.n });
});

test('something new: it is noted, and the later finding counts', () => {
  const made = contradicted();

  press(made.program, '3');

  expect(storyOf(made).entries.at(-1)?.said).toMatchObject({ kind: 'noted', about: 'dwell-run' });
  expect(storyOf(made).findings.filter(({ check }) => check === 'dwell-run')).toHaveLength(2);
});

test('not repeatable: neither counts, and both stay in the record as withdrawn', () => {
  const made = contradicted();

  press(made.program, '4');

  const story = storyOf(made);
  expect(story.findings.filter(({ check }) => check === 'dwell-run')).toEqual([]);
  expect(story.unsure.map(({ check }) => check)).toContain('dwell-run');
  const written = story.entries.filter(
    ({ event }) => event.kind === 'found' && event.check === 'dwell-run',
  );
  expect(written).toHaveLength(2);
});

test('the same result again is no contradiction', () => {
  const made = makeProgram();
  press(made.program, startKeys());
  const told = (action: Action) => made.program.dispatch({ kind: 'acted', action });

  told({ do: 'find', check: 'dwell-run', result: 'off' });
  told({ do: 'find', check: 'dwell-run', result: 'off' });

  expect(screenOf(made)).toBe('walk');
});
