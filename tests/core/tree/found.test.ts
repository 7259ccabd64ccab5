import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { complaintsFound, type FoundBy } from '../../../src/core/tree/found.ts';
import { tellingWords } from '../../../src/core/tree/owner-words.ts';

const tree = (id: string, title: string, say: string, cause: string): FoundBy =>
  ({
    id,
    title,
    complaint: { say },
    causes: { [`${id}-cause`]: { name: cause } },
  }) as unknown as FoundBy;

const trees = [
  tree(
    'crank',
    'Cranks slowly',
    'The starter turns the engine as if it were tired.',
    'Battery old',
  ),
  tree('hot', 'Stalls hot', 'It stalls in traffic once it is hot.', 'Fuel boils in the bowl'),
  tree('boil', 'Boils over', 'Steam under the hood, the needle is in the red.', 'Thermostat stuck'),
  tree('lamps', 'Lamps dim', 'They get dim at idle.', 'Ground strap loose'),
];

const ids = (typed: string): readonly string[] => complaintsFound(trees, typed).map(({ id }) => id);

test('nothing typed finds all, as they stand', () =>
  expect(ids(' ')).toEqual(['crank', 'hot', 'boil', 'lamps']));

test('a title is nearer than what is said, and that nearer than a cause', () => {
  expect(ids('boil')).toEqual(['boil', 'hot']);
  expect(ids('hot')).toEqual(['hot']);
});

test('another form of a word finds it', () => {
  expect(ids('stalling')).toEqual(['hot']);
  expect(ids('batteries')).toEqual(['crank']);
  expect(ids('thermostats')).toEqual(['boil']);
});

test('a sentence finds by its telling words, those that few complaints have first', () => {
  expect(ids('my engine is very tired and steaming')).toEqual(['crank', 'boil']);
});

test('words of no complaint find none', () => expect(ids('wipers')).toEqual([]));

test('what is said only by one word of many is left out behind what is said whole', () => {
  expect(ids('boils over')).toEqual(['boil']);
});

test('a slip of a letter, a word begun and a British word find it', () => {
  expect(ids('thermostta')).toEqual(['boil']);
  expect(ids('ther')).toEqual(['boil']);
  expect(ids('steam under the bonnet')).toEqual(['boil']);
});

test('what owners say for it finds it, though nothing of it is in the tree else', () => {
  const [first] = trees;
  if (first === undefined) throw new Error('no tree');
  const heard = { ...first, complaint: { ...first.complaint, heard: ['groans like a bear'] } };

  expect(complaintsFound([heard, ...trees.slice(1)], 'groaning bear')).toEqual([heard]);
});

test('every British word that the guide gives for one of ours finds the same', () => {
  const guide = readFileSync('src/guide/walk.md', 'utf8').split('## British words')[1] ?? '';
  const pairs = guide
    .split(/[·.]/)
    .flatMap((part) => /^\s*(\w+) = (\w+)(?: \(.*\))?\s*$/.exec(part)?.slice(1, 3) ?? [])
    .join(' ');
  const words = tellingWords(pairs);

  expect(words.length).toBeGreaterThanOrEqual(20);
  expect(words.filter((_, at) => at % 2 === 0)).toEqual(words.filter((_, at) => at % 2 === 1));
});
