import { bad, good } from '../problem.ts';
import type { Parsed, Problem } from '../problem.ts';
import { figures, findFigure } from './catalog.ts';
import type { InputValues } from './figure-inputs.ts';
import type { Figure, Mark } from './figure.ts';
import type { FigureInput } from './figure-input.ts';
import { meant } from './units/nearest.ts';
import type { ReadingValue } from './units/reading.ts';
import type { Units } from './units/usual.ts';
import { typedInput } from './typed-inputs.ts';
import type { TypedInput } from './typed-inputs.ts';

/** A figure worked out: what was typed, what came out, and on what it rests. Also the JSON form. */
export type FigureRun = {
  readonly figure: string;
  readonly inputs: Readonly<Record<string, TypedInput['shown']>>;
  readonly outputs: Readonly<Record<string, ReadingValue>>;
  readonly verdict?: string;
  readonly source: string;
  readonly mark: Mark;
};

type Typed = Readonly<Record<string, string>>;

/**
 * Runs a figure on typed inputs, each with or without a unit, `{gauge: '12', length: '3 m'}`. With
 * none the figure's own counts, or with `metric` the metric one beside it. All
 * problems at once: a name that is not there (with the nearest ones), an input that is missing or
 * cannot be read, a value out of range.
 */
export function runFigure(name: string, typed: Typed, units: Units = 'us'): Parsed<FigureRun> {
  const figure = findFigure(name);
  if (figure === undefined) {
    const names = figures.map((each) => each.name);
    const message = `There is no figure "${name.slice(0, 40)}".`;
    return bad({
      code: 'figure-unknown',
      message,
      mend: `${meant(name, names)} "droplight figure" lists all.`,
      value: name.slice(0, 40),
    });
  }
  const parsed = Object.entries(typed).flatMap(([key, text]) => {
    const input = figure.inputs[key];
    return input === undefined || !Object.hasOwn(figure.inputs, key)
      ? []
      : [{ key, input, result: typedInput(key, input, text, units) }];
  });
  const read = new Map<string, TypedInput>();
  for (const { key, result } of parsed) if (result.kind === 'good') read.set(key, result.value);
  const problems = [
    ...unknownKeys(figure, typed),
    ...parsed.flatMap(({ result }) => (result.kind === 'bad' ? result.problems : [])),
    ...missingKeys(figure, typed, unitsFor(figure, read)),
  ];
  return problems.length > 0 ? bad(...problems) : work(figure, read);
}

function unknownKeys(figure: Figure, typed: Typed): readonly Problem[] {
  const names = Object.keys(figure.inputs);
  return Object.keys(typed)
    .filter((key) => !names.includes(key))
    .map((key) => ({
      code: 'figure-input-unknown',
      message: `${figure.name} has no input "${key.slice(0, 40)}".`,
      mend: meant(key, names),
      value: key.slice(0, 40),
    }));
}

function missingKeys(figure: Figure, typed: Typed, units: InputValues): readonly Problem[] {
  return Object.entries(figure.inputs)
    .filter(
      ([key, input]) => input.optional !== true && input.default === undefined && !(key in typed),
    )
    .filter(([key]) => units[key] === undefined)
    .map(([key, input]) => ({
      code: 'figure-input-missing',
      message: `${figure.name} needs ${key} (${input.about}).`,
      mend: hasUnit(input) ? `Add ${key}=… in ${input.unit} or with its unit.` : `Add ${key}=….`,
    }));
}

function hasUnit(input: FigureInput): boolean {
  return input.unit !== '' && input.unit !== '1';
}

/** Inputs that are the unit typed behind another input. */
function unitsFor(figure: Figure, read: ReadonlyMap<string, TypedInput>): InputValues {
  const pairs = [...read].flatMap(([key, { unitTyped }]) => {
    const target = figure.inputs[key]?.unitFor;
    return target === undefined || unitTyped === undefined ? [] : [[target, unitTyped] as const];
  });
  return Object.fromEntries(pairs);
}

function work(figure: Figure, read: ReadonlyMap<string, TypedInput>): Parsed<FigureRun> {
  const given = Object.fromEntries([...read].map(([key, { inUnit }]) => [key, inUnit]));
  try {
    const { outputs, verdict, source, mark } = figure.run({ ...unitsFor(figure, read), ...given });
    return good({
      figure: figure.name,
      inputs: shownInputs(figure, read),
      outputs,
      ...(verdict === undefined ? {} : { verdict }),
      source: source ?? figure.source,
      mark: mark ?? figure.mark,
    });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const mend = `${figure.name} holds for ${figure.range}.`;
    return bad({ code: 'figure-out-of-range', message: sentence(error.message), mend });
  }
}

/** Every input that counted, typed or preset, in the order of the figure. */
function shownInputs(figure: Figure, read: ReadonlyMap<string, TypedInput>): FigureRun['inputs'] {
  const units = unitsFor(figure, read);
  const pairs = Object.entries(figure.inputs).flatMap(([key, input]) => {
    const value = units[key] ?? input.default;
    const preset = value === undefined ? undefined : { value, unit: input.unit };
    const shown = read.get(key)?.shown ?? preset;
    return shown === undefined ? [] : [[key, shown] as const];
  });
  return Object.fromEntries(pairs);
}

function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
