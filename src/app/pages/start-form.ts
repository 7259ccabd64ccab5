import { factsAsked } from '../../core/tree/fit.ts';
import type { Problem } from '../../core/problem.ts';
import type { Settings } from '../../core/settings.ts';
import type { Tree } from '../../core/tree/model.ts';
import type { Shop } from '../../core/tree/shop.ts';

/** The trees to choose from, with what is wrong with those that could not be read. */
export type LoadedTrees = {
  readonly trees: readonly Tree[];
  readonly shop: Shop;
  readonly problems: readonly Problem[];
};

/** One question of the Start screen. */
export type Field =
  | { readonly kind: 'text'; readonly id: 'vehicle' | 'who' | 'altitude' | 'temperature' }
  | {
      readonly kind: 'choice';
      /** `tree`, or the id of a fact about the vehicle. */
      readonly id: string;
      readonly choices: readonly { readonly id: string; readonly label: string }[];
    };

export type StartForm = {
  /** Index of the question that is being answered. */
  readonly at: number;
  readonly cursor: number;
  readonly answers: Readonly<Record<string, string>>;
};

/** Stands for a fact nobody knows: both kinds stay possible. */
export const notKnown = 'not-known';

export const emptyForm = (settings: Settings): StartForm => ({
  at: 0,
  cursor: 0,
  answers: { who: settings.who, altitude: settings.altitude },
});

/** The questions, in order: the complaint first, since it decides which facts are asked. */
export function fields(form: StartForm, library: LoadedTrees): readonly Field[] {
  const tree = library.trees.find(({ id }) => id === form.answers['tree']);
  return [
    {
      kind: 'choice',
      id: 'tree',
      choices: library.trees.map(({ id, title }) => ({ id, label: title })),
    },
    ...(['vehicle', 'who', 'altitude', 'temperature'] as const).map((id): Field => ({
      kind: 'text',
      id,
    })),
    ...(tree === undefined ? [] : factsAsked(tree)).map((id) => factField(id, library)),
  ];
}

function factField(id: string, library: LoadedTrees): Field {
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

/** What a question asks, for the screen. */
export function question(field: Field, library: LoadedTrees): string {
  if (field.id === 'tree') return 'What is the complaint?';
  if (field.kind === 'choice') return library.shop.facts[field.id]?.ask ?? field.id;
  return {
    vehicle: 'What do you call the vehicle?',
    who: 'Who is doing the work?',
    altitude: 'Height above sea level here?',
    temperature: 'Air temperature?',
  }[field.id];
}
