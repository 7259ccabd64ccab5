import { figures, findFigure } from '../../core/trade/catalog.ts';
import type { Figure } from '../../core/trade/figure.ts';
import type { Conditions } from '../../core/session/kinds/shapes.ts';
import type { Facts } from '../../core/tree/facts.ts';
import { cylindersOf } from '../../core/tree/fit.ts';
import type { ReadingValue } from '../../core/trade/units/reading.ts';
import { runFigure, type FigureRun } from '../../core/trade/run-figure.ts';
import { showNumber, showReading } from '../../core/trade/units/units.ts';
import { inUsual, usualUnit, type Units } from '../../core/trade/units/usual.ts';
import { firstOf, type Parsed, type Problem } from '../../core/problem.ts';
import { typedInput } from '../../core/trade/typed-inputs.ts';
import { isEmpty, textOf, typing, type Typing } from '../typing/typing.ts';

export type FigureLine = { readonly id: string; readonly label: string };

/** All trade figures as lines to pick from, family by family. */
export const figureLines: readonly FigureLine[] = figures.map(({ name, family, about }) => ({
  id: name,
  label: `${family}: ${name.replaceAll('-', ' ')}. ${about}`,
}));

/** One input of a figure as the screen asks it. */
export type FigureField = {
  readonly key: string;
  readonly ask: string;
  /** Words of which it is one; none where it is a number or a text. */
  readonly choices: readonly string[];
  readonly unit: string;
  readonly typed: Typing;
  /** What the open session knows of it, as it stood in the field when the figure was opened. */
  readonly known: string | undefined;
};

/** A figure on the screen: plain data, so that drawing it needs no figures. */
export type FigurePage = {
  readonly name: string;
  readonly units: Units;
  readonly about: string;
  readonly formula: string;
  readonly fields: readonly FigureField[];
  /** What came out, in lines; nothing while the inputs are being typed. */
  readonly result: readonly string[];
};

/** What a session knows of place, weather and vehicle. */
type Known = {
  readonly conditions: Conditions;
  readonly facts: Facts;
};

/** Figures whose temperature is that of the air for a vehicle that stood, as the trees take it. */
const takesAir: ReadonlySet<string> = new Set(['load-test', 'electrolyte']);

/**
 * What the session knows of a figure's inputs, as if it had been typed: altitude, temperature,
 * system volts and cylinders, so that "here" and "this vehicle" mean those of the session.
 */
export function knownInputs(
  name: string,
  { conditions, facts }: Known,
): Readonly<Record<string, string>> {
  const { altitude, temperature } = conditions;
  const count = cylindersOf(facts);
  return {
    ...(altitude && { altitude: showAmount(altitude) }),
    ...(temperature && takesAir.has(name) && { temperature: showAmount(temperature) }),
    ...(facts['volts'] !== undefined && { battery: facts['volts'] === '6-volt' ? '6' : '12' }),
    ...(count !== undefined && { cylinders: String(count) }),
  };
}

const showAmount = ({ value, unit }: ReadingValue): string => `${value} ${unit}`;

/** A figure with what is known of its inputs in the fields already. */
export function figurePage(
  name: string,
  units: Units,
  typed: Readonly<Record<string, string>> = {},
): FigurePage {
  const figure = findFigure(name);
  if (figure === undefined) throw new Error(`no figure ${name}`);
  return {
    name,
    units,
    about: figure.about,
    formula: `${figure.formula}. Holds for ${figure.range}.`,
    fields: Object.entries(figure.inputs).map(([key, input]) => ({
      key,
      ask: askWords(key, input, units),
      choices: input.values ?? [],
      unit: input.unit === '1' ? '' : usualUnit(input.unit, units),
      typed: typing(typed[key]),
      known: typed[key],
    })),
    result: [],
  };
}

