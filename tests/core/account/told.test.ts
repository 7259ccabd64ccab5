import { expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import { suspectRows } from '../../../src/app/walk/suspect-rows.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { makeProgram, press, thoughtOut } from '../../helpers/program.ts';
import { find, readingsAfter, readingsFolder, see } from '../../helpers/readings.ts';

const record = { events: 9, passedOver: 0, link: 'ab'.repeat(32) };
const told = (...actions: readonly Action[]): string =>
  writeUp(readingsAfter([see('pull-test', 'weak'), ...actions]).story, record).markdown;

test.each<[string, readonly Action[], string]>([
  [
    'a reading stands in the phrase of its result',
    [find('coil-ohms', '0.4')],
    'the ohms of the coil: 0.4 ohm, a short.',
  ],
  [
    'or behind it, where the phrase has no place for one',
    [find('coil-ohms', 'OL')],
    'the ohms of the coil: the meter showed an open circuit (OL).',
  ],
  [
    'several stand there with what they come to',
    [find('feed-drop', '12.55 12.30')],
    'the volts at the post and at the coil: 12.55 and 12.3 V, 0.25 V between them, which is too much.',
  ],
  [
    'by whose figure it was judged comes after',
    [find('idle-vacuum', '12')],
    'the vacuum at idle: 12 inHg, too low (judged by the general figure).',
  ],
  [
    'what may be either is told as such',
    [find('idle-vacuum', '15.8')],
    'the vacuum at idle: 15.8 inHg, judged by the general figure (low, or just good).',
  ],
  [
    'a result that was picked has no reading to tell',
    [see('coil-ohms', 'shorted')],
    'the ohms of the coil: shorted: under 1 ohm.',
  ],
  ['a look has no reading at all', [see('bowl-look', 'boils')], 'the fuel in the bowl: it boiled.'],
  [
    'the complaint itself, too',
    [],
    'In its own test (the pull, and the start when hot) it had no pull or refused.',
  ],
  [
    'what was not done is named as a thing',
    [{ do: 'skip', check: 'bowl-look', reason: 'It is dark.' }],
    'passed over the fuel in the bowl: it is dark',
  ],
  ['causes go by their short names', [find('coil-ohms', 'OL')], 'the coil'],
])('%s', (_, actions, sentence) => {
  expect(told(...actions)).toContain(sentence);
});

test('the suspects on the screen go by their short names, without an article', async () => {
  const { program } = makeProgram({ trees: readingsFolder });
  press(program, 's1<enter>Van<enter><enter><enter><enter><end><enter>2<enter>');
  program.dispatch({ kind: 'acted', action: see('pull-test', 'weak') });
  await thoughtOut(program);
  const { session } = program.state();

  const rows = session && suspectRows(session, { check: undefined }, { rows: 3, columns: 78 });
  expect(rows).toEqual([
    'SUSPECTS  maybe: burnt valve, vacuum hose, coil, bad joint in the coil feed, boiling fuel; faint: something else',
  ]);
});
