import { describe, expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { after, headerFor, stampAt } from '../../helpers/story.ts';
import { smallShop, smallTree, smallTreeData } from '../../helpers/tree.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const whole: Action = { do: 'find', check: 'look', result: 'whole' };
const burnt: Action = { do: 'find', check: 'look', result: 'burnt' };
const fuse: Action = { do: 'repair', cause: 'fuse' };
const good: Action = { do: 'prove', result: 'lit' };
const failed: Action = { do: 'prove', result: 'dark' };

const check = (id: string) => ({ kind: 'check', check: id, why: 'way' });

describe('what is to be done in another tree', () => {
  const { checks } = smallTreeData();
  const other = smallTree({
    id: 'other',
    complaint: { say: 'x', confirm: 'bulb' },
    start: 'lead',
    causes: { rust: { name: 'Rust', odds: 1, repair: { do: ['x'], minutes: 1 } } },
    checks: {
      bulb:
        checks.lamp.kind === 'try'
          ? {
              ...checks.lamp,
              results: [
                { id: 'lit', label: 'x' },
                { id: 'dark', label: 'y' },
              ],
            }
          : {},
      lead: {
        kind: 'look',
        ask: 'Rust?',
        minutes: 1,
        results: [
          { id: 'bright', label: 'x' },
          { id: 'rusty', label: 'y', next: 'cause:rust' },
        ],
        background: [0.9, 0.1],
      },
    },
  });

  /** After these actions the mechanic went on with the other tree. */
  const legAfter = (...actions: readonly Action[]) => {
    const { events, header } = after(actions);
    const n = events.length + 1;
    const leg = { kind: 'leg' as const, tree: 'other', whole: other, shop: smallShop };
    return fold(header, [...events, { n, ...stampAt(n), ...leg }]).due;
  };

  test('its own complaint is made to happen first', () => {
    expect(legAfter(dark, whole)).toEqual(check('bulb'));
    expect(legAfter(dark, burnt, fuse, failed)).toEqual(check('bulb'));
  });

  test.each([
    ['a check begun in the tree before', [dark, { do: 'begin', check: 'volts' }]],
    ['a cause condemned in the tree before', [dark, { do: 'condemn', cause: 'wire' }]],
    ['a repair proven in the tree before', [dark, fuse, good]],
  ] as const)('so it is after %s', (_, actions) => {
    expect(legAfter(...(actions as readonly Action[]))).toEqual(check('bulb'));
  });
});

test('a cause that is a complaint of its own leads to its tree once it is named, and is not mended', () => {
  const { causes } = smallTreeData();
  const change = { causes: { ...causes, fuse: { ...causes.fuse, tree: 'dim-light' } } };

  const { due } = after(
    [dark, burnt, { do: 'condemn', cause: 'fuse' }],
    headerFor(smallTree(change)),
  ).story;

  expect(due).toEqual({
    kind: 'leg',
    tree: 'dim-light',
    reason: 'Fuse burnt: the tree of that complaint finds why.',
  });
});
