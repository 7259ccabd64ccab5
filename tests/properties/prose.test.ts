import { afterEach, expect, test } from 'vitest';
import type { Message } from '../../src/app/message.ts';
import { tokens } from '../../src/app/keys/tokens.ts';
import type { Program } from '../../src/app/program.ts';
import type { State } from '../../src/app/state.ts';
import { textOf } from '../../src/app/typing/typing.ts';
import { typedIn } from '../../src/app/typing/drafts.ts';
import { update } from '../../src/app/update.ts';
import { job } from '../helpers/job.ts';
import { drawnWhole, makeProgram, press, startKeys } from '../helpers/program.ts';

/** What a mechanic might type or paste where a field was thought to be open. */
const sentences = [
  'Cavity cleaned, terminal tightened; blade was green',
  'no voltage at the post, 12.4 V before it',
  'replaced 2 fuses and the yellow wire',
  'x-ray showed nothing; quite odd',
  '15 thou gap, points pitted',
  'did it. Back on the road!',
  'put the air cleaner back on',
  'lamp dim\nhorn quiet\nyes: battery flat',
] as const;

/** Screens with no field open: those of the job, and all that is opened from them or from Home. */
const { 'a note': note, 'what was found': _, 'what was done': __, ...steps } = job;
const walk = `${startKeys()}y2`;
const screens = {
  ...steps,
  home: '',
  settings: 'g',
  'all sessions': 'a',
  'the trade figures': 'f',
  'a complaint to choose': 's',
  'the step in full': `${walk}i`,
  why: `${walk}w`,
  'all keys': `${walk}?`,
  'a key that is asked about': `${walk}wt`,
} as const;

const opened: Program[] = [];
afterEach(() => opened.splice(0).forEach((program) => program.shut()));

function at(way: string): Program {
  const { program } = makeProgram();
  opened.push(program);
  press(program, way);
  return program;
}

/** What would be in the record, and what would be set. */
const kept = ({ session, settings }: State) => ({ events: session?.events, settings });

const drawn = (state: State): Message => ({ kind: 'drawn', drawn: drawnWhole(state) });

test.each(Object.entries(screens))(
  'words in one read record nothing and set nothing: %s',
  (_, way) => {
    const start = at(way);
    const before = kept(start.state());

    for (const sentence of sentences)
      for (const end of ['', '\r']) {
        const words = tokens(sentence.replaceAll('\n', '\r') + end, {});
        start.dispatch(drawn(start.state()));
        start.dispatch({ kind: 'struck-together', tokens: words });
        start.dispatch({ kind: 'pasted', text: sentence + end });
        expect([sentence, kept(start.state())]).toEqual([sentence, before]);
      }
  },
);

/** Typed by hand, a letter every fifth of a second, each page drawn before the next letter. */
function typedByHand(start: State, text: string): State {
  let state = start;
  let mono = start.now.mono + 5000;
  for (const token of tokens(text, {})) {
    state = update(state, drawn(state), state.now).state;
    state = update(state, { kind: 'key', token }, { ...state.now, mono }).state;
    mono += 200;
  }
  return state;
}

/** Sentences as they are written, with a capital: no field is opened by their first letter. */
const written = sentences.map((one) => one[0]?.toUpperCase() + one.slice(1).replaceAll('\n', ' '));

test.each(Object.entries(screens))(
  'a sentence typed by hand records nothing and sets nothing: %s',
  (_, way) => {
    const start = at(way).state();
    const before = kept(start);
    const digitFirst = /^\d/;

    for (const sentence of written.filter((one) => !digitFirst.test(one)))
      for (const end of ['', '\r'])
        expect([sentence, kept(typedByHand(start, sentence + end))]).toEqual([sentence, before]);
  },
);

test('words that found no field wait for a note', () => {
  const program = at(walk);
  program.dispatch({ kind: 'struck-together', tokens: tokens(`${sentences[0]}\r`, {}) });
  expect(program.state().notice?.text).toContain('n has it as a note');

  press(program, 'Zn');

  const typed = typedIn(program.state().screen);
  expect(typed && textOf(typed)).toBe(sentences[0]);
});

test('several lines in one read are one text in a field, and none of them a command', () => {
  const program = at(note);
  const events = program.state().session?.events;

  program.dispatch({
    kind: 'struck-together',
    tokens: tokens(' squeals\rlamps dim\rqx2\r', {}),
  });

  const typed = typedIn(program.state().screen);
  expect(typed && textOf(typed)).toBe('fan belt squeals lamps dim qx2');
  expect(program.state().session?.events).toBe(events);
});

test('keys typed ahead in one read still act in their order', () => {
  const program = at(startKeys());

  press(program, 'y');
  program.dispatch({ kind: 'struck-together', tokens: ['2', 'n', 'o', 'k', 'enter'] });

  expect(
    program
      .state()
      .session?.events.map(({ kind }) => kind)
      .slice(-2),
  ).toEqual(['found', 'noted']);
});
