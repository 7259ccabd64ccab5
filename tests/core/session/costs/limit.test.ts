import { describe, expect, test } from 'vitest';
import { limitWarnings } from '../../../../src/app/walk/limit.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { askBefore, measured, passedParts } from '../../../../src/core/session/costs/limit.ts';
import { limitWords, passedWords, shortMinutes } from '../../../../src/core/session/costs/words.ts';
import { after, headerFor, verdict } from '../../../helpers/story.ts';
import { smallTree } from '../../../helpers/tree.ts';

const inEuro = { ...headerFor(), currency: 'EUR' };
const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const story = (...actions: readonly Action[]) => after(actions, inEuro).story;

describe('a limit that is agreed', () => {
  test('stands as a whole: what an action leaves out stays, what it empties goes', () => {
    const both = story({ do: 'limit', minutes: 120 }, { do: 'limit', money: '200' });
    const less = story(
      { do: 'limit', minutes: 120, money: '200', replace: 'hoses' },
      { do: 'limit', minutes: 0, replace: '' },
    );

    expect(both.limit && limitWords(both.limit, 'EUR')).toBe('2 h and 200.00 EUR');
    expect(less.limit && limitWords(less.limit, 'EUR')).toBe('200.00 EUR');
  });

  test('may be none, and that is said once', () => {
    const none = story({ do: 'limit' });

    expect(none.limit && limitWords(none.limit)).toBe('');
    expect(verdict(none, { do: 'limit' })).toBe('same-limit');
    expect(verdict(none, { do: 'limit', money: 'a tenner' })).toBe('money-unreadable');
  });

  test('is passed by what was entered, and by nothing else', () => {
    const bought: Action = { do: 'part-bought', part: 'pump at 199.99' };
    const within = story({ do: 'limit', minutes: 60, money: '200 EUR' }, bought);
    const beyond = story({ do: 'limit', minutes: 60, money: '200 EUR' }, bought, {
      do: 'part-bought',
      part: '2 x clip at 0.01',
    });

    expect(passedParts(measured(within))).toEqual([]);
    expect(passedWords(measured(beyond))).toBe('200.01 EUR spent of 200.00 EUR');
    expect(passedParts(measured(within, 61))).toEqual(['time']);
    expect(limitWarnings(within, beyond)).toEqual([
      'The limit is passed: 200.01 EUR spent of 200.00 EUR. Stop and ask.',
    ]);
    expect(limitWarnings(beyond, beyond)).toEqual([]);
  });

  test('is not set against money of another currency', () => {
    const found = story({ do: 'limit', money: '5 EUR' }, { do: 'part-bought', part: 'x at $90' });

    expect(passedParts(measured(found))).toEqual([]);
  });
});

describe('before a repair', () => {
  const fuseMinutes = smallTree().causes['fuse']?.repair.minutes ?? 0;

  test('it is asked where its minutes would pass the limit, once when the cause is named', () => {
    const limit: Action = { do: 'limit', minutes: fuseMinutes };
    const before = story(limit, dark);
    const named = story(limit, dark, { do: 'condemn', cause: 'fuse' });

    expect(askBefore(before, 'fuse')).toMatchObject({ passesTime: true, minutes: fuseMinutes });
    expect(limitWarnings(before, named)).toEqual([
      `Stop and ask before this repair: its ${shortMinutes(fuseMinutes)} would pass the limit of ${shortMinutes(fuseMinutes)}.`,
    ]);
    expect(limitWarnings(named, named)).toEqual([]);
  });

  test('it is not asked where the limit leaves room', () => {
    const named = story({ do: 'limit', minutes: 600 }, dark, { do: 'condemn', cause: 'fuse' });

    expect(askBefore(named, 'fuse')).toBeUndefined();
    expect(limitWarnings(story(), named)).toEqual([]);
  });

  test('a dear part is asked about where money is limited: its price stands in no tree', () => {
    const tree = smallTree();
    const dear = {
      ...tree,
      causes: Object.fromEntries(
        Object.entries(tree.causes).map(([id, cause]) => [
          id,
          { ...cause, repair: { ...cause.repair, part: 'dear' as const } },
        ]),
      ),
    };
    const { story: limited } = after([{ do: 'limit', money: '40 EUR' }], headerFor(dear));

    expect(askBefore(limited, 'fuse')?.left).toEqual({ currency: 'EUR', minor: 4000n });
    expect(askBefore(after([], headerFor(dear)).story, 'fuse')).toBeUndefined();
  });
});
