import fc from 'fast-check';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import { expect, test } from 'vitest';
import type { Block } from '../../../src/core/account/block.ts';
import { showMarkdown } from '../../../src/core/account/markdown.ts';

type Node = {
  readonly url?: string;
  readonly type: string;
  readonly children?: readonly Node[];
  readonly value?: string;
};

const parse = (markdown: string): Node =>
  fromMarkdown(markdown, { extensions: [gfm()], mdastExtensions: [gfmFromMarkdown()] });

const typesOf = (node: Node): readonly string[] => [
  node.type,
  ...(node.children ?? []).flatMap(typesOf),
];

const linksOf = (node: Node): readonly string[] => [
  ...(node.url === undefined ? [] : [node.url]),
  ...(node.children ?? []).flatMap(linksOf),
];

const all = (text: string): readonly Block[] => [
  { kind: 'title', text: `Van ${text}` },
  { kind: 'paragraph', text },
  { kind: 'paragraph', text: `10:42 ${text}` },
  { kind: 'named', name: 'Cause', text },
  { kind: 'list', items: [text, `Note: ${text}`], numbered: false },
  { kind: 'table', head: ['Check', 'Result'], rows: [[text, `x ${text}`]] },
  { kind: 'warning', text },
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
        expect(linksOf(tree).filter((url) => !/^(https?:|mailto:)/.test(url))).toEqual([]);
        expect(types.filter((type) => type === 'tableCell')).toHaveLength(4);
        expect(types.filter((type) => type === 'listItem')).toHaveLength(2);
      },
    ),
    { seed: 20_260_411, numRuns: 3000 },
  );
});
