import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import type { State } from '../../src/app/state.ts';
import { claimPages } from '../../src/screens/claim-rows.ts';
import type { DueOnScreen } from '../../src/app/walk/question.ts';
import { shippedShop } from '../helpers/library.ts';
import { makeProgram, press, startKeys } from '../helpers/program.ts';
import { showIn, type Terminal } from '../helpers/terminal.tsx';

const shop = shippedShop();
const all = Object.keys(shop.cautions);

/** Every size that is promised, and the smallest in which anything is taken. */
const sizes = [
  [40, 10],
  [40, 12],
  [60, 16],
  [60, 20],
  [80, 16],
  [80, 20],
  [80, 24],
  [120, 40],
  [200, 60],
] as const;

const jobs: Readonly<Record<string, string>> = {
  'a set-up before a check': startKeys(),
  'a caution of a cause': `${startKeys()}y2r2`,
  'is it this': `${startKeys()}y2r2Z1`,
  'a set-up before a repair': `${startKeys()}y2r2Z1y<enter>`,
  'a repair': `${startKeys()}y2r2Z1y<enter>Zy`,
};

function at(way: string) {
  const { program } = makeProgram();
  press(program, way);
  return program;
}

const flat = (rows: readonly string[]): string => rows.join(' ').replace(/\s+/g, ' ').trim();

/** The body of a frame: what stands between its first two rules. */
const bodyOf = (rows: readonly string[]): readonly string[] => {
  const [head = 0, foot = rows.length] = rows.flatMap((one, n) => (/^─+$/.test(one) ? [n] : []));
  return rows.slice(head + 1, foot);
};

/** Reads a page in a terminal from its beginning to where it takes its answer. */
async function readThrough(terminal: Terminal, state: () => State): Promise<readonly string[]> {
  const read: string[] = [];
  for (let guard = 0; guard < 60; guard += 1) {
    const rows = bodyOf(terminal.screen());
    const { drawn } = state();
    read.push(...rows.filter((text) => !/space: read on/.test(text)));
    if (drawn?.kind === 'page' && drawn.whole) return read;
    const before = state().session?.events.length;
    await terminal.send('y', '1', '2');
    expect(state().session?.events.length).toBe(before);
    await terminal.send(' ');
  }
  throw new Error('the page has no end');
}

test.each(sizes)(
  'every line of a page that claims is drawn before its key is taken: %i by %i',
  async (columns, rows) => {
    for (const [name, way] of Object.entries(jobs)) {
      const program = at(way);
      const terminal = await showIn(program, columns, rows);

      const read = flat(await readThrough(terminal, program.state));

      // What a smaller window leaves out is what is not claimed yet: steps before a set-up, causes' asides.
      const { due } = program.state().question;
      const said = claimed(due).map((text) => text.replace(/\s+/g, ' '));
      expect([name, said.filter((text) => !read.includes(text))]).toEqual([name, []]);
      await terminal.stop();
      program.shut();
    }
  },
);

/** What is claimed on a page: the caution's words, the set-up, the cause, the repair's steps. */
function claimed(due: DueOnScreen | undefined): readonly string[] {
  if (due === undefined) return [];
  const { blocker, cause, story } = due;
  if (blocker.kind === 'caution') return [shop.cautions[blocker.cautions[0] ?? '']?.text ?? '?'];
  if (blocker.kind === 'prepare') return [`${blocker.preparations.length}. `, 'y when all is so.'];
  return cause === undefined
    ? ['?']
    : [cause.cause.name, ...(story.due.kind === 'repair' ? cause.cause.repair.do : []), 'y'];
}

const ready = { input: { kind: 'ready' as const, cursor: -1 } };

const { due: picked } = at(`${startKeys()}y2r2`).state().question;

/** A cause on screen with a caution of the whole shop to be read. */
function cautioned(id: string): DueOnScreen {
  if (picked === undefined) throw new Error('nothing is due');
  const legs = picked.story.legs.map((leg) => ({ ...leg, shop }));
  return {
    ...picked,
    story: { ...picked.story, legs },
    blocker: { kind: 'caution', cautions: [id] },
  };
}

test.each(all)('%s is said whole in pages of any size, none of them too long', (id) => {
  const one = cautioned(id);
  const { text = '', defer = '' } = shop.cautions[id] ?? {};
  for (const [columns, rows] of sizes) {
    const pages = claimPages(one, ready, { columns, rows: rows - 6 }) ?? [];
    const words = flat(
      pages
        .flat()
        .map((row) => row.text)
        .filter((row) => !row.startsWith('space: ')),
    );

    expect(Math.max(...pages.map((page) => page.length))).toBeLessThanOrEqual(rows - 6);
    expect(words).toContain(text.replace(/\s+/g, ' '));
    expect(words).toContain(defer);
  }
});

test('at 60 by 20 every caution stands on one page', () => {
  const size = { columns: 60, rows: 14 };

  expect(all.filter((id) => (claimPages(cautioned(id), ready, size) ?? []).length > 1)).toEqual([]);
});

test('in a window that is too small no key counts but those that leave or draw', async () => {
  const program = at(startKeys());
  const terminal = await showIn(program, 39, 9);
  const { screen, session } = program.state();

  await terminal.send('y', 'n', 'q', '1', '\r');

  expect(program.state()).toMatchObject({ screen, session: { events: session?.events } });
  expect(flat(terminal.screen())).toContain('takes no key but Ctrl+C');
  await terminal.resize(80, 24);
  await terminal.send('y');
  expect(program.state().session?.events.length).toBeGreaterThan(0);
  await terminal.stop();
});

test('a window that changes its size is read again from the first page', async () => {
  const program = at(`${startKeys()}y2r2Z1y<enter>Zy`);
  const terminal = await showIn(program, 40, 10);
  await terminal.send(' ');
  await terminal.send(' ');
  expect(program.state().screen).toMatchObject({ page: 2 });

  await terminal.resize(40, 11);

  expect(program.state().screen).toMatchObject({ page: 0 });
  await terminal.stop();
});

test('a row that is folded begins flush, whatever the row before it ended with', () => {
  const program = at(`${startKeys()}y2r2`);
  for (const columns of [40, 41, 42, 43, 44, 45, 60, 80]) {
    const rows = renderToString(
      <ScreenFrame state={program.state()} columns={columns} rows={40} contents={contents} />,
      { columns },
    ).split('\n');
    const folded = bodyOf(rows).filter((row) => /^ {3}/.test(row));

    expect([columns, folded.filter((row) => !/^ {3}\S/.test(row))]).toEqual([columns, []]);
  }
});
