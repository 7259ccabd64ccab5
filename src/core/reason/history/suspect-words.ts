import { unlisted, type Cause, type Tree } from '../../tree/model.ts';
import type { Advice } from '../advice/advice.ts';
import { partedBy, type Weighed } from '../belief/parting.ts';
import { gradeOf, grades, suspectFrom } from '../grade.ts';
import { percent } from './wording.ts';

/** The causes that may still be there, the surest first; what is on no list is one of them. */
export const suspectsNow = ({ suspects, unlisted: other }: Advice): readonly Weighed[] =>
  [...suspects.map(({ cause, chance }): Weighed => [cause, chance]), [unlisted, other] as const]
    .filter(([, chance]) => chance >= suspectFrom)
    .toSorted(([, one], [, other_]) => other_ - one);

/** A cause in a word or two: as the tree says it in a sentence, without its article; else by its name. */
export function shortName(tree: Tree, id: string, leads = false): string {
  if (id === unlisted) return leads ? 'none of the listed' : 'something else';
  const cause = tree.causes[id];
  return cause?.short?.replace(/^(?:the|an?) /, '') ?? firstWords(cause, id);
}

/** The first words of a cause's name: enough to know it by. */
function firstWords(cause: Cause | undefined, id: string): string {
  const [first = id] = (cause?.name ?? id).split(/[,:(]/);
  const words = first.split(' ');
  let shown = words[0] ?? '';
  for (const word of words.slice(1))
    if (shown.length + 1 + word.length <= 18) shown += ` ${word}`;
    else break;
  return shown.replace(/ (or|at|of|to|the|and|its)$/, '').toLowerCase();
}

/** How strongly each is suspected: by one word for all that share it, or by the number of each. */
type Said = 'words' | 'numbers';

/** A list of names that shortens itself to the columns there are: what is left out is counted. */
type Names = (columns: number) => string;

/** Names, the surest first: `link (likely), ammeter, splice (maybe)`. */
function namesOf(tree: Tree, suspects: readonly Weighed[], said: Said): Names {
  const [lead] = suspects;
  const name = ([id]: Weighed): string => shortName(tree, id, id === lead?.[0]);
  const shown = (first: number): string => {
    const some = suspects.slice(0, first);
    const words = some.map((one, index) => {
      const grade = gradeOf(one[1]);
      const next = some[index + 1];
      if (said === 'numbers') return `${name(one)} (${percent(one[1])})`;
      return next !== undefined && gradeOf(next[1]) === grade
        ? name(one)
        : `${name(one)} (${grade})`;
    });
    const left = suspects.slice(first);
    const [next] = left;
    const many = next !== undefined && gradeOf(next[1]) === 'faint' ? 'faint' : 'more';
    return `${words.join(', ')}${left.length === 0 ? '' : `, ${left.length} ${many}`}`;
  };
  return (columns) => fitted(shown, suspects.length, columns);
}

/** The longest form that fits; the shortest where none does. */
function fitted(shown: (first: number) => string, all: number, columns: number): string {
  for (let first = all; first > 1; first -= 1)
    if (shown(first).length <= columns) return shown(first);
  return shown(Math.min(1, all));
}

export type SideWords = { readonly shows: string; readonly names: Names };

/** The sides of a check in words, the surest first; those who show either way last, where any is worth a word. */
export function sidesOf(
  tree: Tree,
  check: string,
  suspects: readonly Weighed[],
  said: Said = 'words',
): readonly SideWords[] {
  const parting = partedBy(tree, check, suspects);
  if (parting === undefined) return [];
  const weighed = (ids: readonly string[]) => suspects.filter(([id]) => ids.includes(id));
  const eitherWay = weighed(parting.eitherWay);
  const worth = eitherWay.some(([, chance]) => gradeOf(chance) !== 'faint');
  return [
    ...parting.sides.map((side) => ({
      shows: resultNames(tree, check, side.told),
      names: namesOf(tree, weighed(side.suspects), said),
    })),
    ...(worth ? [{ shows: 'either way', names: namesOf(tree, eitherWay, said) }] : []),
  ];
}

/** Results by their first words, where these tell them apart: `good or fair`. */
function resultNames(tree: Tree, check: string, results: readonly string[]): string {
  const all = tree.checks[check]?.results ?? [];
  const first = all.map(({ label }) => label.split(/[,;:(]/)[0] ?? label);
  const tell = new Set(first).size === all.length;
  const names = all.map(({ id, label }, index) => ({ id, name: tell ? first[index] : label }));
  const told = names.filter(({ id }) => results.includes(id)).map(({ name }) => name);
  const [last = ''] = told.slice(-1);
  return told.length < 2 ? last : `${told.slice(0, -1).join(', ')} or ${last}`;
}

/** All suspects by their word, the strongest first: `likely: link; maybe: ammeter, splice`. */
export function gradedNames(
  tree: Tree,
  suspects: readonly Weighed[],
  said: Said = 'words',
): readonly string[] {
  const [lead] = suspects;
  return grades.flatMap((grade) => {
    const here = suspects.filter(([, chance]) => gradeOf(chance) === grade);
    if (here.length === 0) return [];
    const names = here.map(([id, chance]) => {
      const name = shortName(tree, id, id === lead?.[0]);
      return said === 'numbers' ? `${name} (${percent(chance)})` : name;
    });
    return [`${grade}: ${names.join(', ')}`];
  });
}
