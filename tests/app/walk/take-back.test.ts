import { expect, test } from 'vitest';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

function after(keys: string) {
  const { program } = makeProgram();
  press(program, `${startKeys()}${keys}`);
  const { session, notice, question, screen } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return { story: session.story, events: session.events, notice, mode: question.mode, screen };
}

test.each([
  ['an answer', 'y2', 'b', /^Taken back: We put the complaint to its test/],
  ['a note', 'y2nfan belt<enter>', 'b', /^Taken back: We noted: "fan belt"/],
  [
    'a part off',
    'y2pair filter<enter><enter><enter><enter><enter>',
    'b',
    /^Taken back: We took off the air filter/,
  ],
  ['a thing still to do', 'y2dnew belt<enter>', 'b', /^Taken back: To be done later: new belt/],
  ['unsure', 'yuy', 'b', /^Taken back: We could not tell/],
  ['a cause named', 'y2r2Z1y<enter>', 'b', /^Taken back: We named the cause/],
  ['looked, not this', 'y2r2Z1x', 'b', /^Taken back: We looked at .*: it was not that/],
  ['a repair', 'y2r2Z1y<enter>ZyZy<esc>', 'b', /^Taken back: Then the vacuum hose was mended/],
  ['a closing', 'y2c3y', 'b', /^Taken back: The session was closed/],
] as const)('%s is taken back by b, and told in one line', (_, way, key, words) => {
  const before = after(way);
  const back = after(`${way}${key}`);

  expect(back.notice?.text).toMatch(words);
  expect(back.events.length).toBeGreaterThan(before.events.length);
  expect(back.events.at(-1)).toMatchObject({ kind: 'corrected' });
});

test('again takes back the one before, down to the first set-up; then there is nothing', () => {
  const { story, notice } = after(`y2nfan belt<enter>${'bZ'.repeat(12)}b`);

  expect(story.findings).toEqual([]);
  expect(story.standing).toEqual({ battery: 'connected', key: 'off', engine: 'off' });
  expect(notice?.text).toContain('Nothing is written that could be taken back.');
});

test('a repair taken back stands to be done again', () => {
  expect(after('y2r2Z1y<enter>ZyZy<esc>').story.due.kind).not.toBe('repair');
  expect(after('y2r2Z1y<enter>ZyZy<esc>b').story.due.kind).toBe('repair');
});

test.each(['<back>', '<delete>'])('%s on an empty field does nothing else', (key) => {
  const before = after('y2o5<enter>5200<enter>13<back><back>');
  const now = after(`y2o5<enter>5200<enter>13<back><back>${key.repeat(5)}`);

  expect(now.events).toHaveLength(before.events.length);
  expect(now.mode).toBe(before.mode);
  expect(now.screen).toEqual(before.screen);
});
