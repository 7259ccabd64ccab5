import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sourceFiles } from './helpers/floors.ts';

const page = readFileSync('src/PROBLEMS.md', 'utf8');
const rows = [...page.matchAll(/^\| ([a-z][a-z-]*) +\| (.+?) +\| (\S.*?) +\|$/gm)]
  .map(([, code = '', meaning = '', where = '']) => ({ code, meaning, where: where.split(', ') }))
  .filter(({ code }) => code !== 'code');
const texts = new Map(
  sourceFiles('src').map((file) => [file, readFileSync(`src/${file}`, 'utf8')] as const),
);

const given = /\bcode:[^,'{}`]*'([a-z-]+)'(?:\s*:\s*'([a-z-]+)')?/g;
const handed = /\b(?:refuse|refused|missing|StoreError)\(\s*'([a-z-]+)'/g;
const named = /\b(?:unknown|unknownAmong|unknownInShop|refuseUnknown)\(\s*'([a-z-]+)'/g;

/** Codes that a text gives to problems; a name that leads nowhere gets its code from the kind of name. */
function codesIn(file: string, text: string): readonly string[] {
  const literal = [...text.matchAll(given), ...text.matchAll(handed)].flatMap(([, ...codes]) =>
    codes.filter((code) => code !== undefined),
  );
  const nameless = /^core\/(?:tree|session)\//.test(file) ? [...text.matchAll(named)] : [];
  return [...literal, ...nameless.map(([, what]) => `unknown-${what}`)];
}

/** Codes put together where they are used: each begins like this, and ends with a word of its file. */
const made = ['unknown', 'band'];

const isGiven = (code: string, file: string): boolean => {
  const text = texts.get(file) ?? '';
  const [first = '', ...rest] = code.split('-');
  return (
    codesIn(file, text).includes(code) ||
    (made.includes(first) && text.includes(`'${rest.join('-')}'`))
  );
};

test('PROBLEMS.md has every code of the source, each once', () => {
  const codes = new Set([...texts].flatMap(([file, text]) => codesIn(file, text)));
  const told = rows.map(({ code }) => code);

  expect(codes.size).toBeGreaterThan(100);
  expect([...codes].filter((code) => !told.includes(code))).toEqual([]);
  expect(told.filter((code, at) => told.indexOf(code) !== at)).toEqual([]);
});

test('the files that PROBLEMS.md names give these codes, and no others do', () => {
  const wrong = rows.flatMap(({ code, where }) => [
    ...where.filter((file) => !isGiven(code, file)).map((file) => `${code} not in ${file}`),
    ...[...texts]
      .filter(([file, text]) => codesIn(file, text).includes(code) && !where.includes(file))
      .map(([file]) => `${code} also in ${file}`),
  ]);

  expect(wrong).toEqual([]);
});

test('codes that are put together begin in no other way than the page knows', () => {
  const starts = [...texts].flatMap(([, text]) =>
    [...text.matchAll(/\bcode: `([a-z]+)-\$\{/g)].map(([, start]) => start),
  );

  expect(new Set(starts)).toEqual(new Set(made));
});

test('PROBLEMS.md names the codes of the system that have a sentence of ours', () => {
  const ours = [...(texts.get('store/files.ts') ?? '').matchAll(/^ {2}(E[A-Z]+): \[/gm)];

  expect(ours.length).toBeGreaterThan(8);
  expect(ours.map(([, code = '']) => code).filter((code) => !page.includes(code))).toEqual([]);
});
