import { describe, expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import { bookWords, booksAsked, parseSheet } from '../../../src/core/session/book.ts';
import { currentLeg } from '../../../src/core/session/story.ts';
import { find, readingsAfter, readingsShop, readingsTree, see } from '../../helpers/readings.ts';
import { smallTree } from '../../helpers/tree.ts';

const sheetOf = (reading: string, where?: string) =>
  parseSheet({ 'idle-vacuum': { reading, where } }, readingsTree, readingsShop);

describe('figures of the own book', () => {
  test('a tree asks for those that its limits stand on', () => {
    expect(booksAsked(readingsTree)).toEqual(['idle-vacuum']);
    expect(booksAsked(smallTree())).toEqual([]);
  });

  test('are read in any unit, with where they stood; an empty one is left out', () => {
    expect(sheetOf('18', 'page 12')).toEqual({
      kind: 'good',
      value: { 'idle-vacuum': { value: 18, unit: 'inHg', typed: '18', where: 'page 12' } },
    });
    expect(sheetOf('61 kPa', ' ')).toEqual({
      kind: 'good',
      value: { 'idle-vacuum': { value: 61, unit: 'kPa', typed: '61 kPa' } },
    });
    expect(sheetOf('  ')).toEqual({ kind: 'good', value: {} });
  });

  test.each([
    ['much', 'reading-not-a-number'],
    ['18 V', 'reading-unit-wrong'],
    // 40 inHg less 2 is more vacuum than there is air.
    ['40', 'book-implausible'],
    ['1', 'book-implausible'],
  ])('"%s" is refused', (typed, code) => {
    expect(sheetOf(typed)).toMatchObject({ problems: [{ code }] });
  });

  test('one that no limit stands on is refused by name', () => {
    expect(parseSheet({ dwell: { reading: '55' } }, readingsTree, readingsShop)).toMatchObject({
      problems: [{ code: 'unknown-book', mend: 'Possible: idle-vacuum.' }],
    });
  });
});

describe('a reading judged by the book', () => {
  // The limit stands 2 inHg under the book's figure, and at 16 inHg without one. 15 inHg is off by
  // 0.5 inHg (dial gauge: common practice, no source).
  const vacuum = [see('pull-test', 'weak'), find('idle-vacuum', '15')];
  const own = { 'idle-vacuum': { value: 20, unit: 'inHg', where: 'shop manual, page 12' } };
  const weak = { 'idle-vacuum': { value: 15.5, unit: 'inHg' } };
  const shown = (sheet = {}) => {
    const { story } = readingsAfter(vacuum, sheet);
    const check = readingsTree.checks['idle-vacuum'];
    return [story.findings[1]?.result, check && bookWords(story, currentLeg(story), check)];
  };

  test('is held against its own limit, and that is said; so is the general figure', () => {
    expect(shown()).toEqual(['low', 'by the general figure']);
    expect(shown(own)).toEqual(['low', 'by its own book: 20 inHg']);
    expect(shown(weak)).toEqual(['good', 'by its own book: 15.5 inHg']);
  });

  const record = { events: 9, passedOver: 0, link: 'ab'.repeat(32) };
  const written = (sheet = {}) => writeUp(readingsAfter(vacuum, sheet).story, record).markdown;

  test('the account tells by which figure, and where that was read', () => {
    const told = written(own);

    expect(told).toContain('By its own book, vacuum at idle: 20 inHg (shop manual, page 12).');
    expect(told).toContain('15 inHg, too low (judged by its own book: 20 inHg)');
    expect(written()).toContain('15 inHg, too low (judged by the general figure)');
  });

  test('a check whose limits stand on no book says nothing of it', () => {
    const { story } = readingsAfter([]);
    const check = readingsTree.checks['coil-ohms'];

    expect(check && bookWords(story, currentLeg(story), check)).toBe('');
  });
});
