import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import type { Program } from '../../src/app/program.ts';
import { figures } from '../../src/core/trade/catalog.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { makeProgram, press } from '../helpers/program.ts';

const rowsOf = (program: Program): readonly string[] =>
  renderToString(
    <ScreenFrame state={program.state()} columns={60} rows={20} contents={contents} />,
    { columns: 60 },
  ).split('\n');

/** Opens a figure and goes to one of its inputs. */
function at(name: string, input: number): Program {
  const { program } = makeProgram();
  press(program, `f${'<down>'.repeat(figures.findIndex((one) => one.name === name))}<enter>`);
  press(program, '<down>'.repeat(input));
  return program;
}

const chosen = figures.flatMap(({ name, inputs }) =>
  Object.values(inputs).flatMap(({ values }, index) =>
    values === undefined ? [] : [[name, index, values] as const],
  ),
);

test.each(chosen)('%s, input %d: every choice is read on a small screen', (name, index, values) => {
  const rows = rowsOf(at(name, index));
  const text = rows.join(' ').replaceAll(/\s+/g, ' ');

  expect(rows.length).toBeLessThanOrEqual(20);
  expect(text).toContain(`One of: ${values.join(', ')}.`);
});

test('typing narrows the choices to those that have it', () => {
  const program = at('lamp-current', 0);

  press(program, '115');

  expect(rowsOf(program).join('\n')).toMatch(/One of: 1154-major, 1154-minor[^.]*\./);
});

/** All that is read of a result by going down to its end. */
function readThrough(program: Program): string {
  const { screen } = program.state();
  if (screen.kind !== 'figure' || screen.page.result.length === 0) return 'not worked out';
  const read = [rowsOf(program).join(' ')];
  for (let guard = 0; guard < 15; guard += 1) {
    press(program, '<down>');
    read.push(rowsOf(program).join(' '));
  }
  return read.join(' ');
}

const presets: Readonly<Record<string, string>> = { limit: 'hydrogen-burns' };

test.each(figures.map(({ name }) => name))(
  '%s worked out: nothing runs over on a small screen',
  (name) => {
    const inputs = figures.find((one) => one.name === name)?.inputs ?? {};
    const program = at(name, 0);
    for (const input of Object.values(inputs)) press(program, `${sample(name, input)}<enter>`);
    const rows = rowsOf(program);

    expect(rows.length).toBe(20);
    expect(readThrough(program)).toMatch(/Source:|not worked out/);
  },
);

/** Something that an input takes: nothing where it may stay empty. */
function sample(
  name: string,
  {
    default: preset,
    optional,
    range,
    values,
    quantity,
  }: (typeof figures)[number]['inputs'][string],
): string {
  if (presets[name] !== undefined) return presets[name];
  if (preset !== undefined || optional === true) return '';
  if (values !== undefined) return values[0] ?? '';
  if (quantity === 'text') return '275/60R15';
  return range === undefined ? '1' : String(Math.round((range.low + range.high) / 2));
}
