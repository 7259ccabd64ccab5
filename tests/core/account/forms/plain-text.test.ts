import { expect, test } from 'vitest';
import type { Block } from '../../../../src/core/account/block.ts';
import { showText } from '../../../../src/core/account/forms/plain-text.ts';

const long = 'word '.repeat(40).trim();
const blocks: readonly Block[] = [
  { kind: 'title', text: 'Van: no light' },
  { kind: 'warning', name: 'not yet', text: long },
  { kind: 'heading', text: 'How it went', level: 2 },
  { kind: 'paragraph', text: ['See ', { text: 'the points', to: 'points' }, '.'] },
  { kind: 'list', items: ['one', long], numbered: false },
  { kind: 'quote', lines: ['a', '', 'b\u001b[31m'] },
  { kind: 'table', head: ['No.', 'Found'], rows: [['1', '12.6 V']] },
  { kind: 'table', head: ['No.', 'Found'], rows: [['1', long]] },
  { kind: 'picture', file: 'p/way.svg', caption: 'The way.' },
  { kind: 'chart', text: 'flowchart TD' },
];

test('an account as bare text: lines of 72 columns, no markup, no escape code', () => {
  const text = showText(blocks);

  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(72);
  // oxlint-disable-next-line no-control-regex -- an escape is what is looked for
  expect(text).not.toMatch(/[\x00-\x08\x0b-\x1f]|flowchart|[*`#]/);
  expect(text).toContain('Van: no light\n=============\n');
  expect(text).toContain('HOW IT WENT\n-----------\n');
  expect(text).toContain('See the points.');
  expect(text).toContain('No.  Found\n1    12.6 V');
  expect(text).toMatch(/No\.  Found\n1 {4}(word )+word\n {5}word/);
  expect(text).toContain('[picture: The way. (p/way.svg)]');
});

test('a table of more columns than fit beside each other has a line a value', () => {
  const word = 'x'.repeat(30);
  const text = showText([{ kind: 'table', head: ['A', 'B', 'C'], rows: [[word, word, word]] }]);

  expect(text).toBe(`A: ${word}\n  B: ${word}\n  C: ${word}\n`);
});
