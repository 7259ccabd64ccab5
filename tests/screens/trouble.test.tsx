import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import { figures } from '../../src/core/trade/catalog.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { chooseTree, makeProgram, press, startKeys } from '../helpers/program.ts';

const to = (name: string): string =>
  `${'<down>'.repeat(figures.findIndex((one) => one.name === name))}<enter>`;

/** Ways to a field that refuses what was typed. */
const refused = [
  ['an altitude in the settings', 'g299999ft<enter>'],
  ['an altitude of a new job', `${chooseTree('rough-idle')}Van<enter>JB<enter>99999ft<enter>`],
  [
    'a vehicle that the tree is not for',
    `${chooseTree('no-crank')}Van<enter>JB<enter><enter><enter>2`,
  ],
  ['an input of a figure', `f${to('displacement')}80 V<enter>`],
  ['an input of a figure in a job', `${startKeys()}v${to('displacement')}80 V<enter>`],
  ['a figure out of its range', `f${to('battery-charge')}12.2<enter>6<enter>`],
] as const;

test.each(refused)('%s: what is wrong is read to its mending end on a small screen', (_, keys) => {
  const { program } = makeProgram();
  press(program, keys);
  const { notice } = program.state();
  const rows = renderToString(
    <ScreenFrame state={program.state()} columns={60} rows={20} contents={contents} />,
    { columns: 60 },
  ).split('\n');

  expect(notice?.kind).toBe('problem');
  expect(rows.length).toBe(20);
  // Whether it is kept stands at the end of its first row.
  const text = rows.join(' ').replaceAll(/keeping\.\.\.|kept \d\d:\d\d/g, ' ');
  expect(text.replaceAll(/\s+/g, ' ')).toContain(notice?.text ?? '-');
});
