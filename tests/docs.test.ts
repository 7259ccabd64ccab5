import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runFigure } from '../src/core/trade/run-figure.ts';
import { Action } from '../src/core/session/action.ts';
import { eventKinds } from '../src/core/session/event.ts';
import { figures } from '../src/core/trade/catalog.ts';
import { commands } from '../src/commands/table.ts';
import type { Command, Mode } from '../src/app/keys/command.ts';
import { steps } from '../src/app/keys/walk.ts';
import { settingLines } from '../src/app/pages/settings.ts';
import { bindings } from '../src/app/pages/table.ts';

/** All that is told to users: the README and its pages. */
const readme = ['README.md', ...readdirSync('src/guide').map((page) => `src/guide/${page}`)]
  .map((page) => readFileSync(page, 'utf8'))
  .join('\n');
const developers = readFileSync('DEVELOPERS.md', 'utf8');

test('DEVELOPERS.md names every kind of event', () => {
  expect(eventKinds.filter((kind) => !developers.includes(kind))).toEqual([]);
});

test('src/guide/actions.md names every action', () => {
  const page = readFileSync('src/guide/actions.md', 'utf8');
  const actions = Action.options.map((option) => option.shape.do.value);

  expect(actions.filter((action) => !new RegExp(`\\b${action}\\b`).test(page))).toEqual([]);
});

test('the pages name every command', () => {
  expect(Object.keys(commands).filter((name) => !readme.includes(`droplight ${name}`))).toEqual([]);
});

test('the actions shown in the pages are actions', () => {
  const lines = readme.match(/^\{"do":.*\}$/gm) ?? [];

  expect(lines.length).toBeGreaterThan(3);
  expect(lines.filter((line) => !Action.safeParse(JSON.parse(line)).success)).toEqual([]);
});

test('the figures shown in the pages can be worked out as they stand', () => {
  const shown = [...readme.matchAll(/-- figure (\S+) (.*)$/gm)];
  const bad = shown.filter(([, name = '', rest = '']) => {
    const pairs = rest.split(' ').filter((word) => word.includes('='));
    const typed = Object.fromEntries(pairs.map((pair) => pair.split('=') as [string, string]));
    return runFigure(name, typed).kind === 'bad';
  });

  expect(shown.length).toBeGreaterThan(2);
  expect(bad.map(([line]) => line)).toEqual([]);
});

test('the pages count the figures that the catalog has', () => {
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

/** The rows of the table of keys: the keys it names, and what it says of them. */
const keyRows = [
  ...readme
    .slice(readme.indexOf('| key | what it does |'), readme.indexOf('A reading is judged under'))
    .matchAll(/^\| (.+?) \| (.+) \|$/gm),
].map(([, keys = '', about = '']) => ({
  keys: [...keys.matchAll(/`([^`]+)`/g)].map(([, key]) => key),
  about,
}));

const onWalk = new Set<Mode>([...steps, 'closed']);
const walkKeys = bindings
  .filter(({ modes }) => modes !== 'all' && modes.some((mode) => onWalk.has(mode)))
  .flatMap(({ keys, command }) =>
    keys.filter((key) => /^[a-z?]$/.test(key)).map((key) => ({ key, command })),
  );

/** What the pages must say of the key that asks for it. */
const saidOf: Readonly<Partial<Record<Command, RegExp>>> = {
  confirm: /it is so/,
  make: /check on screen is made/,
  hint: /a hint/,
  unsure: /unsure/,
  skip: /can't get to it/,
  'not-this': /was not that/,
  'go-past': /go past a safeguard/,
  full: /the step in full/,
  note: /\bnote\b/,
  'take-back': /take back/,
  history: /history/,
  others: /another check/,
  ladder: /feed path/,
  why: /why this step/,
  quicker: /quicker/,
  'switch-lead': /lead by/,
  suspects: /condemn and repair/,
  mended: /what was done/,
  'part-off': /part off/,
  baseline: /the baseline: what is taken down/,
  apart: /the board: what is off/,
  'to-do': /still to do/,
  expect: /what you expect/,
  contradiction: /finding that got worse/,
  conditions: /altitude and .*temperature/,
  close: /close the session/,
  account: /write the account/,
  figures: /trade figures/,
  keys: /the keys of the screen/,
  'go-back': /put it down/,
};

test('the pages have every key of the walk, and say what it does', () => {
  const untold = walkKeys.filter(
    ({ key, command }) =>
      !keyRows.some(({ keys, about }) => keys.includes(key) && saidOf[command]?.test(about)),
  );

  expect(keyRows.length).toBeGreaterThan(15);
  expect(untold).toEqual([]);
});

test('the pages have no key for the walk that does nothing there', () => {
  const bound = new Set(walkKeys.map(({ key }) => key));
  const told = keyRows.flatMap(({ keys }) => keys.filter((key) => /^[a-z?]$/.test(key ?? '')));

  expect(told.filter((key) => !bound.has(key ?? ''))).toEqual([]);
});

test('the pages tell every setting by the name it has on the screen', () => {
  const table = readFileSync('src/guide/settings.md', 'utf8');
  const told = [...table.matchAll(/^\| ([^|]+) \| [^|]+ \|$/gm)].map(([, name]) => name);

  expect(told.slice(2)).toEqual(settingLines.map(({ label }) => label));
});
