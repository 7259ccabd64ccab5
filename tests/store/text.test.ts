import { expect, test } from 'vitest';
import { textAtStart, textOf } from '../../src/store/text.ts';

const bytes = (text: string, coding: BufferEncoding) => new Uint8Array(Buffer.from(text, coding));
const swapped = (text: string) => new Uint8Array(Buffer.from(text, 'utf16le').swap16());
const text = '{"say": "20° on"}\n';

test.each([
  ['UTF-8', bytes(text, 'utf8')],
  ['UTF-8 with its mark', bytes(`\ufeff${text}`, 'utf8')],
  ['UTF-16, low byte first', bytes(text, 'utf16le')],
  ['UTF-16, low byte first, with its mark', bytes(`\ufeff${text}`, 'utf16le')],
  ['UTF-16, high byte first', swapped(text)],
  ['UTF-16, high byte first, with its mark', swapped(`\ufeff${text}`)],
])('%s is read as it is', (_, file) => {
  expect(textOf(file, 'a.json')).toEqual({ kind: 'good', value: text });
  expect(textAtStart(file)).toBe(text);
});

test('a file in a code page is told with the line and column of its first strange byte', () => {
  const file = bytes(`{\n"title": "\u00e9t\u00e9",\n"say": "20\u00b0 on"}`, 'latin1');

  expect(textOf(file, 'a.json')).toMatchObject({
    kind: 'bad',
    problems: [
      {
        code: 'not-utf-8',
        file: 'a.json',
        line: 2,
        column: 11,
        mend: 'Save the file as UTF-8: an editor asks for it in "Save as".',
      },
    ],
  });
});

test('the beginning of a file that is cut within a sign is read all the same', () => {
  expect(textAtStart(bytes('{"id": "é', 'utf8').slice(0, -1))).toMatch(/^\{"id": "/);
});
