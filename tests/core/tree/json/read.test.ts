import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseJson } from '../../../../src/core/tree/json/read.ts';
import { told } from '../../../helpers/plant.ts';

const problems = (text: string) => {
  const parsed = parseJson(text, 'bench.json');
  return parsed.kind === 'good' ? [] : parsed.problems;
};

describe('reading JSON that a person wrote', () => {
  test.each([
    ['in the root', '{"a":1,"a":2}', 'a'],
    ['in an object of a list', '{"list":[{"b":1},{"b":1,"b":2}]}', 'list[1].b'],
    ['deep inside', '{"checks":{"look":{"ask":"x"},"look":{}}}', 'checks.look'],
    ['with space before its colon', '{"a" : 1, "a"\n\t: 2}', 'a'],
  ])('a key given twice %s is told with its path', (_, text, path) => {
    expect(told(parseJson(text, 'bench.json'))).toEqual([`key-twice ${path}`]);
  });

  test('every key given twice is told at once, with its line', () => {
    const found = problems('{"a":1,\n"a":2,\n"b":{"c":1,\n"c":2}}');

    expect(found.map(({ line, column, message }) => [line, column, message])).toEqual([
      [2, 1, 'The key "a" stands twice in one object, first on line 1.'],
      [4, 1, 'The key "c" stands twice in one object, first on line 3.'],
    ]);
  });

  test.each([
    ['one key in two objects', '[{"a":1},{"a":2}]'],
    ['a value that looks like a key', '{"a":"b","b":"a"}'],
    ['quotes and colons inside a string', String.raw`{"a":"\"a\":1, \"a\":2 {[","b":1}`],
    ['brackets inside a string', `{"a":"${'['.repeat(50)}"}`],
    ['an escaped backslash before the closing quote', String.raw`{"a":"\\","b":"\\"}`],
  ])('%s is no fault', (_, text) => {
    expect(parseJson(text, 'bench.json')).toEqual({ kind: 'good', value: JSON.parse(text) });
  });

  test.each([
    ['NaN', '{"odds": NaN}', '1:10', 'The word NaN has no quotes.'],
    ['Infinity', '{\n"odds": Infinity}', '2:9', 'The word Infinity has no quotes.'],
    ['a value in capitals', '{"try": True}', '1:9', 'True is not known. Write true.'],
    ['an empty file', '', '1:1', 'The file is empty.'],
    ['a file of spaces', ' \n \n', '1:1', 'The file is empty.'],
    ['curly quotes round a key', '{\n  \u201ca\u201d: 1}', '2:3', 'Curly quotes stand here'],
    ['curly quotes round a text', '{"a": \u201cx\u201d}', '1:7', 'Curly quotes stand here'],
    ['single quotes', "{\n 'a': 1}", '2:2', 'Single quotes stand here.'],
    ['a key without quotes', '{a: 1}', '1:2', 'The key a has no quotes. Write "a".'],
    ['a quote within a text', '{"a": "the "hot" wire"}', '1:13', 'A quote within the text ends it'],
    ['a missing comma', '{"a": 1\n\n"b": 2}', '1:8', 'A comma is missing here.'],
    ['a missing comma in a list', '["a"\n "b"]', '1:5', 'A comma is missing here.'],
    ['a missing colon', '{"a" 1}', '1:6', 'The colon between a key and its value is missing.'],
    ['a missing value', '{"a": , "b": 1}', '1:7', 'A value is missing here.'],
    ['two commas', '{"a": 1,, "b": 1}', '1:9', 'A key in quotes should stand here.'],
    ['a semicolon', '{"a": 1; "b": 1}', '1:8', 'A semicolon stands here. Use a comma.'],
    ['an equals sign', '{"a" = 1}', '1:6', 'An equals sign stands here.'],
    ['a decimal comma', '{"odds": 0,5}', '1:11', 'A number has a decimal comma.'],
    ['a decimal comma before a zero', '[0,97, 0,03]', '1:9', 'A number has a decimal comma.'],
    ['a number without its zero', '{"odds": .5}', '1:10', '".5" is no number here.'],
    ['a number without its end', '{"odds": 1.}', '1:10', 'The number does not go on'],
    ['a tab in a text', '{\n"a": "x\ty"}', '2:6', 'The text that begins here holds a tab'],
    [
      'a backslash',
      String.raw`{"a": "c:\d"}`,
      '1:7',
      'The text that begins here holds a backslash.',
    ],
    ['a text over two lines', '{"a": "x\ny", "b": 1}', '1:7', 'no closing quote on its line.'],
    ['a comment without end', '{ /* x', '1:3', 'The comment that begins here does not end.'],
    ['a file cut off in a text', '{\n"a": "b', '2:8', 'The file ends within a text'],
    ['a file cut off', '{\n  "a": [\n    1,\n', '3:7', 'the [ of line 2 is still open'],
    ['a bracket too many', '{"a": 1}\n}', '2:1', 'This bracket closes nothing'],
    [
      'a bracket that closes too early',
      '{\n  "a": {\n    "b": 1\n  },\n    "c": 2\n  },\n  "d": 3\n}\n',
      '6:3',
      'By its indent this } does not belong to the { of line 1, which it closes.',
    ],
    [
      'a bracket left out',
      '{\n  "a": {\n    "b": [\n      1\n  },\n  "d": 3\n}\n',
      '5:3',
      'By its indent this } does not belong to the [ of line 3, which it closes.',
    ],
    ['something behind the end', '{"a": 1}\n"b"', '1:9', 'A comma is missing here.'],
    ['a sign from elsewhere', '{"a": 1\u00a0}', '1:8', 'This sign cannot stand here'],
  ])('%s is one problem that names the place', (_, text, place, words) => {
    const [problem, ...others] = problems(text);

    expect(others).toEqual([]);
    expect(problem).toMatchObject({ code: 'not-json', file: 'bench.json' });
    expect(`${problem?.line}:${problem?.column}`).toBe(place);
    expect(`${problem?.message} ${problem?.mend}`).toContain(words);
  });

  test.each([
    ['a comment to the end of the line', '{"a": 1, // why\n"b": 2}'],
    ['a comment between', '{/* why */"a": 1,\n"b": 2}'],
    ['a comma before a closing bracket', '{"a": 1, "b": 2,\n}'],
    ['line ends of every kind', '{\r\n"a": 1,\r"b": 2\n}'],
    ['tabs between', '{\t"a":\t1,\t"b":\t2}'],
  ])('%s is taken as it is', (_, text) => {
    expect(parseJson(text, 'bench.json')).toEqual({ kind: 'good', value: { a: 1, b: 2 } });
  });

  test('32 brackets deep is read, 33 is refused', () => {
    const nested = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);

    expect(parseJson(nested(32), 'bench.json').kind).toBe('good');
    expect(told(parseJson(nested(33), 'bench.json'))).toEqual(['nested-too-deep ']);
  });

  test('a million brackets are refused', () => {
    expect(told(parseJson('['.repeat(1_000_000), 'bench.json'))).toEqual(['nested-too-deep ']);
  });

  test('a file of 1 MiB is read, one mark more is refused', () => {
    const sized = (length: number) => `"${'x'.repeat(length - 2)}"`;

    expect(parseJson(sized(1_048_576), 'bench.json').kind).toBe('good');
    expect(problems(sized(1_048_577))[0]).toMatchObject({
      code: 'file-too-large',
      value: '1024 KiB',
    });
  });

  test('a key called __proto__ reaches nothing but its own object', () => {
    const parsed = parseJson('{"__proto__":{"polluted":true}}', 'bench.json');

    expect(parsed.kind).toBe('good');
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  test('whatever JSON can write is read back the same', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 8 }), (text) => {
        expect(parseJson(text, 'bench.json')).toEqual({ kind: 'good', value: JSON.parse(text) });
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  test('a key doubled anywhere in any JSON is told, however the text looks within its strings', () => {
    const key = fc.string({ unit: fc.constantFrom(...'a"\\\\: {'.split('')), maxLength: 4 });
    const inner = fc.dictionary(key, fc.oneof(key, fc.integer()), { minKeys: 1, maxKeys: 4 });

    fc.assert(
      fc.property(fc.array(inner, { minLength: 1, maxLength: 4 }), fc.nat(), (objects, nth) => {
        const [pair = ''] = Object.entries(objects[nth % objects.length] ?? {}).map(
          ([name, value]) => `${JSON.stringify(name)}: ${JSON.stringify(value)}`,
        );
        const whole = JSON.stringify(objects);
        const place = whole.indexOf('{', 1) + 1;

        expect(parseJson(whole, 'bench.json').kind).toBe('good');
        const doubled = `${whole.slice(0, place)}${pair},${pair},${whole.slice(place)}`;
        expect(problems(doubled).map(({ code }) => code)).toContain('key-twice');
      }),
      { seed: 43, numRuns: 500 },
    );
  });

  test('any text at all is a value or at least one problem, never a throw', () => {
    const marks = fc.constantFrom(...'{}[]",:\\ 1eE-ntf\n\u0000'.split(''));

    fc.assert(
      fc.property(fc.string({ unit: marks, maxLength: 60 }), (text) => {
        const parsed = parseJson(text, 'bench.json');
        expect(parsed.kind === 'good' || parsed.problems.length > 0).toBe(true);
      }),
      { seed: 42, numRuns: 2000 },
    );
  });

  test('one key written in two ways is still one key', () => {
    expect(told(parseJson(String.raw`{"a":1,"\u0061":2}`, 'bench.json'))).toEqual(['key-twice a']);
  });

  test('a key far from its colon is still a key', () => {
    const apart = `{"a"${' '.repeat(100)}:1,"a":2}`;
    const twice = `{"a":1,"a"${' '.repeat(100)}:2}`;

    expect(told(parseJson(apart, 'bench.json'))).toEqual(['key-twice a']);
    expect(told(parseJson(twice, 'bench.json'))).toEqual(['key-twice a']);
  });

  test('in a list at the root the path names the place', () => {
    expect(told(parseJson('[{"a":1,"a":2},{"b":1,"b":2}]', 'bench.json'))).toEqual([
      'key-twice [0].a',
      'key-twice [1].b',
    ]);
  });
});
