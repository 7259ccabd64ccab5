import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { accountOf } from '../../../src/commands/write.ts';
import { freshOf, withMarkers } from '../../../src/core/account/forms/sections.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { photosFor } from '../../../src/commands/account-photos.ts';
import { readSession } from '../../../src/store/recover.ts';
import { anchorsOf, linksOf, parseGfm, rawOf, tablesOf, textOf } from '../../helpers/gfm.ts';

const folder = 'sessions/examples';
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.jsonl'))
  .map((name) => name.replace('.jsonl', ''));

const reading = (name: string) => {
  const read = readSession(readFileSync(join(folder, `${name}.jsonl`)), name);
  if (read.kind === 'bad') throw new Error(`${name} cannot be read`);
  return read.value;
};

const beside = (name: string) => ({ pictures: `${name}.pictures` });
const kept = (...path: string[]): string => readFileSync(join(folder, ...path), 'utf8');

test.each(names)('the account of %s is the one that lies beside it, byte for byte', (name) => {
  const { header, events } = reading(name);
  const path = join(folder, `${name}.jsonl`);
  const { told } = photosFor(nodeFiles, path, fold(header, events), undefined);
  const { markdown, pictures } = accountOf(reading(name), { ...beside(name), photos: told });

  expect(withMarkers(freshOf('', markdown))).toBe(kept(`${name}.md`));
  for (const [file, text] of Object.entries(pictures))
    expect(text).toBe(kept(`${name}.pictures`, file));
});

test.each(names)('the example %s is whole', (name) => {
  expect(reading(name).damage).toEqual([]);
});

test('one example was a guess first, one was handed on unfixed', () => {
  const closed = names.map((name) => kept(`${name}.md`));

  expect(names.length).toBeGreaterThanOrEqual(4);
  expect(closed.some((text) => text.includes('on a guess'))).toBe(true);
  expect(closed.some((text) => text.includes('handing the vehicle on'))).toBe(true);
});

test.each(names)('%s as markdown: no raw HTML, whole tables, links that lead somewhere', (name) => {
  const tree = parseGfm(kept(`${name}.md`));

  // Our own markers are comments, which nothing shows.
  expect(rawOf(tree).filter(({ value = '' }) => !/^<!-- droplight .* -->$/.test(value))).toEqual(
    [],
  );
  for (const table of tablesOf(tree)) expect(new Set(table).size).toBe(1);
  const anchors = anchorsOf(tree);
  const images = linksOf(tree).filter(({ type }) => type === 'image');
  const links = linksOf(tree).filter(({ type }) => type !== 'image');
  expect(links.filter(({ url }) => !anchors.includes(url))).toEqual([]);
  expect(images.filter(({ url }) => !existsSync(join(folder, url)))).toEqual([]);
  expect(images.filter(({ alt }) => alt.length < 20)).toEqual([]);
  expect(images.map(({ url }) => basename(url)).toSorted()).toEqual(
    readdirSync(join(folder, `${name}.pictures`)).toSorted(),
  );
});

test.each(names)(
  '%s reads as a person wrote it: no ids, no "1 checks", nothing said twice',
  (name) => {
    const read = reading(name);
    const tree = Object.values(read.header.trees)[0];
    const paragraphs = parseGfm(kept(`${name}.md`))
      .children?.filter(({ type }) => type === 'paragraph')
      .map(textOf);
    const prose = (paragraphs ?? []).filter((text) => text !== '').join(' ');
    const sentences = prose.split(/(?<=[.?!]) /);

    const ids = [...Object.keys(tree?.checks ?? {}), ...Object.keys(tree?.causes ?? {})];
    expect(
      ids.filter((id) => id.includes('-') && new RegExp(`(^|\\s)${id}[\\s.,:;]`).test(prose)),
    ).toEqual([]);
    expect(prose).not.toMatch(/\b1 (checks|minutes|events|steps|lines)\b|undefined|NaN|\.\.|  /);
    expect(sentences.filter((sentence, index) => sentence === sentences[index - 1])).toEqual([]);
  },
);
