import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

/** One import between two files below `src`, by their paths from there. */
export type Import = { readonly from: string; readonly to: string; readonly types: boolean };

const source = /\.tsx?$/;

export function sourceFiles(root: string): readonly string[] {
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => source.test(path))
    .toSorted();
}

/** All relative imports of the files below a folder, static and dynamic. */
export function importsBelow(root: string): readonly Import[] {
  return sourceFiles(root).flatMap((from) => {
    const text = readFileSync(join(root, from), 'utf8');
    const found = text.matchAll(/(import type|import|export)[^;'"]*?['"](\.[^'"]+\.tsx?)['"]/g);
    return [...found].map(([, word = '', path = '']) => ({
      from,
      to: relative(root, join(root, dirname(from), path)),
      types: word === 'import type',
    }));
  });
}

/** Floors inside the core, lowest first: a file imports from its own floor or a lower one. */
const coreFloors = [
  '',
  'picture',
  'trade',
  'tree',
  'feed',
  'session',
  'reason',
  'drawing',
  'account',
  'telling',
  'review',
  'jobs',
];

const topOf = (path: string): string => (path.includes('/') ? (path.split('/')[0] ?? '') : path);
const coreFloor = (path: string): number => {
  const [, second = '', third] = path.split('/');
  return third === undefined ? 0 : coreFloors.indexOf(second);
};

/** What each part may import besides itself. Only `run/` of the app knows the store and the telephone. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  core: [],
  store: ['core'],
  phone: ['core'],
  app: ['core'],
  screens: ['core', 'app'],
  commands: ['core', 'app', 'store', 'screens'],
  'main.ts': ['core', 'store', 'commands', 'app'],
};

/** The imports that go up or sideways, as lines that say so. */
export function breaches(imports: readonly Import[]): readonly string[] {
  return imports
    .filter(({ from, to }) => !mayImport(from, to))
    .map(({ from, to }) => `${from} must not import ${to}`);
}

function mayImport(from: string, to: string): boolean {
  const [here, there] = [topOf(from), topOf(to)];
  if (here === 'core' && there === 'core') return coreFloor(from) >= coreFloor(to);
  if (here === there) return true;
  if (from.startsWith('app/run/') && (there === 'store' || there === 'phone')) return true;
  return allowed[here]?.includes(there) === true;
}

/** Files that import one another in a circle, each circle once, as `a -> b -> a`. */
export function circles(imports: readonly Import[]): readonly string[] {
  const next = new Map<string, string[]>();
  for (const { from, to } of imports) next.set(from, [...(next.get(from) ?? []), to]);
  const found = new Set<string>();
  const safe = new Set<string>();
  const walk = (file: string, path: readonly string[]): void => {
    const at = path.indexOf(file);
    if (at >= 0) found.add([...path.slice(at), file].join(' -> '));
    if (at >= 0 || safe.has(file)) return;
    for (const to of next.get(file) ?? []) walk(to, [...path, file]);
    safe.add(file);
  };
  for (const file of next.keys()) walk(file, []);
  return [...found];
}
