import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseJson } from '../../../src/core/tree/json.ts';
import { told } from '../../helpers/plant.ts';

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

    expect(found.map(({ message }) => message)).toEqual([
      'The key "a" stands twice in one object (line 2).',
      'The key "c" stands twice in one object (line 4).',
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
    ['NaN', '{"odds": NaN}', 1],
    ['Infinity', '{\n"odds": Infinity}', 2],
    ['a comment', '{\n// why\n"a": 1}', 2],
    ['a comma too many', '{"a": 1,\n}', 2],
    ['no closing bracket', '{"a": 1,\n"b": 2\n', 3],
    ['an empty file', '', 1],
    ['a string left open', '{"a": "b', 1],
  ])('%s is one problem that names the line', (_, text, line) => {
    expect(problems(text)).toEqual([
      {
        code: 'not-json',
        file: 'bench.json',
        message: `This is not JSON from line ${line} on.`,
        mend: 'Look there for a missing comma, bracket or quote (NaN and comments are not JSON).',
      },
    ]);
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
