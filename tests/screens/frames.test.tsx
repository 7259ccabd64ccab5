import { readFileSync } from 'node:fs';
import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import type { Action } from '../../src/core/session/action.ts';
import type { State } from '../../src/app/state.ts';
import { figures } from '../../src/core/trade/catalog.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { readSession } from '../../src/store/recover.ts';
import { expectGolden, withoutMinute } from '../helpers/golden.ts';
import {
  chooseTree,
  makeProgram,
  passPages,
  press,
  startKeys,
  thoughtOut,
} from '../helpers/program.ts';

const frame = (state: State, columns: number, rows: number): string =>
  `${renderToString(
    <ScreenFrame state={state} columns={columns} rows={rows} contents={contents} />,
    {
      columns,
    },
  )
    .split('\n')
    .map((row) => row.trimEnd())
    .join('\n')}\n`;

/** Down the list of figures to the vacuum one, wherever it stands. */
const toVacuum = '<down>'.repeat(figures.findIndex(({ name }) => name === 'vacuum-at-altitude'));

/** Keys that lead to each screen, from Home. The tree is rough-idle, whose first check wants three things set. */
const walk = startKeys();
const ready = `${walk}y`;
const screens: readonly (readonly [name: string, keys: string])[] = [
  ['home', ''],
  ['start-complaint', 's'],
  ['start-altitude', `${chooseTree('rough-idle')}Orchard van<enter>JB<enter>`],
  ['cautions', walk.replace(/Z1$/, '')],
  ['prepare', walk],
  ['look', ready],
  ['note', `${ready}nfan belt squeals`],
  ['others', `${ready}2o`],
  ['suspects', `${ready}2r`],
  ['why', `${ready}2w`],
  ['picked-cause', `${ready}2r2`],
  ['cautions-read', `${ready}2r21`],
  ['condemned', `${ready}2r21y<enter>`],
  ['not-this', `${ready}2r21x`],
  ['close', `${ready}2c`],
  ['keys', `${ready}?`],
  ['in-full', `${ready}i`],
  ['settings', 'g'],
  ['figures', 'f'],
  ['figure', `f${toVacuum}<enter>`],
  ['sessions', `${ready}2ql`],
  ['apart', `${ready}2pair filter<enter>a`],
  ['nothing-apart', `${walk}a`],
  ['not-there', `${ready}1`],
  ['no-feed', `${ready}2f`],
  ['closed', `${ready}2c3y`],
  // Typed with its unit: the clock goes on a second a message, and must stay off a full minute.
  ['figure-worked', `${walk}v${toVacuum}<enter>5200   ft<enter><enter>15   <enter>`],
];

/** Holds what is on the screen to its two goldens, and to the size of the window. */
function expectFrames(name: string, state: State): void {
  for (const [columns, rows] of [
    [80, 24],
    [60, 20],
  ] as const) {
    const text = frame(state, columns, rows);
    expectGolden(`frames/${name}-${columns}x${rows}.txt`, withoutMinute(text));
    expect(text.split('\n').length - 1).toBe(rows);
    expect(Math.max(...text.split('\n').map((row) => row.length))).toBeLessThanOrEqual(columns);
  }
}

test.each(screens)('the %s screen at 80 by 24 and at 60 by 20', async (name, keys) => {
  const { program } = makeProgram();

  press(program, keys);
  await thoughtOut(program);

  expect(program.state().leaving).toBe(false);
  expectFrames(name, program.state());
});

test.each([
  ['condition', ''],
  ['measure', '<enter>5200<enter>15'],
  ['unlikely', 'uy99<enter>'],
])('the %s screen of a reading that is judged by the altitude', async (name, keys) => {
  const { program } = makeProgram();
  press(program, `${ready}2`);
  program.dispatch({ kind: 'acted', action: { do: 'begin', check: 'vac-level' } });
  passPages(program);

  press(program, keys);
  await thoughtOut(program);

  expect(program.state().question.due?.asked?.id).toBe('vac-level');
  expectFrames(name, program.state());
});

test('the contradiction screen asks what it is', async () => {
  const { program } = makeProgram();
  press(program, `${ready}2`);
  program.dispatch({ kind: 'acted', action: { do: 'find', check: 'dwell-run', result: 'good' } });
  program.dispatch({ kind: 'acted', action: { do: 'begin', check: 'dwell-run' } });
  passPages(program);
  press(program, '3');
  await thoughtOut(program);

  expect(program.state().screen.kind).toBe('contradiction');
  expectFrames('contradiction', program.state());
});

test('with a repair between it asks for what is new since, and stays in the foot until it is said', async () => {
  const { program } = makeProgram();
  press(program, ready);
  const told = (action: Action) => program.dispatch({ kind: 'acted', action });
  told({ do: 'find', check: 'vac-level', reading: '17.9', insist: true });
  told({ do: 'repair', cause: 'idle-mix', acknowledged: true });
  told({ do: 'prove', result: 'hunts' });
  told({ do: 'find', check: 'vac-level', reading: '15', insist: true });
  press(program, 's');
  await thoughtOut(program);

  expect(program.state().screen.kind).toBe('contradiction');
  expectFrames('contradiction-repair', program.state());
  press(program, '<esc>');
  expectFrames('contradiction-open', program.state());
});

const example = 'sessions/examples/2026-04-11-1042-orchard-van-no-supply.jsonl';

test.each([
  ['replay', '<enter>'.repeat(9)],
  ['replay-turning', 't'],
  ['replay-playing', '<enter>p++'],
] as const)('the %s screen shows a session as it stood', (name, keys) => {
  const { program } = makeProgram();
  const read = readSession(readFileSync(example), example);
  if (read.kind === 'bad') throw new Error('the example cannot be read');
  const { header, events } = read.value;
  program.dispatch({ kind: 'replay-opened', path: example, header, events });

  press(program, keys);

  expect(program.state().screen.kind).toBe('replay');
  expectFrames(name, program.state());
});

test('the page of the feed path has a row a station', async () => {
  const { program } = makeProgram();
  press(program, `${chooseTree('no-supply')}Orchard van<enter>JB<enter><enter><enter>`);
  for (let guard = 0; guard < 20 && program.state().session === undefined; guard += 1)
    press(program, `${'<down>'.repeat(9)}<enter>`);

  press(program, 'f');
  await thoughtOut(program);

  expect(program.state().screen.kind).toBe('ladder');
  expectFrames('feed', program.state());
});

test('a window that is too small says that the session is safe', () => {
  const { program } = makeProgram();

  expect(frame(program.state(), 30, 8).replace(/\s+/g, ' ')).toContain('Your session is safe');
});

test('text from a file cannot reach the terminal as a command', () => {
  const { program } = makeProgram();
  press(program, ready);
  program.dispatch({ kind: 'acted', action: { do: 'note', text: 'x' } });
  program.dispatch({
    kind: 'failed',
    problem: { code: 'x', message: 'a\u001b]8;;http://x\u0007b\u202e\u001b[2J', mend: '' },
  });

  const text = frame(program.state(), 80, 24);

  expect(['\u001b', '\u0007', '\u202e'].filter((mark) => text.includes(mark))).toEqual([]);
  expect(text).toContain('<U+202E>');
});
