import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeRecording } from '../../../src/app/pages/replay-frames.ts';
import type { OpenSession } from '../../../src/app/state.ts';
import { believe } from '../../../src/core/reason/belief/posterior.ts';
import { inputFrom } from '../../../src/core/reason/history/from-story.ts';
import { fold } from '../../../src/core/session/fold.ts';
import type { Header } from '../../../src/core/session/header/header.ts';
import { readSession } from '../../../src/store/recover.ts';
import { makeProgram, press } from '../../helpers/program.ts';
import { after } from '../../helpers/story.ts';

const path = 'sessions/examples/2026-04-11-1042-orchard-van-no-supply.jsonl';

function replaying() {
  const { program } = makeProgram();
  const read = readSession(readFileSync(path), path);
  if (read.kind === 'bad') throw new Error('the example cannot be read');
  const { header, events } = read.value;
  program.dispatch({ kind: 'replay-opened', path, header, events });
  return { program, events };
}

const at = ({ program }: ReturnType<typeof replaying>): number => {
  const { screen } = program.state();
  return screen.kind === 'replay' ? screen.at : -1;
};

const stopsOf = ({ program }: ReturnType<typeof replaying>): readonly number[] => {
  const { screen } = program.state();
  return screen.kind === 'replay' ? screen.recording.stops : [];
};

test('a replay begins before the first event and steps on and back, a decision at a time', () => {
  const made = replaying();
  const [, second = 0] = stopsOf(made);

  press(made.program, '<enter><enter><enter>b');

  expect(at(made)).toBe(second);
  expect(made.program.state().session?.story.entries).toHaveLength(second);
  press(made.program, 'bbb');
  expect(at(made)).toBe(0);
});

test('behind the last decision stands the end of the session', () => {
  const made = replaying();

  press(made.program, '<enter>'.repeat(stopsOf(made).length + 2));

  expect(at(made)).toBe(made.events.length);
});

test('it jumps to where the leading suspect changed, and to the end when it changes no more', () => {
  const made = replaying();
  const { screen } = made.program.state();
  const turning = screen.kind === 'replay' ? screen.recording.turning : [];

  press(made.program, 't');
  const first = at(made);
  press(made.program, 't'.repeat(turning.length));

  expect(turning.length).toBeGreaterThan(0);
  expect(first).toBe(turning[0]);
  expect(at(made)).toBe(made.events.length);
});

test.each([
  ['the number of an event', '12<enter>', 12],
  ['a number past the last event', '9999<enter>', 'the end'],
  ['back to the beginning', '12<enter>0<enter>', 0],
  ['what was typed is forgotten', '3<enter>12<esc>', 3],
  ['a sign is taken away', '125<back><enter>', 12],
  ['what is no place leaves it where it was', '3<enter>1:2:3<enter>', 3],
] as const)('a place is typed: %s', (_, keys, place) => {
  const made = replaying();

  press(made.program, keys);

  expect(at(made)).toBe(place === 'the end' ? made.events.length : place);
});

test('a time that is typed shows the job as it stood at the end of that minute', () => {
  const made = replaying();
  const told = made.events.filter((event) => event.at.slice(11, 16) <= '11:00').length;

  press(made.program, '11:00<enter>');

  expect(told).toBeGreaterThan(0);
  expect(told).toBeLessThan(made.events.length);
  expect(at(made)).toBe(told);
});

test('going to a time and the turn before it leads back', () => {
  const made = replaying();
  press(made.program, 't');
  const first = at(made);

  press(made.program, 'tu');

  expect(at(made)).toBe(first);
});

test('a replay changes nothing: keys of the walk mean nothing in it, and leaving writes nothing', () => {
  const made = replaying();

  press(made.program, 'xyn');
  press(made.program, 'q');

  expect(made.program.state()).toMatchObject({ screen: { kind: 'home' }, session: undefined });
});

/** The likeliest cause after so many events, worked out from nothing each time. */
function leaderAfter(header: Header, events: OpenSession['events']): string | undefined {
  const made = inputFrom(fold(header, events));
  const belief = made.kind === 'good' ? believe(made.value) : made;
  if (made.kind === 'bad' || belief.kind === 'bad') return undefined;
  const ranked = made.value.model.causes
    .map(({ id }, index) => ({ id, chance: belief.value.chances[index] ?? 0 }))
    .toSorted((one, other) => other.chance - one.chance || (one.id < other.id ? -1 : 1));
  return ranked[0]?.id;
}

const examples = readdirSync('sessions/examples').filter((name) => name.endsWith('.jsonl'));

test.each(examples)('the turning points of %s are where a fold of each prefix has them', (name) => {
  const file = `sessions/examples/${name}`;
  const read = readSession(readFileSync(file), file);
  if (read.kind === 'bad') throw new Error('the example cannot be read');
  const { header, events } = read.value;
  const [, ...expected] = events.flatMap(({ kind }, index) =>
    ['found', 'proved', 'repaired', 'corrected'].includes(kind)
      ? [{ count: index + 1, leader: leaderAfter(header, events.slice(0, index + 1)) }]
      : [],
  );
  let leader = leaderAfter(
    header,
    events.slice(0, events.findIndex(({ kind }) => kind === 'found') + 1),
  );
  const turning = expected.flatMap(({ count, leader: now }) => {
    const turned = now !== leader;
    leader = now;
    return turned ? [count] : [];
  });

  expect(makeRecording(file, header, events).turning).toEqual(turning);
});

test('a correction that changes the likeliest cause is a turning point where it was made', () => {
  const { header, events } = after([
    { do: 'find', check: 'look', result: 'burnt', acknowledged: true },
    { do: 'note', text: 'looked again' },
    { do: 'correct', n: 1, result: 'whole' },
  ]);
  const leaders = events.map((_, index) => leaderAfter(header, events.slice(0, index + 1)));

  expect(leaders).toEqual(['fuse', 'fuse', 'wire']);
  expect(makeRecording('job', header, events).turning).toEqual([3]);
});
