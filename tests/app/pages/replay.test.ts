import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSession } from '../../../src/store/recover.ts';
import { makeProgram, press } from '../../helpers/program.ts';

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

test('a replay begins before the first event and steps on and back', () => {
  const made = replaying();

  press(made.program, '<enter><enter><enter><left>');

  expect(at(made)).toBe(2);
  expect(made.program.state().session?.story.entries).toHaveLength(2);
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

test('a replay changes nothing: keys of the walk mean nothing in it, and leaving writes nothing', () => {
  const made = replaying();

  press(made.program, 'ux1n');
  press(made.program, 'q');

  expect(made.program.state()).toMatchObject({ screen: { kind: 'home' }, session: undefined });
});
