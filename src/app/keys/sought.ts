/** A list that is narrowed by typing: what is sought, and the cursor among the lines that have it. */
export type Search = { readonly cursor: number; readonly sought: string };

export const nothingSought: Search = { cursor: 0, sought: '' };

/** The lines whose words hold every word that was typed, in any order, upper case or lower. */
export function matching<Line>(
  lines: readonly Line[],
  sought: string,
  wordsOf: (line: Line) => string,
): readonly Line[] {
  const parts = sought
    .toLowerCase()
    .split(/\s+/)
    .filter((part) => part !== '');
  return lines.filter((line) => {
    const words = wordsOf(line).toLowerCase();
    return parts.every((part) => words.includes(part));
  });
}
