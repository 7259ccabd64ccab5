import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runFigure } from '../src/core/trade/run-figure.ts';
import { Action } from '../src/core/session/action.ts';
import { eventKinds } from '../src/core/session/event.ts';
import { figures } from '../src/core/trade/catalog.ts';
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

test('README.md counts the figures that the catalog has', () => {
  expect(readme).toContain(`\n${figures.length} figures, each with`);
});

test('DEVELOPERS.md stays short enough to be read, and names each room of the source', () => {
  const map = developers.slice(0, developers.indexOf('Imports only go down'));
  const rooms = readdirSync('src', { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);

  expect(developers.split('\n').length).toBeLessThan(180);
  expect(rooms.length).toBeGreaterThan(20);
  expect(rooms.filter((name) => !map.includes(`${name}/`))).toEqual([]);
});

test('files that DEVELOPERS.md and trees/README.md name are there', () => {
  const pages = [developers, readFileSync('trees/README.md', 'utf8')].join('\n');
  const named = [...pages.matchAll(/`((?:src|core|app|store|screens|tests)\/[\w/.-]+\.tsx?)`/g)];
  const found = ['src', 'tests'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((path) => `${folder}/${path}`),
  );

  expect(named.length).toBeGreaterThan(8);
  expect(
    named
      .map(([, path = '']) => path.replace(/^(?!src|tests)/, 'src/'))
      .filter((path) => !found.includes(path)),
  ).toEqual([]);
});

test('DEVELOPERS.md says why each dependency is there', () => {
  const why = developers.slice(developers.indexOf('## Dependencies'));
  const { dependencies, devDependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
    readonly dependencies: object;
    readonly devDependencies: object;
  };

  expect(
    Object.keys({ ...dependencies, ...devDependencies }).filter((name) => !why.includes(name)),
  ).toEqual([]);
});

test('every command is told by --help in one row', () => {
  const rows = Object.entries(commands).map(([name, { help }]) => [name, help[0]?.split(' ')[0]]);

  expect(rows.filter(([name, word]) => name !== word)).toEqual([]);
});
