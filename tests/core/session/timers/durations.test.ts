import { describe, expect, test } from 'vitest';
import {
  parseTimer,
  spellsIn,
  spellWords,
  waitsIn,
} from '../../../../src/core/session/timers/durations.ts';
import { expectGolden } from '../../../helpers/golden.ts';
import { shippedTrees } from '../../../helpers/library.ts';

const seconds = (text: string) => spellsIn(text).map((one) => one.seconds);

describe('the times that words speak of', () => {
  test.each([
    ['Rest 60 s.', [60]],
    ['Charger off, ground lead on, 15 minutes.', [900]],
    ['Stood 4 hours or overnight.', [14_400]],
    ['Ten minutes on the watch, then the tissue.', [600]],
    ['Wait a minute.', [60]],
    ['Engine off half an hour.', [1800]],
    ['Leave it an hour; read after ten seconds.', [3600, 10]],
    ['From 10 to 20 min after a hot stop.', [600]],
    ['A 20-minute run.', [1200]],
    ['Three tries of 3 s, 20 s apart.', [3, 20]],
    ['Wait 1,5 h.', [5400]],
  ])('"%s"', (text, found) => {
    expect(seconds(text)).toEqual(found);
  });

  test.each([
    'A second person cranks.',
    'Key off within 2 min.',
    '10 V at most 5 s',
    'Drip from the first minute?',
    'Hold 2500 rpm.',
    '12 V, 3 ohm, 15 in',
    'Turn by 5 h7 bolts',
    'Fifty a minute.',
  ])('no wait in "%s"', (text) => {
    expect(waitsIn([text]).filter((one) => one.seconds !== 60)).toEqual([]);
  });

  test('a wait bears the words of its sentence, and each length is offered once', () => {
    expect(
      waitsIn(['Full lamps 5 minutes; engine off.', 'Read at 15 s. Then 5 min more.']),
    ).toEqual([
      { seconds: 300, label: 'Full lamps 5 minutes' },
      { seconds: 15, label: 'Read at 15 s' },
    ]);
  });
});

test.each([
  ['15 min charge', 900, 'charge'],
  ['soak 4 h', 14_400, 'soak'],
  ['20 cool down', 1200, 'cool down'],
  ['90 s', 90, 'timer'],
  ['2,5', 150, 'timer'],
])('"%s" is typed for a timer', (text, length, label) => {
  expect(parseTimer(text)).toEqual({ seconds: length, label });
});

test.each(['soak', '', '0', 'a while'])('"%s" is no timer', (text) => {
  expect(parseTimer(text)).toBeUndefined();
});

test('a length is said in its units', () => {
  expect([30, 60, 90, 900, 3600, 5400].map(spellWords)).toEqual([
    '30 s',
    '1 min',
    '1 min 30 s',
    '15 min',
    '1 h',
    '1 h 30 min',
  ]);
});

/** What every step of every shipped tree offers: read like code, for what is no wait at all. */
test('the waits found in all trees are those of the list', () => {
  const lines = shippedTrees().flatMap(({ id, checks, causes }) => [
    ...Object.entries(checks).flatMap(([check, { how }]) =>
      waitsIn(how).map((wait) => `${id} ${check}: ${spellWords(wait.seconds)} | ${wait.label}`),
    ),
    ...Object.entries(causes).flatMap(([cause, { repair }]) =>
      waitsIn(repair.do).map(
        (wait) => `${id} repair ${cause}: ${spellWords(wait.seconds)} | ${wait.label}`,
      ),
    ),
  ]);

  expect(lines.length).toBeGreaterThan(100);
  expectGolden('waits.txt', `${lines.join('\n')}\n`);
});
