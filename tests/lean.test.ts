import fc from 'fast-check';
import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { isPlain } from '../.scripts/lean/plain.ts';
import { makeSegmenter } from '../.scripts/lean/segmenter.ts';
import { widthBy } from '../.scripts/lean/string-width.ts';

const codes = Array.from({ length: 0x3000 }, (_, code) => String.fromCharCode(code));
const plainSigns = codes.filter(isPlain);
const segmenter = new Intl.Segmenter();

// Joiners, marks, flags, emoji with and without their selector, jamo, wide signs, escapes, halves of pairs.
const odd = [
  '\u200d',
  '\ufe0f',
  '\u0301',
  '🇩🇪',
  '🚗',
  '©\ufe0f',
  '1\u20e3',
  '\u1100',
  '\u1161',
  '漢',
].concat('\u001b[1m', '\u0903', '\r\n', '\ud83d', 'ﾞ', '\u0600', '\u00ad', '\t');
const text = fc
  .array(fc.constantFrom(...plainSigns, ...odd, ...odd))
  .map((signs) => signs.join(''));

test('every plain sign takes one column', () => {
  expect(plainSigns.length).toBeGreaterThan(1000);
  expect(plainSigns.filter((sign) => stringWidth(sign) !== 1)).toEqual([]);
});

test('plain signs stay characters of their own whatever plain stands beside them', () => {
  const beside = [...plainSigns, ...plainSigns.toReversed()].join('');

  expect([...segmenter.segment(beside)].every(({ segment }) => segment.length === 1)).toBe(true);
});

test('widths are those of the library for any text', () => {
  const width = widthBy(() => stringWidth);

  fc.assert(
    fc.property(text, (one) => {
      expect(width(one)).toBe(stringWidth(one));
    }),
  );
});

test('characters are those of Unicode for any text', () => {
  const ours = makeSegmenter();

  fc.assert(
    fc.property(text, (one) => {
      expect([...ours.segment(one)]).toEqual([...segmenter.segment(one)]);
    }),
  );
});

test('a text of plain signs loads nothing', () => {
  const width = widthBy(() => {
    throw new Error('loaded');
  });

  expect(width('12.4 V · 0.8 Ω ── “half”…')).toBe(25);
});