function askWords(key: string, input: Figure['inputs'][string], units: Units): string {
  const preset =
    input.default === undefined
      ? ''
      : `; ${presetWords(input.default, input.unit, units)} if left empty`;
  const free = input.optional === true ? '; may stay empty' : '';
  return `${key}: ${input.about}${preset}${free}`;
}

function presetWords(preset: number | string, unit: string, units: Units): string {
  if (typeof preset === 'string') return preset;
  const { value, unit: usual } = inUsual({ value: preset, unit }, units);
  return showReading(value, usual);
}

/** The words that a field may still become: those with what was typed in them, or all where none has it. */
export function choicesLeft({ choices, typed }: FigureField): readonly string[] {
  const sought = textOf(typed).trim().toLowerCase();
  const left = choices.filter((choice) => choice.toLowerCase().includes(sought));
  return left.length === 0 ? choices : left;
}

/** What is wrong with the field that is left, by its name; nothing while it is empty. */
export function fieldTrouble({ name, units, fields }: FigurePage, at: number): Problem | undefined {
  const field = fields[at];
  const input = field && findFigure(name)?.inputs[field.key];
  if (field === undefined || input === undefined || isEmpty(field.typed)) return undefined;
  const parsed = typedInput(field.key, input, textOf(field.typed), units);
  if (parsed.kind === 'good') return undefined;
  const problem = firstOf(parsed.problems);
  return { ...problem, message: `${field.key}: ${problem.message}` };
}

/** The first field that must not stay empty and is; -1 where there is none. */
export function missingField({ name, fields }: FigurePage): number {
  const inputs = findFigure(name)?.inputs ?? {};
  return fields.findIndex(({ key, typed }) => {
    const input = inputs[key];
    return isEmpty(typed) && input?.optional !== true && input?.default === undefined;
  });
}

/** Works the figure out from what has been typed; empty fields are left to their presets. */
export function workOut({ name, fields, units }: FigurePage): Parsed<FigureRun> {
  const typed = fields.filter((field) => !isEmpty(field.typed));
  return runFigure(
    name,
    Object.fromEntries(typed.map((field) => [field.key, textOf(field.typed)])),
    units,
  );
}

/** A figure worked out, for a person: the result first, then what it means and rests on. */
export function resultLines(run: FigureRun, units: Units = 'us'): readonly string[] {
  const about = findFigure(run.figure)?.outputs ?? {};
  const outputs = Object.entries(run.outputs).map(([key, output]) => {
    const { value, unit } = inUsual(output, units);
    const name = about[key]?.about ?? key;
    return `${name.slice(0, 1).toUpperCase()}${name.slice(1)}: ${showReading(value, unit)}`;
  });
  return [
    ...outputs,
    ...(run.verdict === undefined ? [] : [run.verdict]),
    `From: ${givenWords(run)}`,
    `Source: ${run.source} (${run.mark})`,
  ];
}

/** One line for the record: what was asked and what came out. */
export function noteOf(run: FigureRun, units: Units): string {
  const { result: plain } = run.outputs;
  const result = plain && inUsual(plain, units);
  const about = findFigure(run.figure)?.outputs['result']?.about;
  const came =
    result === undefined ? '' : ` ${about ?? 'result'} ${showReading(result.value, result.unit)}`;
  return `${run.figure.replaceAll('-', ' ')}:${came} (${givenWords(run)}). ${run.verdict ?? ''}`.trim();
}

/** Every input that counted, presets too: what the answer rests on. */
function givenWords(run: FigureRun): string {
  return Object.entries(run.inputs)
    .map(([key, { value, unit }]) => `${key} ${shownValue(value, unit)}`)
    .join(', ');
}

function shownValue(value: FigureRun['inputs'][string]['value'], unit: string): string {
  if (typeof value === 'string') return value;
  const numbers = typeof value === 'number' ? [value] : value;
  const told = numbers.map((each) => showNumber(each, 4)).join(' ');
  return unit === '' || unit === '1' ? told : `${told} ${unit}`;
}
