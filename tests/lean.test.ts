import fc from 'fast-check';
import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { isApart, isPlain } from '../.scripts/lean/plain.ts';
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
].concat(
  '\u001b[1m',
  '\u001b[38;5;1m',
  '\u001b[2K',
  '\u0903',
  '\r\n',
  '\ud83d',
  'ﾞ',
  '\u0600',
  '\u00ad',
  '\t',
);
const text = fc
  .array(fc.constantFrom(...plainSigns, ...odd, ...odd))
  .map((signs) => signs.join(''));

test('every plain sign takes one column', () => {
  expect(plainSigns.length).toBeGreaterThan(1000);
  expect(plainSigns.filter((sign) => stringWidth(sign) !== 1)).toEqual([]);
});

test('signs apart stay characters of their own whatever of them stands beside them', () => {
  const signs = codes.filter(isApart);
  const beside = [...signs, ...signs.toReversed(), ...signs.map((sign) => `\u001b${sign}\n`)].join(
    '',
  );

  expect([...segmenter.segment(beside)].every(({ segment }) => segment.length === 1)).toBe(true);
});

test('widths are those of the library for any text', () => {
  const width = widthBy(() => stringWidth);

  fc.assert(
    fc.property(text, (one) => {
      expect(width(one)).toBe(stringWidth(one));
      const counted = { countAnsiEscapeCodes: true };
      expect(width(one, counted)).toBe(stringWidth(one, counted));
    }),
  );
});

test('characters are those of Unicode for any text, in turn and by place', () => {
  const ours = makeSegmenter();

  fc.assert(
    fc.property(text, (one) => {
      const [found, expected] = [ours.segment(one), segmenter.segment(one)];
      expect([...found]).toEqual([...expected]);
      for (let at = -1; at <= one.length; at += 1)
        expect(found.containing(at)).toEqual(expected.containing(at));
      expect(found.containing()).toEqual(expected.containing());
    }),
  );
});

test('a text of plain signs loads nothing', () => {
  const width = widthBy(() => {
    throw new Error('loaded');
  });

  expect(width('12.4 V · 0.8 Ω ── “half”…')).toBe(25);
  expect(width('\u001b[1mstarter\u001b[22m')).toBe(7);
});
