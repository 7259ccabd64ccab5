import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Block } from '../../../../src/core/account/block.ts';
import { withGlossary } from '../../../../src/core/account/blocks/glossary.ts';
import { showMarkdown } from '../../../../src/core/account/forms/markdown.ts';
import { anchorsOf, linksOf, parseGfm as parse, typesOf, type Node } from '../../../helpers/gfm.ts';

const urlsOf = (node: Node): readonly string[] => linksOf(node).map(({ url }) => url);

const all = (text: string): readonly Block[] => [
  { kind: 'title', text: `Van ${text}` },
  { kind: 'paragraph', text },
  { kind: 'paragraph', text: `10:42 ${text}` },
  { kind: 'list', items: [text, `Note: ${text}`], numbered: false },
  { kind: 'table', head: ['Check', 'Result'], rows: [[text, `x ${text}`]] },
  { kind: 'warning', name: text, text },
];

/** What GFM makes of a bare web or mail address: its text is its target, so it tells no lie. */
const plainTypes = new Set([
  'root',
  'heading',
  'paragraph',
  'text',
  'strong',
  'list',
  'listItem',
  'table',
  'tableRow',
  'tableCell',
  'blockquote',
  'link',
]);

const hostile = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  'www.<img src=x onerror=alert(1)>',
  '](javascript:alert(1))',
  '![x](http://example.com/a.png)',
  '| a | b |\n| --- | --- |',
  '```\ncode\n```',
  '# not a heading',
  '- not a list',
  '1. not a list',
  '> not a quote',
  '---',
  '***',
  '[^1]: note',
  '&lt;b&gt; &#60;b&#62;',
  'a\u0000b\u001b[31mc\u202ed',
  '[x]: http://example.com',
  '~~gone~~ **bold** _slanted_ `code`',
  '<!-- comment',
  '+ plus',
  '= equals',
  '    indented code',
];

test.each(hostile)('%j stays text', (text) => {
  const types = new Set(typesOf(parse(showMarkdown(all(text)))));

  expect([...types].filter((type) => !plainTypes.has(type))).toEqual([]);
});

test('any text at all stays text, and no table gains a cell', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ unit: 'binary', maxLength: 60 }),
        fc
          .array(
            fc.constantFrom(
              ...hostile,
              '|',
              '\\',
              '`',
              '<',
              '(',
              ')',
              '[',
              ']',
              ' ',
              '\n',
              'a',
              '1',
              '.',
              '-',
            ),
          )
          .map((parts) => parts.join('')),
      ),
      (text) => {
        const tree = parse(showMarkdown(all(text)));
        const types = typesOf(tree);

        expect(types.filter((type) => !plainTypes.has(type))).toEqual([]);
        expect(urlsOf(tree).filter((url) => !/^(https?:|mailto:)/.test(url))).toEqual([]);
        expect(types.filter((type) => type === 'tableCell')).toHaveLength(4);
        expect(types.filter((type) => type === 'listItem')).toHaveLength(2);
      },
    ),
    { seed: 20_260_411, numRuns: 3000 },
  );
});

test('words of the glossary inside hostile text become links to it, and nothing else', () => {
  const around = fc.constantFrom(
    '!',
    '](',
    '[',
    '`',
    '\\',
    '<',
    '*',
    ' ',
    '',
    'points',
    '(',
    ':',
    '~',
    '\n',
  );
  fc.assert(
    fc.property(fc.array(around), fc.array(around), (before, after) => {
      const text = `${before.join('')}dwell${after.join('')}`;
      const tree = parse(showMarkdown(withGlossary([{ kind: 'paragraph', text: `x ${text}` }])));

      const types = typesOf(tree).filter((type) => !plainTypes.has(type));
      expect(types).toEqual([]);
      const anchors = anchorsOf(tree);
      expect(urlsOf(tree).filter((url) => !anchors.includes(url))).toEqual([]);
    }),
    { seed: 20_260_411, numRuns: 600 },
  );
});
