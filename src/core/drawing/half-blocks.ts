/** Rows and columns of light around a code (ISO/IEC 18004: four modules). */
const quiet = 4;

/** Two dots, one over the other, as one character: the filled half is light. */
const glyphs = { both: '█', upper: '▀', lower: '▄', none: ' ' } as const;

/**
 * A code as rows of half blocks, two of its rows in one, with the quiet zone around it. What is
 * filled is light: right in white on black, and on a dark screen without any color.
 * @param code true is dark
 * @param turned what is filled is dark: for a light screen without any color
 */
export function halfBlocks(
  code: readonly (readonly boolean[])[],
  turned = false,
): readonly string[] {
  const size = code.length + 2 * quiet;
  const filled = (x: number, y: number): boolean =>
    (code[y - quiet]?.[x - quiet] ?? false) === turned;
  return Array.from({ length: Math.ceil(size / 2) }, (_, row) =>
    Array.from({ length: size }, (__, x) => glyph(filled(x, 2 * row), filled(x, 2 * row + 1))).join(
      '',
    ),
  );
}

function glyph(upper: boolean, lower: boolean): string {
  if (upper && lower) return glyphs.both;
  if (upper) return glyphs.upper;
  return lower ? glyphs.lower : glyphs.none;
}
