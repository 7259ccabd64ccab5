import { readFileSync } from 'node:fs';
import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { inConsoleFont } from '../../src/core/console-signs.ts';
import { sourceFiles } from '../helpers/floors.ts';

/** The upper half of code page 437, as Python's codec of that name has it. */
const codePage =
  'ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■ ';

/** Signs beyond ASCII in what draws the screens and the pictures of text. */
const drawn = (): ReadonlySet<string> =>
  new Set(
    sourceFiles('src')
      .filter((file) => /^(?:screens|app|core\/drawing)\//.test(file))
      .flatMap((file) => readFileSync(`src/${file}`, 'utf8').match(/[^\0-\x7f]/gu) ?? []),
  );

test('every sign that the screens draw is in the font of a bare console, or is drawn by one that is', () => {
  const lacking = [...drawn()]
    .map(inConsoleFont)
    .filter((sign) => !codePage.includes(sign) && sign > '~');

  expect(drawn().size).toBeGreaterThan(5);
  expect(lacking).toEqual([]);
});

test('the columns of a line stay where they are', () => {
  const line = 'battery 12.6 ╌ clamp ╳ stud … “it’s” 3 × 4 → – − ┄ 5′ 6″';

  expect(stringWidth(inConsoleFont(line))).toBe(stringWidth(line));
  expect(inConsoleFont(line)).toBe(`battery 12.6 - clamp x stud ~ "it's" 3 x 4 > - - - 5' 6"`);
});
