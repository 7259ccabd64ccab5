import { booksAsked, type TypedFigure } from '../../core/session/book.ts';
import { factsToAsk } from '../../core/tree/fit.ts';
import {
  newVehicle,
  sameVehicle,
  type KeptVehicle,
  type Vehicle,
} from '../../core/session/vehicle/vehicle.ts';
import { matching, nothingSought } from '../keys/sought.ts';
import type { Settings } from '../../core/settings.ts';
import type { Library } from '../../core/tree/shop.ts';
import { textOf, typing, type Typing } from '../typing/typing.ts';

/** One question of the Start screen. */
export type Field =
  | {
      readonly kind: 'text';
      readonly id:
        | 'own'
        | 'vehicle'
        | 'who'
        | 'altitude'
        | 'temperature'
        | `${'book' | 'where'}:${string}`;
    }
  | {
      readonly kind: 'choice';
      /** `tree`, or the id of a fact about the vehicle. */
      readonly id: string;
      readonly choices: readonly {
        readonly id: string;
        readonly label: string;
        /** What else it is found by: what a person says of it. */
        readonly said?: string;
      }[];
    };

export type StartForm = {
  /** Index of the question that is being answered. */
  readonly at: number;
  readonly cursor: number;
  /** What stands in its field, where words answer it. */
  readonly typed: Typing;
  /** Letters that narrow the choices of a question. */
  readonly sought: string;
  readonly answers: Readonly<Record<string, string>>;
};

/** Stands for a fact nobody knows: both kinds stay possible. */
export const notKnown = 'not-known';

export const emptyForm = (settings: Settings): StartForm => ({
  at: 0,
  cursor: 0,
  typed: typing(),
  sought: '',
  answers: { who: settings.who, altitude: settings.altitude },
});

/** What a new job is begun from: the complaints there are, and the vehicles that are known. */
export type Offered = {
  readonly library: Library;
  readonly vehicles: readonly KeptVehicle[];
};

/** The question which of the known vehicles it is, and its answer for one that is not among them. */
export const knownVehicle = 'known-vehicle';
const another = 'another vehicle';

/** The vehicle of the job as its file has it; undefined for one that is new here. */
export function chosenVehicle(
  { answers }: StartForm,
  vehicles: readonly KeptVehicle[],
): Vehicle | undefined {
  const known = answers[knownVehicle];
  const name = known === undefined || known === another ? answers['vehicle'] : known;
  return vehicles.find(({ vehicle }) => name !== undefined && sameVehicle(vehicle.name, name))
    ?.vehicle;
}

function vehicleFields({ answers }: StartForm, vehicles: readonly KeptVehicle[]): readonly Field[] {
  const choices = [...vehicles.map(({ vehicle }) => vehicle.name), another];
  const named: Field = { kind: 'text', id: 'vehicle' };
  if (vehicles.length === 0) return [named];
  return [
    { kind: 'choice', id: knownVehicle, choices: choices.map((id) => ({ id, label: id })) },
    ...(answers[knownVehicle] === another ? [named] : []),
  ];
}

/** The answer for a complaint that no tree is about. */
export const somethingElse = 'something else';

/** The complaints, and last of all, whatever is sought, the one that is told in own words. */
const complaints = ({ trees }: Library): Field => ({
  kind: 'choice',
  id: 'tree',
  choices: [
    ...trees.map(({ id, title, complaint: { say } }) => ({
      id,
      label: title,
      said: `${say} ${id.replaceAll('-', ' ')}`,
    })),
    { id: somethingElse, label: 'Something else: in your own words' },
  ],
});

/**
 * The questions, in order: the complaint first, since it decides which facts are asked. What the
 * vehicle's file knows is not asked again.
 */
