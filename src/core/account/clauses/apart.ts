import type { PayloadOf } from '../../session/event.ts';
import { asClause, joined, numberWord, sentence } from '../words/wording.ts';
import { plain, type Clause, type Phrasing } from './clause.ts';

type Made = Omit<Clause, 'n' | 'at'>;

/** Said once for all that comes off in a row. */
export const takingOff = (who: string, taken: PayloadOf<'part-off'>): Made => ({
  ...plain('', { kind: 'taking off', taken }),
  phrase: (phrasing) => takenWords(who, [taken], phrasing),
});

/** So many parts are named one by one; of more the first and the last are, and the table has them all. */
const mostNamed = 4;

/** Parts that came off one after the other, in one sentence, with their bags. */
export function takenWords(
  who: string,
  taken: readonly PayloadOf<'part-off'>[],
  { when }: Phrasing,
): string {
  const [first, last] = [taken[0], taken.at(-1)];
  if (first === undefined || last === undefined) return '';
  const said =
    taken.length <= mostNamed
      ? `${who} took off ${joined(taken.map(partOffWords))}`
      : `${who} took off ${numberWord(taken.length)} parts, from ${thePart(first.part)} to ${thePart(last.part)}${bagWords(taken)}`;
  return sentence(when === '' ? said : `${when} ${said}`);
}

function bagWords(taken: readonly PayloadOf<'part-off'>[]): string {
  const bags = taken.flatMap(({ bag }) => bag ?? []);
  const [first, last] = [bags[0], bags.at(-1)];
  if (first === undefined || last === undefined) return '';
  // Only what goes on from bag to bag, with none left out, is told as a range.
  const inRow = bags.length === taken.length && bags.every((bag, at) => bag === first + at);
  return inRow ? `, each in a bag of its own (${first} to ${last})` : ` (bags ${bags.join(', ')})`;
}

/** Said once for all that goes back on in a row. */
export const closing = (part: string): Made => ({
  ...plain('', { kind: 'closing', closed: part }),
  phrase: (phrasing) => closingWords([part], phrasing),
});

/** Parts that went back on, in one sentence. */
export function closingWords(parts: readonly string[], { when }: Pick<Phrasing, 'when'>): string {
  const said = `${partsBack(parts)} went back on`;
  return sentence(when === '' ? said : `${when} ${said}`);
}

/** Parts by name; of more than a few the first and the last. */
function partsBack(parts: readonly string[]): string {
  if (parts.length <= mostNamed) return joined(parts);
  return `${numberWord(parts.length)} parts, from ${parts[0] ?? ''} to ${parts.at(-1) ?? ''},`;
}

/** `the carburetor (bag 7; on the bench; four nuts; vent hose to the left)`. */
function partOffWords({ part, bag, where, fasteners, routing }: PayloadOf<'part-off'>): string {
  const said = [where, fasteners, routing].flatMap((one) =>
    one === undefined ? [] : [asClause(one)],
  );
  const more = [...(bag === undefined ? [] : [`bag ${bag}`]), ...said].join('; ');
  return `${thePart(part)}${more === '' ? '' : ` (${more})`}`;
}

export const thePart = (part: string): string =>
  /^(the|a|an|both|all|its|\d)\b/i.test(part.trim()) ? asClause(part) : `the ${asClause(part)}`;
