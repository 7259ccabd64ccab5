import { expect, test } from 'vitest';
import { lintRepairs } from '../../../../src/core/tree/lint/repairs.ts';
import { lintRings } from '../../../../src/core/tree/lint/rings.ts';
import { lintSizes } from '../../../../src/core/tree/lint/sizes.ts';
import { lintSwitches } from '../../../../src/core/tree/lint/switches.ts';
import { lintTexts } from '../../../../src/core/tree/lint/texts.ts';
import { shippedTree } from '../../../helpers/library.ts';
import { toldBy, withCheck, withRepair } from '../../../helpers/lint.ts';
import { smallTree } from '../../../helpers/tree.ts';

const steps = (count: number) => Array.from({ length: count }, (_, index) => `Step ${index}.`);

/** The small tree with these checks after the repair of its fuse. */
const provenBy = (...checks: string[]) =>
  // oxlint-disable-next-line unicorn/no-thenable -- the tree format's word, never awaited
  withRepair('fuse', { then: checks });

test('sizes that nobody means are told, each at its place', () => {
  expect(toldBy(lintSizes, smallTree())).toEqual([]);
  expect(toldBy(lintSizes, smallTree({ title: 'x'.repeat(61) }))).toEqual(['size-beyond title']);
  expect(toldBy(lintSizes, withCheck('look', { minutes: 0 }))).toEqual([
    'no-minutes checks.look.minutes',
  ]);
  expect(toldBy(lintSizes, withCheck('look', { minutes: 9000, how: steps(13) }))).toEqual([
    'size-beyond checks.look.minutes',
    'size-beyond checks.look.how',
  ]);
  expect(toldBy(lintSizes, withRepair('fuse', { minutes: 3001, do: steps(31) }))).toEqual([
    'size-beyond causes.fuse.repair.minutes',
    'size-beyond causes.fuse.repair.do',
  ]);
});

test('checks that wait for one another by "after" are told once', () => {
  const ring = withCheck('look', { after: { volts: ['full'] } });

  expect(toldBy(lintRings, smallTree())).toEqual([]);
  expect(toldBy(lintRings, ring)).toEqual(['after-ring checks.look.after']);
});

test('a check that waits for one which only it leads to is told', () => {
  const { look, volts, ...others } = smallTree().checks;
  if (look === undefined || volts === undefined) throw new Error('not the small tree');
  const { after: _none, ...free } = volts;
  const checks = { ...others, look: { ...look, after: { volts: ['full'] } }, volts: free };

  expect(toldBy(lintRings, { ...smallTree(), checks })).toEqual(['after-ring checks.look.after']);
});

test('a check after a repair that the cause does not show in is told', () => {
  expect(toldBy(lintRepairs, provenBy('look', 'lamp'))).toEqual([]);
  expect(toldBy(lintRepairs, provenBy('volts'))).toEqual([
    'then-shows-nothing causes.fuse.repair.then[0]',
  ]);
});

test('a part bought unseen is told in format 2, until a check looks at it', () => {
  const bought = withRepair('fuse', { part: 'dear' });
  const seen = withCheck('look', { 'looks-at': ['fuse'] }, bought);

  expect(toldBy(lintRepairs, bought)).toEqual([]);
  expect(toldBy(lintRepairs, { ...bought, format: 2 })).toEqual([
    'bought-unseen causes.fuse.repair.part',
  ]);
  expect(toldBy(lintRepairs, { ...seen, format: 2 })).toEqual([]);
});

test('a switch that no check closes is told, a position of the key is none', () => {
  const tree = shippedTree('no-supply');
  const { feed } = tree;
  if (feed === undefined) throw new Error('no feed');
  const spans = feed.spans.map((span, index) =>
    index === 0 ? { ...span, switch: 'blower-high' } : span,
  );

  expect(toldBy(lintSwitches, tree)).toEqual([]);
  expect(toldBy(lintSwitches, { ...tree, feed: { ...feed, spans } })).toEqual([
    'switch-never-closed feed.spans[0].switch',
  ]);
});

test('a check that asks in the words of another is told', () => {
  const alike = withCheck('look', { ask: 'Volts at the lamp' });

  expect(toldBy(lintTexts, smallTree()).filter((one) => one.startsWith('asks-alike'))).toEqual([]);
  expect(toldBy(lintTexts, alike)).toContain('asks-alike checks.volts.ask');
});