export function fields(form: StartForm, { library, vehicles }: Offered): readonly Field[] {
  const { facts, sheet } = chosenVehicle(form, vehicles) ?? newVehicle('');
  const tree = library.trees.find(({ id }) => id === form.answers['tree']);
  const own = form.answers['tree'] === somethingElse;
  return [
    complaints(library),
    ...(own ? [{ kind: 'text', id: 'own' } as const] : []),
    ...vehicleFields(form, vehicles),
    ...(['who', 'altitude', 'temperature'] as const).map((id): Field => ({
      kind: 'text',
      id,
    })),
    ...(own ? ['volts'] : tree === undefined ? [] : factsToAsk(tree))
      .filter((id) => !Object.hasOwn(facts, id))
      .map((id) => factField(id, library)),
    ...(tree === undefined ? [] : booksAsked(tree))
      .filter((id) => !Object.hasOwn(sheet, id))
      .flatMap((id): Field[] => [
        { kind: 'text', id: `book:${id}` },
        ...(isEmpty(form.answers[`book:${id}`])
          ? []
          : [{ kind: 'text', id: `where:${id}` } as const]),
      ]),
  ];
}

/** On another question, with what was typed so far for it. */
export function askedAt(form: StartForm, at: number, offered: Offered): StartForm {
  const id = fields(form, offered)[at]?.id ?? '';
  return { ...form, at, ...nothingSought, typed: typing(form.answers[id]) };
}

export const answered = (form: StartForm, id: string, value: string): StartForm => ({
  ...form,
  answers: { ...form.answers, [id]: value },
});

/** With what stands in the field as the answer to its question. */
export function withTyped(form: StartForm, offered: Offered): StartForm {
  const field = fields(form, offered)[form.at];
  return field?.kind === 'text' ? answered(form, field.id, textOf(form.typed)) : form;
}
/** The choices of a question that have what is sought in their words: in their titles first, then in what is said of them. */
export const choicesShown = (
  { choices }: Extract<Field, { kind: 'choice' }>,
  { sought }: StartForm,
): Extract<Field, { kind: 'choice' }>['choices'] => {
  const last = choices.filter(({ id }) => id === somethingElse);
  const found = choices.filter((one) => !last.includes(one));
  const byTitle = matching(found, sought, ({ label }) => label);
  const bySaying = matching(found, sought, ({ label, said = '' }) => `${label} ${said}`);
  return [...byTitle, ...bySaying.filter((one) => !byTitle.includes(one)), ...last];
};

const isEmpty = (answer = ''): boolean => answer.trim() === '';

/** Without what was answered about a vehicle, where another one was chosen. */
export const forgetVehicle = (form: StartForm): StartForm => ({
  ...form,
  answers: Object.fromEntries(
    Object.entries(form.answers).filter(([id]) =>
      ['tree', 'own', 'who', 'altitude', 'temperature'].includes(id),
    ),
  ),
});

/** The figures of the vehicle's own book as they were typed. */
export function typedSheet({ answers }: StartForm): Readonly<Record<string, TypedFigure>> {
  const ids = Object.keys(answers).flatMap((id) => figureOf(id, 'book') ?? []);
  return Object.fromEntries(
    ids.map((id) => [
      id,
      { reading: answers[`book:${id}`] ?? '', where: answers[`where:${id}`] ?? '' },
    ]),
  );
}

/** The book figure that a question is about. */
export const figureOf = (id: string, about: 'book' | 'where'): string | undefined =>
  id.startsWith(`${about}:`) ? id.slice(about.length + 1) : undefined;

function factField(id: string, library: Library): Field {
  const values = library.shop.facts[id]?.values ?? {};
  return {
    kind: 'choice',
    id,
    choices: [
      ...Object.entries(values).map(([value, label]) => ({ id: value, label })),
      { id: notKnown, label: "don't know" },
    ],
  };
}

const plainQuestions: Readonly<Record<string, string>> = {
  own: 'What is the complaint, in your own words?',
  vehicle: 'What do you call the vehicle?',
  who: 'Who is doing the work?',
  altitude: 'Height above sea level here?',
  temperature: 'Air temperature?',
};

/** What a question asks, for the screen. */
export function question(field: Field, library: Library): string {
  if (field.id === 'tree') return 'What is the complaint?';
  if (field.id === knownVehicle) return 'Which vehicle?';
  if (field.kind === 'choice') return library.shop.facts[field.id]?.ask ?? field.id;
  const figure = figureOf(field.id, 'book');
  if (figure !== undefined) return `${library.shop.book[figure]?.name ?? figure}, by its own book?`;
  if (figureOf(field.id, 'where') !== undefined) return 'Where was that read?';
  return plainQuestions[field.id] ?? field.id;
}
