import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { blockStart, lineNumber, marked, moved } from '../../../src/app/keys/cursor.ts';
import { searched } from '../../../src/app/keys/search.ts';
import { matching, nothingSought } from '../../../src/app/keys/sought.ts';

const words = (line: string): string => line;
const complaints = [
  'Cranks, will not start',
  'Smell of fuel, or a drop',
  'Runs hot, or boils over',
];

test('a list is narrowed by words in any order and case', () => {
  expect(matching(complaints, '', words)).toEqual(complaints);
  expect(matching(complaints, 'fuel SMELL', words)).toEqual(['Smell of fuel, or a drop']);
  expect(matching(complaints, 'smoke', words)).toEqual([]);
});

test('typing narrows from the first line on, erasing widens again', () => {
  const press = (command: 'type' | 'erase' | 'down', token: string) => ({ command, token });
  const typed = searched({ cursor: 7, sought: 'sm' }, press('type', 'e'), 20);

  expect(typed).toEqual({ cursor: 0, sought: 'sme' });
  expect(searched(typed, press('erase', 'back'), 20)).toEqual({ cursor: 0, sought: 'sm' });
  expect(searched(nothingSought, press('down', 'down'), 1)).toEqual(nothingSought);
});

test('a number always picks the line that has it, and a line has one number at most', () => {
  fc.assert(
    fc.property(fc.nat(80), fc.nat(80), fc.integer({ min: 1, max: 9 }), (lines, at, digit) => {
      const cursor = Math.min(at, Math.max(0, lines - 1));
      const numbered = Array.from({ length: lines }, (_, index) => lineNumber(index, cursor));
      const line = marked(cursor, { command: 'pick-line', token: String(digit) }, lines);

      expect(numbered.indexOf(digit)).toBe(line);
      expect(lines === 0 || numbered[cursor] !== undefined).toBe(true);
      expect(blockStart(cursor) <= cursor).toBe(true);
    }),
  );
});

test('pages, ends and lines never leave the list', () => {
  expect(moved(0, 'page-down', 56)).toBe(9);
  expect(moved(50, 'page-down', 56)).toBe(55);
  expect(moved(4, 'page-up', 56)).toBe(0);
  expect(moved(4, 'last-line', 56)).toBe(55);
  expect(moved(40, 'first-line', 56)).toBe(0);
});
