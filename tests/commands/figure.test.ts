import { expect, test } from 'vitest';
import { figure } from '../../src/commands/figure.ts';
import { figures } from '../../src/core/trade/catalog.ts';
import { runCommand } from '../helpers/commands.ts';

test('figure alone lists every figure under its family', async () => {
  const { out, code } = await runCommand(figure, []);

  expect(code).toBe(0);
  expect(out.match(/^ {2}\S+/gm)).toHaveLength(figures.length);
  // What each is about begins in one column.
  expect(new Set([...out.matchAll(/^ {2}\S+ +/gm)].map(([start]) => start.length)).size).toBe(1);
});

test('figure with a name explains inputs, formula, range and source', async () => {
  const { out } = await runCommand(figure, ['joint-heat']);

  expect(out).toMatch(/Inputs:[\s\S]*current \[A\][\s\S]*Formula:[\s\S]*Range:[\s\S]*Source:/);
});

// P = V x I: 150 A across 0.45 V is 67.5 W (the worked example of the trade figures).
test('figure with inputs prints one JSON document with units, verdict, source and mark', async () => {
  const { out, code } = await runCommand(figure, [
    'joint-heat',
    'current=150A',
    'drop=0.45V',
    '--json',
  ]);

  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({
    figure: 'joint-heat',
    inputs: { current: { value: 150, unit: 'A' } },
    outputs: { result: { value: 67.5, unit: 'W' } },
    mark: 'computed',
  });
});

test.each<[title: string, args: readonly string[], line: RegExp]>([
  ['an unknown figure', ['lamda'], /Did you mean lambda/],
  ['an unknown key', ['joint-heat', 'currant=5'], /no input "currant".*current/],
  ['a key given twice', ['joint-heat', 'current=5', 'current=6'], /"current" is given twice/],
  ['a value out of range', ['dwell', 'cylinders=40'], /40 is outside 1 to 12/],
  ['a word without a value', ['joint-heat', 'current'], /is no key=value/],
  ['an empty value', ['joint-heat', 'current='], /no reading/],
])('%s is one clear line and exit 2', async (_, args, line) => {
  const { code, err, out } = await runCommand(figure, args);

  expect([code, out]).toEqual([2, '']);
  expect(err.split('\n')[0]).toMatch(line);
});
