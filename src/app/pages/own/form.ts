import type { Facts } from '../../../core/tree/facts.ts';
import { exists } from '../../../core/tree/fit.ts';
import type { Check, Tree } from '../../../core/tree/model.ts';
import { Check as CheckModel } from '../../../core/tree/shapes.ts';
import type { Library } from '../../../core/tree/shop.ts';
import { hasWord } from '../../../core/tree/shop-search.ts';
import { textOf, typing, type Typing } from '../../typing/typing.ts';

/** What is named: the complaint's own test, another check, or a cause. */
export type NamedThing = 'test' | 'check' | 'cause';
export type NamedField = 'what' | 'does' | 'good' | 'bad' | 'name' | 'where';

/** One question after the other; what was answered already stands by its field. */
export type NameForm = {
  readonly names: NamedThing;
  readonly at: number;
  /** The line marked among those offered; -1: the words that are typed. */
  readonly cursor: number;
  readonly typed: Typing;
  readonly answers: Readonly<Partial<Record<NamedField, string>>>;
};

const fields: Readonly<Record<NamedThing, readonly NamedField[]>> = {
  test: ['what', 'bad', 'good'],
  check: ['what', 'does', 'good'],
  cause: ['name', 'where'],
};

export const emptyNameForm = (names: NamedThing): NameForm => ({
  names,
  at: 0,
  cursor: -1,
  typed: typing(),
  answers: {},
});

/** The questions of a form, in order. */
export const fieldsOf = ({ names }: Pick<NameForm, 'names'>): readonly NamedField[] =>
  fields[names];

export const fieldAt = (form: NameForm): NamedField | undefined => fieldsOf(form)[form.at];

/** With what stands in the field as its answer. */
export function withAnswer(form: NameForm, answer = textOf(form.typed).trim()): NameForm {
  const field = fieldAt(form);
  return field === undefined ? form : { ...form, answers: { ...form.answers, [field]: answer } };
}

/** At another question, with what was answered to it before. */
export function askedNext(form: NameForm, at: number): NameForm {
  const field = fieldsOf(form)[at];
  const answer = field === undefined ? '' : (form.answers[field] ?? '');
  const kind =
    field === 'does'
      ? Math.max(
          0,
          kinds.findIndex(({ id }) => id === answer),
        )
      : -1;
  return { ...form, at, cursor: kind, typed: typing(field === 'does' ? '' : answer) };
}

/** The ways to check something. */
export const kinds: readonly { readonly id: Check['kind']; readonly label: string }[] =
  CheckModel.shape.kind.options.map((id) => ({
    id,
    label: {
      look: 'look at it',
      listen: 'listen to it',
      feel: 'feel it',
      measure: 'measure it',
      try: 'try it',
      ask: 'ask about it',
    }[id],
  }));

/** A check of the library that the words typed so far find. */
export type OfferedCheck = {
  readonly tree: string;
  readonly check: string;
  readonly label: string;
};

/** With fewer letters nearly everything would be offered. */
const fewest = 3;
const mostOffered = 9;

/**
 * The checks of the library whose words have all that is typed, one line for each that several trees
 * share; none of what this vehicle has not, and no complaint's own test. Those of the group that the
 * complaint belongs to come first, and stand there before anything is typed: what most complaints of
 * the group ask for, the quicker before the longer.
 */
export function offeredChecks(
  form: NameForm,
  library: Library | undefined,
  { facts, group }: { readonly facts: Facts; readonly group: Tree['group'] },
): readonly OfferedCheck[] {
  const words = textOf(form.typed).trim();
  if (form.names !== 'check' || fieldAt(form) !== 'what') return [];
  const trees = library?.trees ?? [];
  const ofGroup = shared(
    trees.filter((tree) => group !== undefined && tree.group === group),
    facts,
  );
  if (words === '') return ofGroup.slice(0, mostOffered);
  if (words.length < fewest) return [];
  const wanted = words.split(/\s+/);
  return byCheck([...ofGroup, ...linesOf(trees, facts)])
    .filter(({ found }) => wanted.every((word) => hasWord(found, word)))
    .slice(0, mostOffered);
}

type FoundCheck = OfferedCheck & { readonly found: string; readonly minutes: number };

const linesOf = (trees: readonly Tree[], facts: Facts): readonly FoundCheck[] =>
  trees.flatMap(({ id: tree, checks, complaint }) =>
    Object.entries(checks)
      .filter(([check, { when }]) => check !== complaint.confirm && exists(when, facts))
      .map(([check, { ask, told = '', minutes }]) => {
        const found = `${ask} ${told}`;
        return { tree, check, label: ask, found, minutes };
      }),
  );

/** One line a check, the first there is of it. */
function byCheck(lines: readonly FoundCheck[]): readonly FoundCheck[] {
  const first = new Map<string, FoundCheck>();
  for (const line of lines) if (!first.has(line.check)) first.set(line.check, line);
  return [...first.values()];
}

/** The checks of several trees, those that the most of them have first. */
function shared(trees: readonly Tree[], facts: Facts): readonly FoundCheck[] {
  const lines = linesOf(trees, facts);
  const times = (id: string): number => lines.filter(({ check }) => check === id).length;
  return byCheck(lines).toSorted(
    (one, other) => times(other.check) - times(one.check) || one.minutes - other.minutes,
  );
}
