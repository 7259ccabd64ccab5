import { expect, test } from 'vitest';
import { lintTriage } from '../../../../src/core/tree/lint/triage.ts';
import { shippedTree } from '../../../helpers/library.ts';
import { toldBy, withCheck, withRepair } from '../../../helpers/lint.ts';
import { smallTree } from '../../../helpers/tree.ts';

const triage = 'an inspection releases it.';

test('a complaint about what is not to be driven asks for "triage"', () => {
  const brakes = shippedTree('brakes');

  expect(toldBy(lintTriage, smallTree())).toEqual([]);
  expect(toldBy(lintTriage, brakes)).toEqual([]);
  expect(toldBy(lintTriage, { ...brakes, triage: undefined })).toEqual(['no-triage triage']);
});

test.each([
  'Drive it slowly home.',
  'A short road test shows it.',
  'After that it may be driven to a shop.',
  'On the road again, listen once more.',
])('a tree that only sorts tells nobody: %s', (line) => {
  const tree = { ...withRepair('fuse', { do: [line] }), triage };

  expect(toldBy(lintTriage, tree)).toEqual(['brakes-drive causes.fuse.repair.do[0]']);
});

test.each(['Not to be driven.', 'It is never driven: by trailer only.'])(
  'and may say: %s',
  (line) => {
    expect(toldBy(lintTriage, { ...withRepair('fuse', { do: [line] }), triage })).toEqual([]);
  },
);

test('no step of it is made on the road', () => {
  const tree = { ...withCheck('look', { standing: { engine: 'road' } }), triage };

  expect(toldBy(lintTriage, tree)).toEqual(['brakes-drive checks.look.standing.engine']);
});

test('a tree with one cause for the inspection tells nobody to drive either', () => {
  const line = 'Drive it slowly home.';
  const tree = withRepair('fuse', { do: [line] });
  const { wire } = tree.causes;
  const mixed = { ...tree, causes: { ...tree.causes, ...(wire && { wire: { ...wire, triage } }) } };

  expect(toldBy(lintTriage, tree)).toEqual([]);
  expect(toldBy(lintTriage, mixed)).toEqual(['brakes-drive causes.fuse.repair.do[0]']);
});
