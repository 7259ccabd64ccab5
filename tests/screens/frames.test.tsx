import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import type { State } from '../../src/app/state.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { everyScreen } from '../helpers/every-screen.ts';
import { expectGolden, withoutMinute } from '../helpers/golden.ts';
import { makeProgram, press, startKeys, thoughtOut } from '../helpers/program.ts';

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

/** Keys from Home to the first check, all set. */
const ready = `${startKeys()}y`;

/** Holds what is on the screen to its two goldens, and to the size of the window. */
function expectFrames(name: string, state: State): void {
  for (const [columns, rows] of [
    [80, 24],
    [60, 20],
  ] as const) {
    const text = frame(state, columns, rows);
    expectGolden(`frames/${name}-${columns}x${rows}.txt`, withoutMinute(text));
    expect(text.split('\n').length - 1).toBe(rows);
    // Chances stand in words; their numbers are for the page of reasons.
    expect(name === 'why' ? '' : text).not.toMatch(/\d %/);
    expect(Math.max(...text.split('\n').map((row) => row.length))).toBeLessThanOrEqual(columns);
  }
}

test.each(everyScreen)('the $name screen at 80 by 24 and at 60 by 20', async ({ name, reach }) => {
  const program = reach();
  await thoughtOut(program);

  expect(program.state().leaving).toBe(false);
  expectFrames(name, program.state());
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
