import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import type { Program } from '../../src/app/program.ts';
import { otherChecks, suspects } from '../../src/app/walk/lists.ts';
import type { Action } from '../../src/core/session/action.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { expectGolden, withoutMinute } from '../helpers/golden.ts';
import { guardedFolder, guardedTree, see } from '../helpers/guarded.ts';
import { drawnWhole, makeProgram, press, thoughtOut } from '../helpers/program.ts';

const frame = (program: Program, columns: number, rows: number): string =>
  `${renderToString(
    <ScreenFrame state={program.state()} columns={columns} rows={rows} contents={contents} />,
    { columns },
  )
    .split('\n')
    .map((row) => row.trimEnd())
    .join('\n')}\n`;

const sizes = [
  [80, 24],
  [60, 20],
] as const;

async function expectFrames(name: string, program: Program): Promise<void> {
  await thoughtOut(program);
  for (const [columns, rows] of sizes)
    expectGolden(
      `frames/guarded-${name}-${columns}x${rows}.txt`,
      withoutMinute(frame(program, columns, rows)),
    );
}

/** A new job on the guarded tree, after some actions. */
function job(...actions: readonly Action[]): Program {
  const { program } = makeProgram({ trees: guardedFolder });
  press(program, 's1<enter>Van<enter>JB<enter><enter><enter>');
  for (const action of actions) program.dispatch({ kind: 'acted', action });
  return program;
}

/** Opens the list of checks or of repairs and picks the line of a step by its key. */
function pick(program: Program, list: 'o' | 'r', id: string): void {
  const { session } = program.state();
  if (session === undefined) throw new Error('no job is open');
  const lines = list === 'o' ? otherChecks(session) : suspects(session);
  const at = lines.findIndex((line) => line.id === id);
  press(program, `${list}${'<pgdn>'.repeat(Math.floor(at / 9))}${(at % 9) + 1}`);
}

const events = ({ state }: Program) => state().session?.events ?? [];

/** The words of a frame in one row: its marks and folds left out. */
const inOneRow = (text: string): string => text.replaceAll(/\s+/g, ' ');

const cautionsOf = ({ state }: Program, ids: readonly string[]): readonly string[] =>
  ids.map((id) => state().session?.story.legs[0]?.shop.cautions[id]?.text ?? 'no such caution');

/** The page of cautions in the larger window. */
function pageOf(program: Program): { readonly cautions: readonly string[] } {
  const drawn = drawnWhole(program.state());
  return drawn.kind === 'page' ? drawn : { cautions: [] };
}

/** Reads every caution of a step that is gone past, each whole on its page. */
function readThrough(program: Program, ids: readonly string[]): void {
  const unread = new Set(cautionsOf(program, ids));
  for (let page = 1; program.state().question.mode.endsWith('caution'); page += 1) {
    const { cautions } = pageOf(program);
    for (const text of cautionsOf(program, cautions)) {
      // In the smaller window there may be fewer on the page.
      expect(inOneRow(frame(program, 80, 24))).toContain(text);
      unread.delete(text);
    }
    press(program, String(page));
  }
  expect([...unread]).toEqual([]);
}

test('the tree itself asks what comes first', async () => {
  const program = job();
  expect(program.state().session?.story.due).toMatchObject({ check: 'oil-look' });

  await expectFrames('own-way', program);
});

test('a check that is picked behind a safeguard shows what comes first, and y makes that', async () => {
  const program = job();
  await thoughtOut(program);
  press(program, 'o');
  await expectFrames('others', program);
  press(program, '<esc>');
  pick(program, 'o', 'heat-run');
  await expectFrames('first', program);
  expect(events(program)).toEqual([]);

  press(program, 'y');
  expect(events(program)).toMatchObject([{ kind: 'check-begun', check: 'oil-look' }]);
});

test('going past wants every caution read and an own word; nothing empty is taken', async () => {
  const program = job();
  pick(program, 'o', 'heat-run');
  press(program, 'g');
  await expectFrames('past-caution', program);
  readThrough(program, guardedTree.checks['heat-run']?.cautions ?? []);
  await expectFrames('past-why', program);

  press(program, '<enter>  <enter>');
  expect(events(program)).toEqual([]);
  await expectFrames('past-empty', program);

  press(program, 'owner looked at both<enter>');
  expect(events(program)).toMatchObject([
    {
      kind: 'check-begun',
      check: 'heat-run',
      despite: { checks: ['oil-look', 'cold-level'], why: 'owner looked at both' },
    },
  ]);
  press(program, 'y3');
  expect(events(program).map(({ kind }) => kind)).toEqual([
    'check-begun',
    'standing',
    'standing',
    'found',
  ]);
});

test('a repair behind a safeguard is named with the word, and may then be set up and done', async () => {
  const program = job();
  pick(program, 'r', 'late');
  await expectFrames('repair-first', program);
  press(program, 'g');
  readThrough(program, guardedTree.causes['late']?.repair.cautions ?? []);
  press(program, 'timing was off<enter>');
  expect(events(program)).toMatchObject([
    { kind: 'condemned', cause: 'late', despite: { why: 'timing was off' } },
  ]);

  press(program, 'yZy');
  expect(events(program).at(-1)).toMatchObject({ kind: 'repaired', cause: 'late' });
});

test('Esc leads back from each page, and no run of one key goes past', () => {
  for (const key of ['<enter>', 'g', 'y', ' ', '1']) {
    const program = job();
    pick(program, 'o', 'heat-run');
    press(program, key.repeat(30));
    expect(events(program).filter((event) => 'despite' in event)).toEqual([]);
  }
  const program = job();
  pick(program, 'o', 'heat-run');
  press(program, 'g<esc>');
  expect(program.state().screen).toEqual({ kind: 'walk', input: { kind: 'ready', cursor: -1 } });
});

test('where danger was found the screens say so, and recommend nothing that runs the engine', async () => {
  const program = job(see('oil-look', 'milky'));
  await expectFrames('danger', program);
  const { session } = program.state();

  expect(session?.story.due.kind).toBe('stop');
  const running = session?.advice?.next.filter(({ do: act, id }) => {
    const { standing } =
      (act === 'check' ? guardedTree.checks[id] : guardedTree.causes[id]?.repair) ?? {};
    return standing?.engine !== undefined && standing.engine !== 'off';
  });
  expect(running).toEqual([]);
  expect(session?.advice?.next.length).toBeGreaterThan(0);
  press(program, 'o');
  await expectFrames('danger-others', program);
  press(program, '<esc>r');
  await expectFrames('danger-repairs', program);
});
