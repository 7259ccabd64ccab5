import { expect, test } from 'vitest';
import { feedView } from '../../../src/core/drawing/feed-view.ts';
import { ladderLine, ladderLines, whereLines } from '../../../src/core/drawing/ladder-view.ts';
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
    read('bat-rest-volts', '12.6'),
    read('bulk-engine-volts', '12.55 12.4'),
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

test('what was read at rest stays on the page, in brackets, once a load is on', () => {
  const view = viewAfter('no-supply', deadAmmeter.slice(0, 3));

  expect(view && ladderLines(view).join('\n')).toMatch(/battery positive post +\(12\.60\)/);
  expect(view && ladderLine(view)).toContain('(12.6)');
});

test('a drop found under one load stays bad while something else is read under another', () => {
  const view = viewAfter('no-crank', [
    { do: 'find', check: 'crank-safe', result: 'lately' },
    read('post-clamp-crank', '2.5'),
    read('trigger-volts', '12.3'),
  ]);

  expect(view && whereLines(view).join(' ')).toMatch(
    /The fault lies between battery positive post/,
  );
});

const atBulkhead = [read('bat-rest-volts', '12.6'), read('bulk-engine-volts', '12.55 12.4')];

test('where all findings speak for something else, a drop is doubtful and no fault', () => {
  const header = headerFor(shippedTree('no-supply'), shippedShop());
  const { story } = after([...atBulkhead, read('bulk-drop', '0.3')], header);
  const alone = feedView(story);
  const held = feedView(story, { chances: new Map([['ammeter', 0.9]]), ranked: [] });

  expect(alone && whereLines(alone).join(' ')).toContain('The fault lies between');
  expect(held && whereLines(held).join(' ')).toMatch(
    /More is lost .*speaks for something else.* Ammeter.*suspected all the same/i,
  );
});

test('the probe goes where the walk sends it', () => {
  const view = viewAfter('no-supply', [
    ...deadAmmeter.slice(0, -1),
    { do: 'begin', check: 'ammeter-drop' },
  ]);

  expect(view?.next).toHaveLength(2);
  expect(view?.next.join(' ')).toMatch(/ammeter stud.* ammeter stud/);
});
