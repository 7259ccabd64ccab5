import { Box, renderToString } from 'ink';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Line } from '../../src/screens/parts.tsx';
import { roomFor, rowsOf } from '../../src/screens/room.ts';

test.each([
  ['one row', 10, 1],
  ['two rows of words', 10, 2],
  ['日本語の車両です', 10, 2],
  ['aWordThatIsLongerThanItsColumn', 10, 3],
])('%s takes its rows in %i columns', (text, width, rows) => {
  expect(rowsOf(text, width)).toBe(rows);
});

test('rows are counted as Ink folds them, wide characters and joined ones too', () => {
  const word = fc.constantFrom(
    'stud',
    'a',
    'bulkhead-connector',
    '車',
    '日本語',
    '🔧',
    'é',
    '12.6',
  );
  fc.assert(
    fc.property(
      fc.array(word, { minLength: 1, maxLength: 20 }),
      fc.integer({ min: 4, max: 40 }),
      (words, width) => {
        const text = words.join(' ');
        const drawn = renderToString(
          <Box width={width}>
            <Line wrap="fold">{text}</Line>
          </Box>,
          { columns: 80 },
        );

        expect(rowsOf(text, width)).toBe(drawn.split('\n').length);
      },
    ),
    { seed: 20_260_411, numRuns: 200 },
  );
});

const words = {
  how: ['a step of some length', 'another one'],
  cautions: ['Hot wire: smoke means key off and lead off'],
  names: 'Hot wire',
  aside: 'within 0.2 V',
  kept: 1,
  results: 2,
};

test('the tighter it is, the less is said of a step, and never nothing of a caution', () => {
  const kinds = [20, 8, 7, 4].map((rows) => roomFor(words, 40, rows));

  expect(kinds.map(({ aside }) => aside)).toEqual([true, true, false, false]);
  expect(kinds.map(({ cautions }) => cautions)).toEqual(['fold', 'cut', 'cut', 'line']);
  expect(kinds.at(-1)?.how).toBe('cut');
});

test('steps go before results, the field of the reading never', () => {
  const rooms = [6, 5, 4].map((rows) => roomFor(words, 40, rows));

  expect(rooms.map(({ steps, more, results }) => [steps, more, results])).toEqual([
    [0, true, 2],
    [0, false, 2],
    [0, false, 1],
  ]);
});
