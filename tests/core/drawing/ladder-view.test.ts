import { expect, test } from 'vitest';
import {
  feedView,
  ladderLine,
  ladderLines,
  whereLines,
} from '../../../src/core/drawing/ladder-view.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { shippedShop, shippedTree } from '../../helpers/library.ts';
import { after, headerFor } from '../../helpers/story.ts';

const read = (check: string, reading: string): Action => ({ do: 'find', check, reading });

function viewAfter(tree: string, actions: readonly Action[]) {
  const header = headerFor(shippedTree(tree), shippedShop());
  return feedView(after(actions, header).story);
}

const deadAmmeter: readonly Action[] = [
  { do: 'find', check: 'lamps-horn', result: 'horn-only' },
  read('bat-rest-volts', '12.6'),
  read('post-clamp-drop', '0.01'),
  read('stud-volts', '12.55 12.5'),
  read('bulk-engine-volts', '12.55 12.4'),
  read('ammeter-volts', '12.55 12.4'),
  read('ammeter-drop', '12.2'),
];

test('the ladder marks the span that loses the volts, in one line', () => {
  const view = viewAfter('no-supply', deadAmmeter);

  expect(view && ladderLine(view)).toContain('ammeter 12.4 ╳ ammeter out 0.20');
});

test('it says in a sentence between which stations the fault lies, for a screen reader too', () => {
  const view = viewAfter('no-supply', deadAmmeter);

  expect(view && whereLines(view).join(' ')).toMatch(
    /The fault lies between ammeter stud, battery side and ammeter stud, alternator side/,
  );
});

test('a drop read across one joint counts before anything is read beside it', () => {
  const view = viewAfter('no-supply', [
    { do: 'find', check: 'lamps-horn', result: 'horn-only' },
    read('bulk-drop', '7'),
  ]);

  expect(view && whereLines(view).join(' ')).toMatch(
    /The fault lies between .*bulkhead.* 7 V are lost there/,
  );
  expect(view && ladderLines(view).join(' ')).toContain('╳ BAD: 7.00 V');
});

test('a higher reading further on is told as one of two that is wrong', () => {
  const view = viewAfter('no-supply', [
    ...deadAmmeter.slice(0, 3),
    read('stud-volts', '12.55 10.5'),
    read('bulk-engine-volts', '12.55 12.4'),
  ]);

  expect(view && whereLines(view).join(' ')).toContain('One of these two readings is wrong');
});

test('before anything is read it says where to put the probe first', () => {
  const view = viewAfter('no-supply', []);

  expect(view && whereLines(view).join(' ')).toMatch(/Probe next: /);
});

test('every row of the page fits into 80 columns', () => {
  const view = viewAfter('no-supply', deadAmmeter);
  const rows = view === undefined ? [] : ladderLines(view).filter((line) => /^[ >?] /.test(line));

  expect(rows.length).toBeGreaterThan(10);
  expect(rows.filter((row) => row.length > 78)).toEqual([]);
});

test('a tree without a feed path has no ladder', () => {
  expect(viewAfter('rough-idle', [])).toBeUndefined();
});

test.each(['no-supply', 'no-crank', 'slow-crank', 'charging', 'dim-lamps'])(
  'the tree %s has a feed path that can be drawn',
  (tree) => {
    expect(viewAfter(tree, [])?.ladder.supply.length).toBeGreaterThan(3);
  },
);
