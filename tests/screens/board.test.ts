import { expect, test } from 'vitest';
import { boardPages } from '../../src/screens/apart/board-rows.ts';
import type { Action } from '../../src/core/session/action.ts';
import { after } from '../helpers/story.ts';

const off = (part: string, more = {}): Action => ({ do: 'part-off', part, ...more });
const many = Array.from({ length: 12 }, (_, index) => off(`part ${index + 1}`));

const rowsAt = (
  actions: readonly Action[],
  order: 'off' | 'back',
  { cursor = 0, rows = 18, columns = 80 } = {},
) => boardPages(after(actions).story, { kind: 'apart', cursor, order }, { rows, columns });
const texts = (page: ReturnType<typeof rowsAt>[number] | undefined) =>
  (page ?? []).map(({ mark, text }) => `${mark} ${text}`.trim());

test('the board tells bag, part, place, fasteners and routing of the marked line, and what y says', () => {
  const [page, ...more] = rowsAt(
    [
      off('carburetor', {
        where: 'on the bench',
        fasteners: '4 nuts 1/2, long one at the back',
        routing: 'V1 to the distributor',
      }),
      off('wheel', { bag: 'none' }),
    ],
    'off',
  );

  expect(more).toEqual([]);
  expect(texts(page)).toEqual([
    'APART, as it came off: 1 bag, 0 empty',
    '> 1 bag 1   carburetor, on the bench',
    '2 no bag  wheel',
    '',
    'bag 1: carburetor, on the bench',
    'Held by: 4 nuts 1/2, long one at the back',
    'Hoses and wires: V1 to the distributor',
    '! Out of order: wheel came off after it, and goes back first.',
    '> y: carburetor is back on, bag 1 is empty.',
  ]);
});

test('turned round it is the list of putting back, last off first, with its bags counted', () => {
  const [page] = rowsAt([...many, { do: 'part-on', n: 12 }], 'back', { rows: 14, columns: 60 });

  expect(texts(page)[0]).toBe('PUTTING BACK, last off first: 12 bags, 1 empty');
  expect(texts(page)[1]).toBe('> 1 bag 11  part 11');
});

test('past the ninth line the numbers begin anew round the marked one, which stays in sight', () => {
  const [page] = rowsAt(many, 'off', { cursor: 10, rows: 12 });

  expect(texts(page)).toContain('> 2 bag 11  part 11');
});

test('with nothing off the board says so', () => {
  expect(texts(rowsAt([], 'back')[0])).toContain('Nothing is off and nothing is open.');
});

test('what cannot be shown whole has a second page, and takes no key', () => {
  expect(rowsAt([off('x', { routing: 'hose '.repeat(200) })], 'off', { rows: 12 })).toHaveLength(2);
});
