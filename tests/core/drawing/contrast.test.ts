import { expect, test } from 'vitest';
import * as page from '../../../src/core/drawing/page.ts';

/** Relative luminance and contrast ratio by the formulas of WCAG 2.2, section "Terms"; from memory. */
function luminance(color: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
const contrast = (color: string): number =>
  (luminance(page.panel) + 0.05) / (luminance(color) + 0.05);

// Black on white is 21 to 1 by definition.
test('the formula gives 21 for black on white', () => {
  expect((luminance('#ffffff') + 0.05) / (luminance('#000000') + 0.05)).toBeCloseTo(21, 6);
});

// WCAG 2.2, success criteria 1.4.3 (text, 4.5) and 1.4.11 (parts of graphics, 3); from memory.
test.each([
  ['ink', page.ink, 4.5],
  ['faint', page.faint, 4.5],
  ['fault', page.fault, 4.5],
  ['line', page.line, 3],
])('%s stands out from its panel', (_, color, least) => {
  expect(contrast(color)).toBeGreaterThanOrEqual(least);
});
