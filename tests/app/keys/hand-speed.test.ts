import { expect, test } from 'vitest';
import { update } from '../../../src/app/update.ts';
import type { State } from '../../../src/app/state.ts';
import { drawnWhole, makeProgram, press, startKeys } from '../../helpers/program.ts';

/** Keys struck one by one, `apart` milliseconds between, each on a page that was drawn to its end. */
function strike(from: State, tokens: readonly string[], apart: number): State {
  let state = from;
  for (const token of tokens) {
    const now = { ...state.now, mono: state.now.mono + apart };
    state = update(state, { kind: 'drawn', drawn: drawnWhole(state) }, now).state;
    state = update(state, { kind: 'key', token }, now).state;
  }
  return state;
}

/** On the first check that is looked at, a while after the last key. */
function atCheck(keys = ''): State {
  const { program } = makeProgram();
  press(program, `${startKeys()}y${keys}`);
  const state = program.state();
  return { ...state, now: { ...state.now, mono: state.now.mono + 5000 } };
}

const typed = (text: string) => Array.from(text);
const written = ({ session }: State) => session?.events.length;

test.each([
  ['another check, by its number', ['o', '2']],
  ['why, and back', ['w', 'esc']],
  ['why, back, the list, back, the history', ['w', 'esc', 'o', 'esc', 't']],
  ['a note, and its words', ['n', ...typed('fan belt squeals')]],
  ['unsure, and yes', ['u', 'y']],
  ['why, and the suspects', ['w', 'r']],
  ['close, its line, and leave', ['c', '3', 'esc', 'w']],
])('a practised hand is taken at its speed: %s', (_, tokens) => {
  const quick = strike(atCheck(), tokens, 200);
  const slow = strike(atCheck(), tokens, 5000);

  expect(quick.screen).toEqual(slow.screen);
  expect(written(quick)).toBe(written(slow));
});

test.each([
  'cavity cleaned, terminal tightened; blade was green',
  'hydrometer reads low in cell 3',
  'exhaust manifold is cracked',
  'cylinder 2 misses, y',
  'only when hot. new link fitted 12 V',
  'annoying rattle under the dash',
  'lying wire behind the gauge',
])('words typed where no field is open write nothing: %s', (text) => {
  const before = atCheck('2');

  for (const apart of [60, 150, 300]) {
    const after = strike(before, [...typed(text), 'enter'], apart);
    expect(written(after)).toBe(written(before));
    expect(after.settings).toEqual(before.settings);
  }
});

test('the second letter of a word claims nothing and opens no field; struck again it does', () => {
  const history = strike(atCheck('2'), ['t'], 5000);
  const once = strike(history, ['a', 'y'], 200);
  expect(written(once)).toBe(written(history));

  const note = strike(atCheck(), ['Z', 'n'], 200);
  expect(note.notice?.text).toContain('strike it again');
  expect(strike(note, ['n'], 400).question.mode).toBe('text');
});
