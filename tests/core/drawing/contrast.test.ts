import { expect, test } from 'vitest';
import * as page from '../../../src/core/drawing/page.ts';
import { contrast } from '../../helpers/contrast.ts';

// Black on white is 21 to 1 by definition.
test('the formula gives 21 for black on white', () => {
  expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 6);
});

// WCAG 2.2, success criteria 1.4.3 (text, 4.5) and 1.4.11 (parts of graphics, 3); from memory.
test.each([
  ['ink', page.ink, 4.5],
  ['faint', page.faint, 4.5],
  ['fault', page.fault, 4.5],
  ['line', page.line, 3],
])('%s stands out from its panel', (_, color, least) => {
  expect(contrast(page.panel, color)).toBeGreaterThanOrEqual(least);
});
