import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { breaches, circles, importsBelow, sourceFiles } from './helpers/floors.ts';

const planted = 'tests/fixtures/planted';

const linesOf = (file: string): number =>
  readFileSync(join('src', file), 'utf8').split('\n').length;
const holding = (word: RegExp): readonly string[] =>
  sourceFiles('src').filter((file) => word.test(readFileSync(join('src', file), 'utf8')));

test('imports only go down', () => {
  expect(breaches(importsBelow('src'))).toEqual([]);
});

test('a planted import upwards is seen', () => {
  expect(breaches(importsBelow(planted))).toEqual([
    'app/state.ts must not import store/files.ts',
    'core/trade/wire.ts must not import core/account/outline.ts',
  ]);
});

test('no files import one another in a circle', () => {
  expect(circles(importsBelow('src'))).toEqual([]);
});

test('a planted circle is seen', () => {
  expect(circles(importsBelow(planted))).toEqual([
    'core/account/outline.ts -> core/trade/wire.ts -> core/account/outline.ts',
  ]);
});

test('only main names the process', () => {
  expect(holding(/\bprocess\.(exit|env|argv|std|cwd|on|pid)\b/)).toEqual(['main.ts']);
});

test('the core asks nothing of the world', () => {
  const asks = holding(/\b(Date\.now|new Date|Math\.random|performance\.now)\b|['"]node:/);

  expect(asks.filter((file) => file.startsWith('core/'))).toEqual([]);
});

test('one file reads times, and no other asks the zone of the machine', () => {
  const asks = holding(
    /date-fns|parseISO|\bDate\.parse|\bnew Date\b|\.toLocale|\bIntl\.DateTime|\.get(Hours|Date|Day|Month|TimezoneOffset)\(/,
  );

  expect(asks).toEqual(['core/session/clock.ts', 'main.ts']);
});

test('the top level holds what was agreed, and nothing else', () => {
  const listed = execFileSync('git', ['ls-files'], { encoding: 'utf8' }).split('\n');
  const top = new Set(listed.map((path) => path.split('/')[0] ?? ''));

  const agreed =
    'CHANGELOG.md DEVELOPERS.md LICENSE README.md package-lock.json package.json sessions src tests trees tsconfig.json';

  expect([...top].filter((name) => /^[^.]/.test(name)).toSorted()).toEqual(agreed.split(' '));
});

test('no test goes by a clock: benches, and the watch of the long attacks, read one', () => {
  const reads = /\b(performance\.now|cpuUsage|hrtime)\b/;
  const own = sourceFiles('tests').filter((file) => !/^bench\/|node_modules/.test(file));
  const clocked = own.filter((file) => reads.test(readFileSync(join('tests', file), 'utf8')));

  expect(clocked).toEqual(['architecture.test.ts', 'torture/all.ts', 'torture/watch.ts']);
});

test('no file is longer than 250 lines', () => {
  expect(sourceFiles('src').filter((file) => linesOf(file) > 251)).toEqual([]);
});

test('there are no barrel files', () => {
  expect(sourceFiles('src').filter((file) => /(^|\/)index\.tsx?$/.test(file))).toEqual([]);
});

test('no folder holds more than 26 files', () => {
  const folders = Map.groupBy(sourceFiles('src'), (file) => dirname(file));

  expect([...folders].filter(([, files]) => files.length > 26).map(([name]) => name)).toEqual([]);
});
