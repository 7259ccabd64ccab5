import { expect, test } from 'vitest';
import { historyLines } from '../../../src/app/walk/history.ts';
import { historyPages } from '../../../src/screens/history-rows.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

function after(keys: string) {
  const { program } = makeProgram();
  press(program, `${startKeys()}${keys}`);
  const { session, question, screen, notice } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return { story: session.story, events: session.events, mode: question.mode, screen, notice };
}

const way = 'y2nfan belt<enter>pair filter<enter><enter><enter><enter><enter>';

test('all that was done stands there with its time, then what is left open', () => {
  const lines = historyLines(after(way).story);

  expect(lines.map(({ words }) => words)).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/^We put the complaint to its test/),
      'We noted: "fan belt".',
      'We took off the air filter (bag 1).',
      'Still off: air filter (bag 1).',
    ]),
  );
  expect(lines.every(({ time }) => time === 'now' || /^\d\d:\d\d$/.test(time))).toBe(true);
});

test('the newest line is marked, and an earlier act is taken back from there', () => {
  const { story, screen, notice } = after(`${way}t<up>y`);

  expect(screen.kind).toBe('history');
  expect(notice?.text).toBe('Taken back: We noted: "fan belt".');
  expect(historyLines(story).map(({ words }) => words)).toContain(
    'We noted: "fan belt". [taken back]',
  );
  expect(story.partsOff).toHaveLength(1);
});

test('what was taken back cannot be taken back once more', () => {
  const { events, notice } = after(`${way}t<up>yZy`);

  expect(events.filter(({ kind }) => kind === 'corrected')).toHaveLength(1);
  expect(notice?.text).toBe('There is nothing of this to take back.');
});

test('an answer is given anew from there, and b takes that back: it says again what it said', () => {
  const anew = after(`${way}t<up><up>a3`);
  expect(anew.story.findings).toMatchObject([{ check: 'idle-check', corrected: true }]);
  expect(anew.story.findings[0]?.result).not.toBe('hunts');

  const back = after(`${way}t<up><up>a3b`);
  expect(back.story.findings).toMatchObject([{ result: 'hunts', corrected: false }]);
});

test('answering anew is left with escape, and cannot be answered with unsure', () => {
  expect(after(`${way}t<up><up>a<esc>`).events.some(({ kind }) => kind === 'corrected')).toBe(
    false,
  );
  expect(after(`${way}t<up><up>auy`).events.some(({ kind }) => kind === 'corrected')).toBe(false);
});

test('on a small window a part of the list is seen, and the marked line in full', () => {
  const { story } = after(`${way}${'nbelt<enter>'.repeat(12)}`);
  const lines = historyLines(story);
  const size = { rows: 8, columns: 60 };

  for (const [cursor, { words }] of lines.entries()) {
    const [page = [], ...more] = historyPages(story, cursor, size);
    expect(more).toEqual([]);
    expect(page.length).toBeLessThanOrEqual(8);
    const seen = page.map(({ text }) => text).join(' ');
    for (const word of words.split(' ')) expect(seen).toContain(word);
  }
});
