import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { meanings, themes } from '../../src/screens/theme.ts';
import { contrast } from '../helpers/contrast.ts';

// WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text; from memory.
test.each(meanings)(
  'by night what is %s stands out from the ground the theme paints',
  (meaning) => {
    const { background = '', [meaning]: style } = themes.night;

    expect(background).toMatch(/^#[0-9a-f]{6}$/);
    expect(style.inverse).toBeUndefined();
    expect(contrast(background, style.color ?? '')).toBeGreaterThanOrEqual(4.5);
  },
);

test('by day no color is set, so that the ground and the letters are both the terminal’s own', () => {
  expect(meanings.map((meaning) => themes.day[meaning].color)).toEqual(
    meanings.map(() => undefined),
  );
  expect(themes.day.background).toBeUndefined();
});

test('no text is drawn past the theme: one component alone asks for letters', () => {
  const past = readdirSync('src/screens', { recursive: true, encoding: 'utf8' }).filter(
    (name) =>
      name.endsWith('.tsx') &&
      name !== 'parts.tsx' &&
      // A code to scan is black and white whatever the theme.
      name !== 'photo/phone.tsx' &&
      /import \{[^}]*\bText\b[^}]*\} from 'ink'/.test(readFileSync(`src/screens/${name}`, 'utf8')),
  );

  expect(past).toEqual([]);
});
