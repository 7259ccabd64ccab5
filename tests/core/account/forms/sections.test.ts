import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  freshOf,
  hasMarkers,
  markOf,
  mergeEdited,
  readEdited,
  sectionsOf,
  withMarkers,
} from '../../../../src/core/account/forms/sections.ts';

const markdown = '# Van\n\nIt came in.\n\n## How it went\n\nWe looked.\n\n## Readings\n\n| a |\n';
const fresh = freshOf('', markdown);
const file = withMarkers(fresh);
const later = freshOf('', markdown.replace('We looked.', 'We looked twice.'));

/** The file as it is after somebody changed it, written anew. */
function rewritten(text: string, anew = fresh) {
  const edited = readEdited(text);
  if (edited.kind === 'damaged') throw new Error(edited.what);
  return mergeEdited(anew, edited);
}

// Fowler, Noll and Vo publish these for FNV-1a of 32 bits: "" and "a"; from memory.
test('the mark is FNV-1a', () => {
  expect(markOf('')).toBe('811c9dc5');
  expect(markOf('a')).toBe('e40c292c');
});

test('an account is parted at its headings of the second level', () => {
  expect(sectionsOf(markdown).map(({ name }) => name)).toEqual([
    'opening',
    'how-it-went',
    'readings',
  ]);
  expect(hasMarkers(file)).toBe(true);
  expect(hasMarkers(markdown)).toBe(false);
});

test('what nobody edited is written anew, the same bytes', () => {
  expect(rewritten(file)).toEqual({ text: file, kept: [], stale: [], dropped: [] });
  expect(rewritten(file, later).text).toContain('We looked twice.');
});

test('what the writer edited is kept, again and again, and told where the record tells more by now', () => {
  const edited = file.replace('We looked.', 'We looked, and saw.\n\nMore of it.');
  const once = rewritten(edited);
  const again = rewritten(once.text, later);

  expect(once).toMatchObject({ kept: ['how-it-went'], stale: [] });
  expect(again).toMatchObject({ kept: ['how-it-went'], stale: ['how-it-went'] });
  expect(again.text).toContain('More of it.');
  expect(again.text).not.toContain('twice');
});

test('a section that the writer took out stays out', () => {
  const without = file.replace(
    /## How it went\n\nWe looked\.\n\n<!-- droplight how-it-went \w+ -->\n\n/,
    '',
  );
  const merged = rewritten(without);

  expect(merged.dropped).toEqual(['how-it-went']);
  expect(merged.text).not.toContain('How it went');
  expect(rewritten(merged.text).dropped).toEqual(['how-it-went']);
});

test('an edited section that is not told any more stays', () => {
  const edited = file.replace('| a |', '| mine |');
  const merged = rewritten(edited, freshOf('', '# Van\n\nIt came in.\n'));

  expect(merged).toMatchObject({ kept: ['readings'], stale: ['readings'] });
  expect(merged.text).toContain('| mine |');
});

test('other line ends are no edit', () => {
  expect(rewritten(file.replaceAll('\n', '\r\n')).kept).toEqual([]);
});

test('words before the title belong to the opening', () => {
  expect(rewritten(`My own words.\n\n${file}`).kept).toEqual(['opening']);
});

test('front matter stands first, and is kept as edited', () => {
  const head = '---\ntitle: "Van"\n---\n\n';
  const text = withMarkers(freshOf(head, `${head}${markdown}`));

  expect(text.startsWith(head)).toBe(true);
  expect(rewritten(text, freshOf(head, `${head}${markdown}`)).kept).toEqual([]);
  const edited = text.replace('"Van"', '"My van"');
  const merged = rewritten(edited, freshOf(head, `${head}${markdown}`));
  expect(merged.kept).toEqual(['front matter']);
  expect(merged.text).toContain('"My van"');
});

test.each([
  ['a marker that was changed', file.replace('droplight how', 'droplight  how'), 'a marker'],
  [
    'text behind the last marker',
    file.replace('<!-- droplight wrote', 'My own words.\n\n<!-- droplight wrote'),
    'behind its last marker',
  ],
  [
    'a marker that stands there twice',
    file.replace('droplight readings', 'droplight opening'),
    'twice',
  ],
  ['text behind the last line', `${file}\nmine\n`, 'last line'],
])('%s is refused with its line', (_, text, what) => {
  expect(readEdited(text)).toMatchObject({ kind: 'damaged', what: expect.stringContaining(what) });
});

test('whatever a writer puts into a section comes back as it was put', () => {
  const line = fc.string().map((text) => text.replace(/[\r\n]/g, ' ').trim());
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 5 }), (lines) => {
      const own = lines.join('\n').trim();
      fc.pre(own !== '' && !/<!-- *droplight/.test(own) && !/^## /m.test(own));
      const edited = file.replace('We looked.', () => own);

      expect(rewritten(edited, later).text).toContain(own);
    }),
    { seed: 20_261_127, numRuns: 300 },
  );
});
