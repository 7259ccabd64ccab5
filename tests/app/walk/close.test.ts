import { expect, test } from 'vitest';
import { closePages } from '../../../src/screens/close-rows.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

function after(keys: string) {
  const { program } = makeProgram();
  press(program, `${startKeys()}${keys}`);
  const { session, question } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return { story: session.story, events: session.events, mode: question.mode };
}

const rows = (keys: string, size = { rows: 18, columns: 80 }) =>
  closePages(after(keys).story, -1, size).map((page) => page.map(({ text }) => text));

const messy = 'y2pair filter<enter><enter><enter><enter><enter>dnew belt<enter>r2Z1y<enter>';

test('what is off, running, unproven and still to do is named one a line before it is closed', () => {
  const [page = []] = rows(messy);

  expect(page[0]).toBe('CLOSE: this is how it is left.');
  expect(page).toEqual(
    expect.arrayContaining([
      'Still off: air filter (bag 1).',
      'The key is at RUN.',
      'The engine is idling.',
      'Still to do: new belt',
      expect.stringMatching(/^Named and not mended: /),
    ]),
  );
});

test('on a small window it goes over pages, and the ways to end it stand on the last', () => {
  const pages = rows(messy, { rows: 6, columns: 60 });

  expect(pages.length).toBeGreaterThan(1);
  expect(pages.slice(0, -1).every((page) => page.at(-1)?.startsWith('space: read on'))).toBe(true);
  expect(pages.at(-1)).toContain('the complaint could not be made to happen');
});

test('a closed job is opened again by c and y, and the record keeps both', () => {
  expect(after(`${messy}c3y`).story.closed?.as).toBe('given-up');
  expect(after(`${messy}c3yc`).mode).toBe('reopen');

  const { story, events } = after(`${messy}c3yc${'y'}`);

  expect(story.closed).toBeUndefined();
  expect(events.slice(-2).map(({ kind }) => kind)).toEqual(['closed', 'reopened']);
});

test('opening it again is taken back like any act: it is closed as before', () => {
  const { story } = after(`${messy}c3ycyb`);

  expect(story.closed?.as).toBe('given-up');
});
