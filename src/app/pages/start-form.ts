import { booksAsked } from '../../core/session/book.ts';
import { factsToAsk } from '../../core/tree/fit.ts';
import {
  newVehicle,
  sameVehicle,
  type KeptVehicle,
  type Vehicle,
} from '../../core/session/vehicle/vehicle.ts';
import { matching, type Search } from '../keys/sought.ts';
import type { Settings } from '../../core/settings.ts';
import type { Story } from '../../core/session/story.ts';
import { complaintsFound, type FoundBy } from '../../core/tree/found.ts';
import { byGroup, groupedTitle, groupMeanings, groups } from '../../core/tree/groups.ts';
import type { Library } from '../../core/tree/shop.ts';
import { textOf, typing, type Typing } from '../typing/typing.ts';

/** One question of the Start screen. */
export type Field =
  | {
      readonly kind: 'text';
      readonly id:
        | 'own'
        | 'vehicle'
        | 'said'
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
        /** The complaint that it is, found by more than its title. */
        readonly tree?: FoundBy;
      }[];
    };

export type StartForm = {
  /** A job is begun by it, or another complaint is taken up on the open job, or led on to. */
  readonly begins: 'job' | 'complaint' | 'leg';
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

/** No line of a choice is marked at first: Enter held down must begin nothing and say nothing of a vehicle. */
const noneMarked: Search = { cursor: -1, sought: '' };

export const emptyForm = (settings: Settings): StartForm => ({
  begins: 'job',
  at: 0,
  ...noneMarked,
  typed: typing(),
  answers: { who: settings.who, altitude: settings.altitude },
});

/** The questions of another complaint: what the job knows already is not asked again. */
export const complaintForm: StartForm = {
  begins: 'complaint',
  at: 0,
  ...noneMarked,
  typed: typing(),
  answers: {},
};

/** The questions of a tree that the job is led on to: what it asks of the vehicle that nobody was asked yet. */
export const legForm = (tree: string): StartForm => ({
  ...complaintForm,
  begins: 'leg',
  answers: { tree },
});

/** What a new job is begun from: the complaints there are, and the vehicles that are known. */
export type Offered = {
  readonly library: Library;
  readonly vehicles: readonly KeptVehicle[];
  /** The job on which another complaint is taken up. */
  readonly job?: Pick<Story, 'legs' | 'facts' | 'sheet'> | undefined;
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

/**
 * The questions, in order: the complaint first, since it decides which facts are asked. What the
 * vehicle's file knows is not asked again.
 */
export function fields(form: StartForm, offered: Offered): readonly Field[] {
  const { library, vehicles } = offered;
  const job = form.begins === 'job' ? undefined : offered.job;
  const { facts, sheet } = job ?? chosenVehicle(form, vehicles) ?? newVehicle('');
  const tree = library.trees.find(({ id }) => id === form.answers['tree']);
  const own = form.answers['tree'] === somethingElse;
  const complaint: readonly Field[] = [
    { kind: 'choice', id: 'tree', choices: complaintsOffered(library, job) },
    { kind: 'text', id: own ? 'own' : 'said' },
    ...(own ? [aboutField] : []),
  ];
  return [
    ...(form.begins === 'leg' ? [] : complaint),
    ...(job === undefined ? jobFields(form, vehicles) : []),
    ...(own && job === undefined ? ['volts'] : tree === undefined ? [] : factsToAsk(tree))
      .filter((id) => !Object.hasOwn(facts, id) && !askedBefore(form, job).includes(id))
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

/** Facts that a tree before this one asked: whoever is led on is not asked twice what nobody knows. */
const askedBefore = ({ begins }: StartForm, job: Offered['job']): readonly string[] =>
  begins === 'leg' ? (job?.legs ?? []).flatMap(({ tree }) => factsToAsk(tree)) : [];

/** What a complaint in own words is about: the library's checks of that group are offered for it. */
const aboutField: Field = {
  kind: 'choice',
  id: 'about',
  choices: [
    ...groups.map((id) => ({ id, label: groupMeanings[id] })),
    { id: notKnown, label: "don't know" },
  ],
};

/** What a new job asks beside its complaint: the vehicle, who works, and the air of the day. */
const jobFields = (form: StartForm, vehicles: readonly KeptVehicle[]): readonly Field[] => [
  ...vehicleFields(form, vehicles),
  ...(['who', 'altitude', 'temperature'] as const).map((id): Field => ({ kind: 'text', id })),
];

/**
 * The complaints there are trees for, on a job that is open all but the one that is worked on; and last
 * of all, whatever is sought, the one that is told in own words.
 */
const complaintsOffered = ({ trees }: Library, job: Offered['job']): Choices => [
  ...byGroup(trees)
    .filter(({ id }) => job?.legs.at(-1)?.tree.id !== id)
    .map((tree) => {
      const before = job?.legs.some((leg) => leg.tree.id === tree.id) === true;
      const label = `${groupedTitle(tree)}${before ? ' (worked on before)' : ''}`;
      return { id: tree.id, label, tree };
    }),
  { id: somethingElse, label: 'Something else: in your own words' },
];

type Choices = Extract<Field, { kind: 'choice' }>['choices'];

/** On another question, with what was answered or typed so far for it; else no line of it is marked. */
export function askedAt(form: StartForm, at: number, offered: Offered): StartForm {
  const field = fields(form, offered)[at];
  const answer = form.answers[field?.id ?? ''];
  const choices = field?.kind === 'choice' ? field.choices : [];
  const cursor = choices.findIndex(({ id }) => id === answer);
  return { ...form, at, sought: '', cursor, typed: typing(answer) };
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

/** The choices of a question that what is sought finds: complaints by their words, others by their lines. */
export function choicesShown(
  { choices }: Extract<Field, { kind: 'choice' }>,
  { sought }: StartForm,
): Choices {
  const last = choices.filter(({ id }) => id === somethingElse);
  const complaints = choices.flatMap(({ tree }) => tree ?? []);
  const found = complaintsFound(complaints, sought).flatMap(
    (tree) => choices.find((choice) => choice.tree === tree) ?? [],
  );
  const others = choices.filter(({ id, tree }) => tree === undefined && id !== somethingElse);
  return [...found, ...matching(others, sought, ({ label }) => label), ...last];
}

const isEmpty = (answer = ''): boolean => answer.trim() === '';

/** Without what was answered about a vehicle, where another one was chosen. */
export const forgetVehicle = (form: StartForm): StartForm => ({
  ...form,
  answers: Object.fromEntries(
    Object.entries(form.answers).filter(([id]) =>
      ['tree', 'own', 'about', 'said', 'who', 'altitude', 'temperature'].includes(id),
    ),
  ),
});

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
