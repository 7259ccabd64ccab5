import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runFigure } from '../src/core/trade/run-figure.ts';
import { Action } from '../src/core/session/action.ts';
import { eventKinds } from '../src/core/session/event.ts';
import { commands } from '../src/commands/table.ts';

const readme = readFileSync('README.md', 'utf8');
const developers = readFileSync('DEVELOPERS.md', 'utf8');

test('DEVELOPERS.md names every kind of event', () => {
  expect(eventKinds.filter((kind) => !developers.includes(kind))).toEqual([]);
});

test('DEVELOPERS.md names every action', () => {
  const actions = Action.options.map((option) => option.shape.do.value);

  expect(actions.filter((action) => !new RegExp(`\\b${action}\\b`).test(developers))).toEqual([]);
});

test('README.md names every command', () => {
  expect(Object.keys(commands).filter((name) => !readme.includes(`droplight ${name}`))).toEqual([]);
});

test('the actions shown in README.md are actions', () => {
  const lines = readme.match(/^\{"do":.*\}$/gm) ?? [];

  expect(lines.length).toBeGreaterThan(3);
  expect(lines.filter((line) => !Action.safeParse(JSON.parse(line)).success)).toEqual([]);
});

test('the figures shown in README.md can be worked out as they stand', () => {
  const shown = [...readme.matchAll(/-- figure (\S+) (.*)$/gm)];
  const bad = shown.filter(([, name = '', rest = '']) => {
    const pairs = rest.split(' ').filter((word) => word.includes('='));
    const typed = Object.fromEntries(pairs.map((pair) => pair.split('=') as [string, string]));
    return runFigure(name, typed).kind === 'bad';
  });

  expect(shown.length).toBeGreaterThan(2);
  expect(bad.map(([line]) => line)).toEqual([]);
});
