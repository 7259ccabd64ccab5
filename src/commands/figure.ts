import { bad, good } from '../core/problem.ts';
import { figures, findFigure } from '../core/trade/catalog.ts';
import type { Figure } from '../core/trade/figure.ts';
import type { FigureInput } from '../core/trade/figure-input.ts';
import { resultLines } from '../app/pages/figure-page.ts';
import { runFigure } from '../core/trade/run-figure.ts';
import { showNumber } from '../core/trade/units/units.ts';
import { cleanLine } from '../core/text.ts';
import { done, fail, printJson, type Ended, type Io } from './io.ts';
import { readOptions, wrongUse } from './options.ts';
import { uses } from './uses.ts';

/** `droplight figure [NAME [key=value...]]`: lists, explains or works out a trade figure. */
export async function figure(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.figure.options);
  if (given.kind === 'bad') return given;
  const [name, ...pairs] = given.value.words;
  const json = given.value.flag('json');
  if (name === undefined) return list(io, json);
  const found = findFigure(name);
  if (found !== undefined && pairs.length === 0) return explain(io, found, json);
  const bare = pairs.find((pair) => !pair.includes('='));
  if (bare !== undefined)
    return wrongUse(
      `"${bare}" is no key=value.`,
      `droplight figure ${name} key=value... ("droplight figure ${name}" tells the keys)`,
    );
  const keys = pairs.map((pair) => keyAndValue(pair)[0]);
  const twice = keys.find((key, at) => keys.indexOf(key) !== at);
  if (twice !== undefined)
    return bad({
      code: 'wrong-use',
      message: `"${twice}" is given twice.`,
      mend: 'Give each key once.',
    });
  const run = runFigure(name, Object.fromEntries(pairs.map(keyAndValue)));
  if (run.kind === 'bad') {
    if (json) return run;
    for (const problem of run.problems) fail(io, problem);
    return good(2);
  }
  if (json) printJson(io, run.value);
  else io.out(`${resultLines(run.value).map(cleanLine).join('\n')}\n`);
  return done;
}

function keyAndValue(pair: string): readonly [key: string, value: string] {
  const at = pair.indexOf('=');
  return [pair.slice(0, at), pair.slice(at + 1)];
}

const widest = Math.max(...figures.map(({ name }) => name.length));

function list(io: Io, json: boolean): Ended {
  if (json) {
    printJson(
      io,
      figures.map(({ name, family, about }) => ({ name, family, about })),
    );
    return done;
  }
  for (const family of new Set(figures.map((one) => one.family))) {
    io.out(`${family}\n`);
    for (const { name, about } of figures.filter((one) => one.family === family))
      io.out(`  ${name.padEnd(widest)} ${cleanLine(about)}\n`);
  }
  return done;
}

function explain(io: Io, found: Figure, json: boolean): Ended {
  const { run: _, ...about } = found;
  if (json) printJson(io, about);
  else io.out(`${aboutLines(found).join('\n')}\n`);
  return done;
}

/** A figure explained: what it asks for, what it gives, on what it rests. */
function aboutLines(found: Figure): readonly string[] {
  return [
    `${found.name}: ${found.about}`,
    'Inputs:',
    ...Object.entries(found.inputs).map(([key, input]) => `  ${inputLine(key, input)}`),
    'Outputs:',
    ...Object.entries(found.outputs).map(
      ([key, { unit, about }]) => `  ${key}${unitWords(unit)}: ${about}`,
    ),
    `Formula: ${found.formula}`,
    `Range: ${found.range}`,
    `Source: ${found.source} (${found.mark})`,
  ];
}

function inputLine(key: string, input: FigureInput): string {
  const values = input.values === undefined ? '' : ` one of ${input.values.join(', ')};`;
  const preset =
    input.default !== undefined
      ? ` (${presetWords(input.default)} if left out)`
      : input.optional === true
        ? ' (may be left out)'
        : '';
  return `${key}${unitWords(input.unit)}:${values} ${input.about}${preset}`;
}

const presetWords = (preset: string | number): string =>
  typeof preset === 'number' ? showNumber(preset, 3) : preset;

const unitWords = (unit: string): string => (unit === '' || unit === '1' ? '' : ` [${unit}]`);
