import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { expect, test } from 'vitest';
import { anchorsOf, linksOf, parseGfm } from './helpers/gfm.ts';

const pages = [
  'README.md',
  'CHANGELOG.md',
  'DEVELOPERS.md',
  'trees/README.md',
  ...readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .map((name) => `src/${name}`),
];

/** Links of a page that lead nowhere: no file there, or no heading of that name in it. */
function dead(page: string, text = readFileSync(page, 'utf8')): readonly string[] {
  return linksOf(parseGfm(text))
    .map(({ url }) => url)
    .filter((url) => !/^https?:/.test(url))
    .filter((url) => {
      const [path = '', anchor] = url.split('#');
      const file = path === '' ? page : join(dirname(page), decodeURI(path));
      if (!existsSync(file)) return true;
      const there = anchor === undefined || anchorsOf(parseGfm(readFileSync(file, 'utf8')));
      return there !== true && !there.includes(`#${anchor}`);
    })
    .map((url) => `${page}: ${url}`);
}

test('every link of the pages leads to a file, and to a heading in it', () => {
  expect(pages.length).toBeGreaterThan(12);
  expect(pages.flatMap((page) => dead(page))).toEqual([]);
});

test('a link that leads nowhere is seen', () => {
  expect(dead('README.md', '[a](nowhere.md) [b](trees/README.md#no-such) [c](#none)')).toEqual([
    'README.md: nowhere.md',
    'README.md: trees/README.md#no-such',
    'README.md: #none',
  ]);
});

test('from README.md every page is found', () => {
  const linked = pages
    .filter((page) => page === 'README.md' || page.startsWith('src/guide/'))
    .flatMap((page) =>
      linksOf(parseGfm(readFileSync(page, 'utf8'))).map(({ url }) =>
        normalize(join(dirname(page), url.split('#')[0] ?? '')),
      ),
    );

  expect(
    pages.filter((page) => !linked.includes(page) && /^(src\/guide|trees)/.test(page)),
  ).toEqual([]);
});
