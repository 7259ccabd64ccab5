/** The names that a slip of the finger may have meant, nearest first; at most three. */
export function nearest(word: string, names: readonly string[]): readonly string[] {
  const small = word.toLowerCase();
  const allowed = Math.max(2, Math.floor(small.length / 3));
  return names
    .map((name) => ({ name, slips: distance(small, name.toLowerCase()) }))
    .filter(({ name, slips }) => slips <= allowed || name.toLowerCase().startsWith(small))
    .toSorted((left, right) => left.slips - right.slips)
    .slice(0, 3)
    .map(({ name }) => name);
}

/** Fewest letters to add, drop or change to get from one word to the other. */
function distance(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, place) => place);
  for (const [line, letter] of Array.from(from).entries()) {
    const next = [line + 1];
    for (const [place, other] of Array.from(to).entries()) {
      const swap = (row[place] ?? 0) + (letter === other ? 0 : 1);
      next.push(Math.min(swap, (row[place + 1] ?? 0) + 1, (next[place] ?? 0) + 1));
    }
    row = next;
  }
  return row.at(-1) ?? 0;
}

/** `Did you mean dwell? `, to stand before what else is told; nothing where no name is near. */
export function didYouMean(word: string, names: readonly string[]): string {
  const near = nearest(word, names);
  return near.length === 0 ? '' : `Did you mean ${near.join(' or ')}? `;
}

/** How to mend a wrong name: `Did you mean dwell?`, or the first of the list. */
export function meant(word: string, names: readonly string[]): string {
  const near = didYouMean(word, names);
  if (near !== '') return near.trimEnd();
  const some = names.slice(0, 12).join(', ');
  return names.length > 12 ? `There are: ${some}, and more.` : `There are: ${some}.`;
}
