import { expect, test } from 'vitest';
import { at } from '../../../../src/core/at.ts';
import type { Weighed } from '../../../../src/core/reason/belief/parting.ts';
import {
  gradedNames,
  shortName,
  sidesOf,
} from '../../../../src/core/reason/history/suspect-words.ts';
import { smallTree, smallTreeData } from '../../../helpers/tree.ts';

/** The small tree with a cause that shows either way, and another of the fuse's side. */
function lamp() {
  const data = smallTreeData();
  const repair = { do: ['Mend it.'], minutes: 20 };
  const tree = smallTree({
    causes: {
      ...data.causes,
      bulb: { name: 'Bulb burnt out', odds: 10, repair },
      switch: { name: 'Switch comes and goes', odds: 10, repair },
    },
    checks: {
      ...data.checks,
      volts: {
        ...data.checks.volts,
        points: { wire: [0.05, 0.15, 0.8], switch: [0.5, 0.1, 0.4] },
      },
    },
  });
  const bulb = { ...at(Object.values(tree.causes), 2), short: 'the bulb' };
  return { ...tree, causes: { ...tree.causes, bulb } };
}

const suspects: readonly Weighed[] = [
  ['wire', 0.55],
  ['fuse', 0.3],
  ['bulb', 0.12],
  ['switch', 0.1],
  ['unlisted', 0.02],
];
const inWords = (columns: number, weighed = suspects) =>
  sidesOf(lamp(), 'volts', weighed).map(({ shows, names }) => `${shows}: ${names(columns)}`);

test('each side is told with what shows it, and one word for all that are as sure', () => {
  expect(inWords(80)).toEqual([
    'under 12 V or under 2 V: wire broken (likely)',
    '12 V or more: fuse burnt, bulb (maybe), something else (faint)',
    'either way: switch comes (maybe)',
  ]);
});

test('names that have no room are counted, and said to be faint where all of them are', () => {
  expect(inWords(35)[1]).toBe('12 V or more: fuse burnt, bulb (maybe), 1 faint');
  expect(inWords(25)[1]).toBe('12 V or more: fuse burnt (maybe), 2 more');
  // The surest is never left out.
  expect(inWords(3)[1]).toBe('12 V or more: fuse burnt (maybe), 2 more');
});

test('a faint one that shows either way is not worth a row', () => {
  const faint = suspects.map(([id, chance]): Weighed => [id, id === 'switch' ? 0.03 : chance]);

  expect(inWords(80, faint).join(' ')).not.toContain('either way');
});

test('the numbers stand on the page of reasons alone, a number a name', () => {
  const [first] = sidesOf(lamp(), 'volts', suspects, 'numbers');
  expect(first?.names(80)).toBe('wire broken (55 %)');
});

test('where nothing is parted, names stand by their word', () => {
  expect(sidesOf(lamp(), 'lamp', suspects)).toEqual([]);
  expect(gradedNames(lamp(), suspects)).toEqual([
    'likely: wire broken',
    'maybe: fuse burnt, bulb, switch comes',
    'faint: something else',
  ]);
});

test('what is on no list is named so, and otherwise where it leads', () => {
  expect(shortName(lamp(), 'unlisted')).toBe('something else');
  expect(gradedNames(lamp(), [['unlisted', 0.9]])).toEqual(['strong: none of the listed']);
});
