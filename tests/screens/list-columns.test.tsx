import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { nodeFiles } from '../../src/store/node-files.ts';
import { loadLibrary } from '../../src/store/library.ts';
import { chooseTree, makeProgram, press, thoughtOut } from '../helpers/program.ts';

const trees = loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' }).trees.map(
  ({ id }) => id,
);

/** The lines of a list at its narrowest, each without its key. */
async function linesOf(tree: string, key: string): Promise<readonly string[]> {
  const { program } = makeProgram();
  press(program, `${chooseTree(tree)}Van<enter>JB<enter><enter><enter>`);
  for (let guard = 0; guard < 20 && program.state().session === undefined; guard += 1)
    press(program, `${'<down>'.repeat(9)}<enter>`);
  press(program, key);
  await thoughtOut(program);
  const state = program.state();
  const rows = renderToString(
    <ScreenFrame state={state} columns={60} rows={60} contents={contents} />,
    { columns: 60 },
  ).split('\n');
  return rows.slice(
    3,
    rows.findIndex((row, at) => at > 3 && row.startsWith('─')),
  );
}

const byMinutes = /^.{5} *(?:\d+|under 1) min {2}\S/;
const byGrade = /^.{5} *(?:strong|likely|maybe|faint|remote)? +\d+ min {2}\S/;

test.each(trees)('%s: what its lists are ranked by is whole on a narrow screen', async (tree) => {
  const checks = await linesOf(tree, 'o');
  const causes = await linesOf(tree, 'r');

  expect(checks.length).toBeGreaterThan(1);
  expect(checks.filter((line) => line !== '' && !byMinutes.test(line))).toEqual([]);
  expect(causes.filter((line) => line !== '' && !byGrade.test(line))).toEqual([]);
});
