import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { typing } from '../../../src/app/typing/typing.ts';
import { makeProgram, passPages, press, startKeys } from '../../helpers/program.ts';

type Made = ReturnType<typeof makeProgram>;

function atFirstCheck(): Made {
  const made = makeProgram();
  press(made.program, startKeys());
  return made;
}

const session = ({ program }: Made) => {
  const { session: open } = program.state();
  if (open === undefined) throw new Error('no session is open');
  return open;
};

const input = ({ program }: Made) => {
  const { screen } = program.state();
  if (screen.kind !== 'walk') throw new Error(`on ${screen.kind}`);
  return screen.input;
};

/** Stands at a check that is measured, what it waits for seen. */
function atMeasuring(): Made {
  const made = atFirstCheck();
  const told = (action: Action) => made.program.dispatch({ kind: 'acted', action });
  told({ do: 'find', check: 'choke-hot', result: 'open' });
  told({ do: 'begin', check: 'vac-level', acknowledged: true });
  for (let guard = 0; guard < 20 && made.program.state().question.mode !== 'measure'; guard += 1) {
    passPages(made.program);
    if (made.program.state().question.mode === 'condition') press(made.program, 'uy');
  }
  expect(made.program.state().question.mode).toBe('measure');
  return made;
}

test('escape leaves a field of words, and nothing of it is kept', () => {
  const made = atFirstCheck();
  const { mode } = made.program.state().question;
  const { length } = session(made).events;

  press(made.program, 'nfan<esc>');

  expect(session(made).events).toHaveLength(length);
  expect(made.program.state().question.mode).toBe(mode);
});

test('keys that mean nothing in a field leave what was typed', () => {
  const made = atFirstCheck();

  press(made.program, 'nfan<tab><up>');

  expect(input(made)).toMatchObject({ kind: 'text', typed: typing('fan') });
});

test('an empty note is not kept', () => {
  const made = atFirstCheck();

  const { length } = session(made).events;

  press(made.program, 'n  <enter>');

  expect(session(made).events).toHaveLength(length);
  expect(input(made).kind).toBe('ready');
});

test('what is still to do is kept as typed', () => {
  const made = atFirstCheck();

  press(made.program, 'dfit a new hose<enter>');

  expect(session(made).events.at(-1)).toMatchObject({ kind: 'follow-up', text: 'fit a new hose' });
});

test('a part taken off is kept as typed', () => {
  const made = atFirstCheck();

  press(made.program, 'pair cleaner<enter>on the fender<enter>wing nut<enter><enter><enter>');

  expect(session(made).events.at(-1)).toMatchObject({
    kind: 'part-off',
    part: 'air cleaner',
    where: 'on the fender',
    fasteners: 'wing nut',
    bag: 1,
  });
  expect(session(made).events.at(-1)).not.toHaveProperty('routing');
  expect(made.program.state().notice?.text).toBe('Bag 1: air cleaner.');
});

test('the next bag stands in its field; no bag may be said, and a used one is refused', () => {
  const made = atFirstCheck();
  const four = '<enter><enter><enter><enter>';

  press(made.program, `pair cleaner${four}<enter>`);
  press(made.program, `pwheel${four}<C-u>none<enter>`);
  expect(session(made).story.partsOff.map(({ bag }) => bag)).toEqual([1, undefined]);

  press(made.program, `pcarburetor${four}<C-u>1<enter>`);
  expect(made.program.state().notice?.text).toMatch(/^Bag 1 was used in this job already/);
  press(made.program, '<C-u>bag 7<enter>');
  expect(session(made).story.partsOff.at(-1)).toMatchObject({ part: 'carburetor', bag: 7 });
});

test('a part without a name is not kept, and behind a plus stands an aid', () => {
  const made = atFirstCheck();
  const before = session(made).events.length;

  press(made.program, 'p<enter><enter><enter><enter><enter>');
  expect(made.program.state().notice?.text).toMatch(/^The part has no name/);
  expect(session(made).events).toHaveLength(before);

  press(made.program, '+ jumper<enter>');
  expect(session(made).events.at(-1)).toMatchObject({ kind: 'aid-on', aid: 'jumper' });
});

test('altitude and temperature are asked one after the other', () => {
  const made = atFirstCheck();

  press(made.program, 'it5200ft<enter>');
  expect(input(made)).toMatchObject({ kind: 'text', purpose: 'temperature', typed: typing('') });
  press(made.program, '70F<enter>');

  expect(session(made).story.conditions).toMatchObject({
    altitude: { value: 5200, unit: 'ft' },
    temperature: { value: 70, unit: 'F' },
  });
  expect(input(made).kind).toBe('ready');
});

test('an altitude that cannot be is refused, and stays in its field to be mended', () => {
  const made = atFirstCheck();

  press(made.program, 'it90000ft<enter>');

  expect(made.program.state().notice?.text).toContain('lies outside');
  expect(input(made)).toMatchObject({ purpose: 'altitude', typed: typing('90000ft') });
  expect(session(made).story.conditions.altitude).toBeUndefined();
});

test('before anything was written there is nothing to take back, and that is said', () => {
  const made = atFirstCheck();

  // The cautions of the first check were read: that is the one thing written.
  press(made.program, 'b');
  expect(made.program.state().notice?.text).toContain('Taken back: ');
  press(made.program, 'Zb');

  expect(made.program.state().notice?.text).toContain('Nothing is written');
});

test('a reading is left with escape, or by erasing all of it', () => {
  const made = atMeasuring();
  const { events } = session(made);

  press(made.program, '12');
  expect(input(made)).toEqual({ kind: 'reading', typed: typing('12') });
  press(made.program, '<up>');
  expect(input(made)).toEqual({ kind: 'reading', typed: typing('12') });
  press(made.program, '<back><back>');
  expect(input(made).kind).toBe('ready');
  press(made.program, '12<esc>');
  expect(input(made).kind).toBe('ready');

  expect(session(made).events).toBe(events);
});

test('an unlikely reading is doubted first, and kept only on a second word', () => {
  const made = atMeasuring();
  const { events } = session(made);

  press(made.program, '99999<enter>');
  expect(input(made)).toMatchObject({ kind: 'insist', typed: typing('99999') });
  expect(session(made).events).toBe(events);
  press(made.program, '<enter>');
  expect(session(made).events).toBe(events);
  press(made.program, '99999<enter>!');

  expect(session(made).events.at(-1)).toMatchObject({ kind: 'found', insisted: true });
});
