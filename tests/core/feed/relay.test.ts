import { describe, expect, test } from 'vitest';
import { fillTree } from '../../../src/core/feed/fill.ts';
import { pathsOf } from '../../../src/core/feed/fitted.ts';
import type { Change } from '../../../src/core/feed/path.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { fitTree } from '../../../src/core/tree/fit.ts';
import { shippedTree } from '../../helpers/library.ts';

const tree = shippedTree('accessory-dead');
const shipped = tree.feed;
if (shipped === undefined) throw new Error('the tree has a feed path');
const relay = { accessory: 'horn', 'acc-relay': 'fitted' };
const horn = pathsOf(shipped, relay)();
const lost = (...changes: readonly Change[]): number =>
  12.6 - solveFeed(horn, { on: ['thing'] }, changes).volts('acc-in');

describe('a contact that a coil closes', () => {
  test('carries while the coil gets what pulls it in, and not a little less', () => {
    expect(lost()).toBeLessThan(1);
    expect(lost({ kind: 'ohms', part: 'sw-in:sw-out', ohms: 55 })).toBeLessThan(1);
    expect(lost({ kind: 'ohms', part: 'sw-in:sw-out', ohms: 70 })).toBeGreaterThan(12);
  });

  test('stays open with an open coil, for all its volts', () => {
    const open = [{ kind: 'open', part: 'relay-coil' }] as const;
    const { volts } = solveFeed(horn, { on: ['thing'] }, open);

    expect(volts('rel-in') - volts('coil-out')).toBeGreaterThan(12);
    expect(lost(...open)).toBeGreaterThan(12);
  });

  test('is open where nothing is switched on', () => {
    expect(solveFeed(horn, { on: [] }).regime.dropped).toEqual(new Set(['rel-in:rel-out']));
  });
});

describe('a path of which nobody knows the kind', () => {
  test('is one of its kinds, never two side by side', () => {
    const paths = pathsOf(shipped, {});

    expect(Object.keys(paths().stations)).not.toContain('rel-in');
    expect(Object.keys(paths({ 'acc-relay': 'fitted' }).stations)).toContain('rel-in');
    expect(paths({ 'acc-relay': 'none' })).toBe(paths());
  });

  test('is read by a check on the kind that the check is for', () => {
    const known = fillTree(fitTree(tree, relay), relay);
    const unknown = fillTree(tree, {});

    expect(unknown.checks['relay-coil-volts']?.points['horn-button']).toEqual(
      known.checks['relay-coil-volts']?.points['horn-button'],
    );
    expect(unknown.checks['relay-coil-volts']?.feed).toBeUndefined();
    expect(known.checks['relay-coil-volts']?.feed).toBeDefined();
  });
});
