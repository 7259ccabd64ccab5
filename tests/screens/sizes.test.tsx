import { createRequire } from 'node:module';
import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import type { State } from '../../src/app/state.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { everyScreen, moreScreens } from '../helpers/every-screen.ts';
import { thoughtOut } from '../helpers/program.ts';

/** Every size that is promised. */
const sizes: readonly (readonly [columns: number, rows: number])[] = [
  [60, 20],
  [80, 16],
  [80, 20],
  [80, 24],
  [120, 40],
  [200, 60],
];

const rowsOf = (state: State, columns: number, rows: number): readonly string[] =>
  withoutColors(
    renderToString(
      <ScreenFrame state={state} columns={columns} rows={rows} contents={contents} />,
      { columns },
    ),
  );

const withoutColors = (drawn: string): readonly string[] =>
  drawn
    // oxlint-disable-next-line no-control-regex -- the colors of a theme
    .replaceAll(/\u001b\[[0-9;]*m/g, '')
    .split('\n')
    .map((row) => row.trimEnd());

const oneRow = (text: string): string => text.replaceAll(/\s+/g, ' ').trim();

/** Rows of a screen so large that nothing is folded or cut in it. */
const roomy = (state: State): string => rowsOf(state, 1500, 150).map(oneRow).join(' ');

/** A row without what stands before its words. */
const words = (row: string): string =>
  oneRow(row).replace(/^(?:[!>]|\d+\.|(?:> )?(?:[\d-]|End)) +/, '');

/** What a screen says only where it has no room for all. */
const isOfThisSize = (row: string): boolean =>
  /page \d of \d|\(\d+ more above\)$|^ … down: more$|read on \(\d|^ {4}… \d+ more steps?:|^ (?:EITHER|OR) .*(?:\d (?:faint|more)|…| OR )/.test(
    row,
  );

/** Rows that are not words of the screen: of two that were written over one another. */
function overprinted(rows: readonly string[], all: string): readonly string[] {
  return rows.filter(
    (row) =>
      !isOfThisSize(row) &&
      words(row)
        .split(/…|; /)
        .some((part) => !all.includes(part.trim())),
  );
}

/** The page of the phone has no frame: a code needs its rows, and `tests/reference/browser` reads it. */
const framed = [...everyScreen, ...moreScreens].filter(({ name }) => !name.startsWith('phone'));

const isRule = (row: string): boolean => /^─+$/.test(row);

/** The field of a reading, and the result it falls in: both stand wherever a reading is asked. */
function askedRows({ question: { mode, due }, screen }: State): readonly RegExp[] {
  const check = screen.kind === 'walk' ? due?.asked?.check : undefined;
  if (check === undefined) return [];
  const field = ['reading', 'insist'].includes(mode) ? [/^ Reading > /] : [];
  const result = ['look', 'reading'].includes(mode) ? [/^( >|  ) +[\d-] +\S/] : [];
  const marked = due?.typed === undefined ? [] : [/^ > [\d-] +\S/];
  return [...field, ...result, ...marked];
}

/** What is wrong with a screen at one size: nothing. */
const faultsOf = (
  state: State,
  drawn: readonly string[],
  all: string,
  size: readonly [number, number],
) => ({
  rows: drawn.length - size[1],
  tooWide: drawn.filter((row) => row.length > size[0]),
  overprinted: overprinted(
    drawn.slice(0, -1).filter((row) => !isRule(row)),
    all,
  ),
  rules: drawn.filter(isRule).length,
  keys: drawn.at(-1)?.startsWith(' '),
  notSeen: askedRows(state).filter((wanted) => !drawn.some((row) => wanted.test(row))),
});

const noFault = { rows: 0, tooWide: [], overprinted: [], rules: 3, keys: true, notSeen: [] };

test.each(framed)('the $name screen keeps its form at every size', async ({ reach }) => {
  const program = reach();
  await thoughtOut(program);
  const state = program.state();
  const all = roomy(state);

  for (const size of sizes) {
    const drawn = rowsOf(state, size[0], size[1]);
    expect([size, faultsOf(state, drawn, all, size), drawn]).toEqual([size, noFault, drawn]);
  }
});

type Chalk = { readonly default: { level: 0 | 1 | 2 | 3 } };

/** The colors that Ink itself draws with, switched on as in a terminal that has them. */
async function inColors<T>(draw: () => T): Promise<T> {
  const ofInk = createRequire(createRequire(import.meta.url).resolve('ink'));
  const { default: chalk }: Chalk = await import(ofInk.resolve('chalk'));
  const { level } = chalk;
  try {
    chalk.level = 3;
    return draw();
  } finally {
    chalk.level = level;
  }
}

test.each(framed)(
  'the $name screen has the same rows by day, by night and without colors',
  async ({ reach }) => {
    const state = reach().state();
    const themed = (theme: 'day' | 'night'): State => ({
      ...state,
      settings: { ...state.settings, theme },
    });

    for (const [columns, rows] of [
      [60, 20],
      [80, 24],
    ] as const) {
      const plain = (['day', 'night'] as const).map((theme) =>
        rowsOf(themed(theme), columns, rows),
      );
      const raw = await inColors(() =>
        (['day', 'night'] as const).map((theme) =>
          renderToString(
            <ScreenFrame state={themed(theme)} columns={columns} rows={rows} contents={contents} />,
            { columns },
          ),
        ),
      );
      const [day = '', night = ''] = raw;

      expect(day).not.toBe(night);
      expect([day, night].map(withoutColors)).toEqual(plain);
    }
  },
);
