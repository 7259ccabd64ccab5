import { workedInputs } from './figure-inputs.ts';
import type { FigureInputs, InputValues, Worked } from './figure-inputs.ts';
import type { ReadingValue } from './units/reading.ts';

/** How sure a figure is, told beside every result. */
export type Mark = 'published' | 'computed' | 'common practice' | 'from memory';

type FigureOutput = { readonly unit: string; readonly about: string };

type FigureResult = {
  readonly outputs: Readonly<Record<string, ReadingValue>>;
  readonly verdict?: string;
  /** Only where this answer rests on another source than the figure as a whole. */
  readonly source?: string;
  readonly mark?: Mark;
};

/** One trade figure as the screen, the command and the trees see it. The main output is `result`. */
export type Figure = {
  readonly name: string;
  readonly family: string;
  readonly about: string;
  readonly inputs: FigureInputs;
  readonly outputs: Readonly<Record<string, FigureOutput>>;
  readonly formula: string;
  readonly range: string;
  readonly source: string;
  readonly mark: Mark;
  /** Takes each input in its own unit. RangeError, with value and range, on what it cannot answer. */
  readonly run: (inputs: InputValues) => FigureResult;
};

/** What a figure works out: numbers in the units of its outputs; left out where there is none. */
type Answer = {
  readonly values: Readonly<Record<string, number | undefined>>;
  readonly verdict?: string | undefined;
  /** Only where the unit of the result depends on the inputs; likewise source and mark. */
  readonly unit?: string;
  readonly source?: string;
  readonly mark?: Mark;
};

type FigureParts<Inputs extends FigureInputs> = Omit<Figure, 'run' | 'inputs'> & {
  readonly inputs: Inputs;
  readonly work: (inputs: Worked<Inputs>) => Answer;
};

/** A figure from its parts: fills in defaults, checks ranges, gives each output its unit. */
export function makeFigure<const Inputs extends FigureInputs>(parts: FigureParts<Inputs>): Figure {
  const { work, ...rest } = parts;
  return {
    ...rest,
    run: (given) => {
      const answer = work(workedInputs(parts.inputs, given));
      const { verdict, source, mark } = answer;
      return {
        outputs: amounts(parts.outputs, answer),
        ...(verdict === undefined ? {} : { verdict }),
        ...(source === undefined ? {} : { source }),
        ...(mark === undefined ? {} : { mark }),
      };
    },
  };
}

function amounts(
  outputs: Readonly<Record<string, FigureOutput>>,
  answer: Answer,
): Readonly<Record<string, ReadingValue>> {
  const named = Object.entries(outputs).flatMap(([key, { unit }]) => {
    const value = answer.values[key];
    if (value === undefined) return [];
    if (!Number.isFinite(value)) throw new RangeError(`${key} has no finite answer for these.`);
    return [[key, { value, unit: answer.unit ?? unit }] as const];
  });
  return Object.fromEntries(named);
}
