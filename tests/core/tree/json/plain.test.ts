import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plainJson } from '../../../../src/core/tree/json/plain.ts';

test('a text that is JSON and nothing else is read whole', () => {
  const text = readFileSync('trees/charging.json', 'utf8');
  expect(plainJson(text, 32)?.value).toEqual(JSON.parse(text));
  expect(plainJson('{"a": "b\\": 1", "c": [{"a": {}}]}', 4)?.value).toEqual({
    a: 'b": 1',
    c: [{ a: {} }],
  });
});

test('strings that look like keys are none, and keys that look like the end of a text are some', () => {
  const text = String.raw`{"a\\": "b\": 1", "c\"": ["x:", ":", "\\"] , "d"
    : {"\\\"": "\\\\"}}`;

  expect(plainJson(text, 4)?.value).toEqual(JSON.parse(text));
  expect(plainJson(text.replace('"d"', '"a\\\\"'), 4)).toBeUndefined();
});

test.each([
  ['a key twice', '{"a": 1, "a": 2}'],
  ['a key twice further in', '{"a": {"b": 1, "b": 1}}'],
  ['a key twice, once escaped', '{"a": 1, "\\u0061": 2}'],
  ['a comment', '{"a": 1} // one'],
  ['a comma too many', '[1,]'],
  ['a name that would be lost', '{"a": {"__proto__": 1}}'],
  ['brackets too deep', '[[[[1]]]]'],
  ['nothing', ''],
])('%s is left to the reader that knows places', (_, text) => {
  expect(plainJson(text, 3)).toBeUndefined();
});
