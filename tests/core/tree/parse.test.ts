import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { showProblem } from '../../../src/core/problem.ts';
import { parseShop, parseTree, parseTreeValue } from '../../../src/core/tree/parse.ts';
import { showPath, showValue } from '../../../src/core/problem.ts';
import { planted, told } from '../../helpers/plant.ts';
import { smallShop, smallTreeData } from '../../helpers/tree.ts';

const parse = (value: unknown) => parseTreeValue(value, 'small.json', smallShop);
const shipped = (name: string) => readFileSync(`trees/${name}`, 'utf8');

describe('the trees we ship', () => {
  test.each(['no-supply.json', 'rough-idle.json'])('%s parses with the shop it shares', (name) => {
    const shop = parseShop(shipped('shop.json'), 'shop.json');

    expect(told(shop)).toEqual([]);
    expect(
      told(parseTree(shipped(name), name, shop.kind === 'good' ? shop.value : undefined)),
    ).toEqual([]);
  });
});

describe('a tree of the wrong shape', () => {
  test.each([
    ['a key that is not known', 'checks.look.colour', 'red', 'checks.look.colour'],
    ['a key left out', 'checks.look.ask', undefined, 'checks.look.ask'],
    ['a format of another day', 'format', 3, 'format'],
    ['a kind of check that is not', 'checks.look.kind', 'smell', 'checks.look.kind'],
    ['odds below nothing', 'causes.fuse.odds', -1, 'causes.fuse.odds'],
    ['odds of nothing', 'causes.fuse.odds', 0, 'causes.fuse.odds'],
    ['minutes as words', 'checks.look.minutes', 'two', 'checks.look.minutes'],
    ['one result only', 'checks.look.results', [{ id: 'a', label: 'a' }], 'checks.look.results'],
    ['a chance above 1', 'checks.look.background.0', 1.5, 'checks.look.background[0]'],
    ['a second cause for certain', 'alsoLikely', 1, 'alsoLikely'],
    [
      'a quantity we do not measure',
      'checks.volts.reading.quantity',
      'joy',
      'checks.volts.reading.quantity',
    ],
    [
      'a range with one end',
      'checks.volts.reading.plausible',
      [0],
      'checks.volts.reading.plausible',
    ],
    ['an id with capitals', 'start', 'Look', 'start'],
    ['an id that is a reserved word', 'start', 'constructor', 'start'],
    ['a standing that is not', 'checks.volts.standing.key', 'half', 'checks.volts.standing.key'],
    ['no cause text', 'causes.fuse.name', '', 'causes.fuse.name'],
    ['a repair without work', 'causes.fuse.repair.do', [], 'causes.fuse.repair.do'],
    ['no tries', 'complaint', { say: 'x', confirm: 'lamp', tries: 0 }, 'complaint.tries'],
  ])('%s is told with file, path and mend', (_, path, value, where) => {
    const parsed = parse(planted([path, value]));

    expect(told(parsed)).toEqual([`wrong-shape ${where}`]);
    expect(parsed.kind === 'bad' && parsed.problems[0]).toMatchObject({
      file: 'small.json',
      mend: expect.stringMatching(/\w+/) as unknown,
      value: expect.stringMatching(/./) as unknown,
    });
  });

  test.each([
    ['nothing', null],
    ['a number', 7],
    ['a list', []],
    ['text', 'tree'],
  ])('%s instead of a tree is one problem', (_, value) => {
    expect(told(parse(value))).toEqual(['wrong-shape ']);
  });

  test('several faults are told all at once', () => {
    const parsed = parse(
      planted(['format', 9], ['causes.fuse.odds', 'many'], ['checks.look.minutes', -1], ['x', 1]),
    );

    expect(told(parsed)).toEqual([
      'wrong-shape format',
      'wrong-shape causes.fuse.odds',
      'wrong-shape checks.look.minutes',
      'wrong-shape x',
    ]);
  });

  test('a problem reads as one line: where, what, how to mend it', () => {
    const parsed = parse(planted(['checks.look.kind', 'smell']));

    expect(parsed.kind === 'bad' && parsed.problems.map(showProblem)).toEqual([
      'small.json: checks.look.kind: "smell" cannot stand here. It may be: look, listen, feel, measure, try, ask.',
    ]);
  });

  test('a misspelt key is named', () => {
    const parsed = parse(planted(['checks.look.minuets', 1]));

    expect(parsed.kind === 'bad' && parsed.problems[0]).toMatchObject({
      path: 'checks.look.minuets',
      message: 'A check has no key "minuets".',
    });
  });

  test('a number too large for a number is told', () => {
    const text = JSON.stringify(smallTreeData()).replace('"odds":60', '"odds":1e999');

    expect(told(parseTree(text, 'small.json'))).toEqual(['wrong-shape causes.fuse.odds']);
  });

  test('a number too large for a number is told as what was written', () => {
    const text = JSON.stringify(smallTreeData()).replace('"odds":60', '"odds":1e999');
    const parsed = parseTree(text, 'small.json', smallShop);

    expect(told(parsed)).toEqual(['wrong-shape causes.fuse.odds']);
    expect(parsed.kind === 'bad' && parsed.problems[0]?.value).toBe('Infinity');
  });

  test('a key called __proto__ at the root is told', () => {
    const text = JSON.stringify(smallTreeData()).replace('{', '{"__proto__":{"odds":1},');

    expect(told(parseTree(text, 'small.json'))).toEqual(['wrong-shape __proto__']);
    expect(({} as Record<string, unknown>)['odds']).toBeUndefined();
  });

  test.each([
    ['as a cause', '"fuse":', '"__proto__":{"name":"x"},"fuse":'],
    ['as a check', '"lamp":', '"__proto__":{"ask":"x"},"lamp":'],
    ['as a row of points', '"points":{', '"points":{"__proto__":[1,0],'],
  ])('a key called __proto__ %s is told', (_, from, to) => {
    const parsed = parseTree(JSON.stringify(smallTreeData()).replace(from, to), 'small.json');

    expect(told(parsed)).toHaveLength(1);
    expect(({} as Record<string, unknown>)['odds']).toBeUndefined();
  });

  test('text that is no JSON is told as such', () => {
    expect(told(parseTree('{"format": NaN}', 'small.json'))).toEqual(['not-json ']);
  });

  test('a fault of shape does not hide a name that leads nowhere', () => {
    const parsed = parse(planted(['checks.look.minutes', -1], ['start', 'nowhere']));

    expect(told(parsed)).toEqual(['wrong-shape checks.look.minutes', 'unknown-check start']);
  });

  test('a shop with an unknown key is told with its path', () => {
    expect(told(parseShop('{"format":1,"tools":{"meter":{"title":"x"}}}', 'shop.json'))).toEqual([
      'wrong-shape tools.meter.name',
      'wrong-shape tools.meter.title',
    ]);
    expect(told(parseShop('{', 'shop.json'))).toEqual(['not-json ']);
  });
});

describe('showing where and what', () => {
  test('a path reads as people write it', () => {
    expect(showPath(['checks', 'lamps', 'results', 1, 'next'])).toBe(
      'checks.lamps.results[1].next',
    );
    expect(showPath([0, 'a'])).toBe('[0].a');
  });

  test('a long value is cut to one line, a missing one is named', () => {
    expect(showValue('x'.repeat(100))).toBe(`"${'x'.repeat(56)}...`);
    expect(showValue(undefined)).toBe('nothing');
    expect(showValue([1, 2])).toBe('[1,2]');
  });
});
