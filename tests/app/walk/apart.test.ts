import { expect, test } from 'vitest';
import { boardLines } from '../../../src/app/walk/board.ts';
import { press, makeProgram, startKeys } from '../../helpers/program.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { smallShop, smallTree } from '../../helpers/tree.ts';
import type { Action } from '../../../src/core/session/action.ts';

const accesses = { dash: { ...smallShop.accesses['dash'], standing: { battery: 'disconnected' } } };
const shop = { ...smallShop, accesses } as typeof smallShop;
const namesAfter = (...actions: readonly Action[]) =>
  boardLines(after(actions, headerFor(smallTree(), shop)).story, 'off').map(({ name }) => name);

test('the ground lead comes off before live studs are covered, and goes on last of all', () => {
  const opened: Action = { do: 'access', open: 'dash' };

  expect(namesAfter(opened, { do: 'standing', battery: 'connected' })).toEqual([
    'Ground lead off first: live studs lie open',
    expect.any(String),
  ]);
  expect(namesAfter(opened, { do: 'standing', battery: 'disconnected' })).toEqual([
    expect.any(String),
    'Battery disconnected: ground lead back on, last of all',
  ]);
  expect(namesAfter({ do: 'standing', battery: 'disconnected' })).toHaveLength(1);
  expect(namesAfter()).toEqual([]);
});

test('an access with live studs is not closed with the battery on: the page says what comes first', () => {
  const { program } = makeProgram();
  press(program, startKeys('charging'));
  program.dispatch({ kind: 'acted', action: { do: 'access', open: 'alt-out' } });
  program.dispatch({ kind: 'acted', action: { do: 'standing', battery: 'connected' } });
  const events = () => program.state().session?.events.length;
  const before = events();

  press(program, 'a2y');
  expect(program.state().notice?.text).toMatch(/^Not closed\. Ground lead off first/);
  expect(events()).toBe(before);

  press(program, '1y');
  press(program, '1');
  press(program, 'y');
  expect(program.state().session?.story.open).toEqual([]);
});

test('a photo taken on the board is of the marked part; the board counts it', () => {
  const { program } = makeProgram();
  press(program, startKeys('charging'));
  program.dispatch({ kind: 'acted', action: { do: 'part-off', part: 'belt' } });
  const { n = 0 } = program.state().session?.story.partsOff[0] ?? {};

  press(program, 'aP');
  expect(program.state().screen).toMatchObject({ kind: 'photo', about: `part:${n}` });
});
