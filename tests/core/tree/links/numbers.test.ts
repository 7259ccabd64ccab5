import { describe, expect, test } from 'vitest';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { planted, told } from '../../../helpers/plant.ts';
import { smallShop } from '../../../helpers/tree.ts';

const parse = (value: unknown) => parseTreeValue(value, 'small.json', smallShop);

/** Three results with these bands, in the small tree's measured check (plausible 0 to 16 V). */
const bands = (...ends: readonly { from?: number; below?: number }[]) =>
  parse(
    planted([
      'checks.volts.results',
      ends.map((end, index) => ({ id: `band-${index}`, label: 'x', ...end })),
    ]),
  );

describe('rows of chances', () => {
  test.each([
    ['adds up to less', 'checks.look.background', [0.9, 0.05], 'row-sum checks.look.background'],
    ['adds up to more', 'checks.look.points.fuse', [0.9, 0.2], 'row-sum checks.look.points.fuse'],
    [
      'is short of one',
      'checks.volts.background',
      [0.9, 0.1],
      'row-length checks.volts.background',
    ],
    [
      'has one too many',
      'checks.look.points.fuse',
      [0.5, 0.3, 0.2],
      'row-length checks.look.points.fuse',
    ],
    ['is empty', 'checks.look.background', [], 'row-length checks.look.background'],
    ['is not there', 'checks.look.background', undefined, 'no-background checks.look.background'],
    [
      'is 2 parts in a million off',
      'checks.look.background',
      [0.980002, 0.02],
      'row-sum checks.look.background',
    ],
  ])('a row that %s is told', (_, path, value, expected) => {
    expect(told(parse(planted([path, value])))).toEqual([expected]);
  });

  test('a row may be off by what rounding leaves', () => {
    expect(
      told(parse(planted(['checks.volts.background', [0.333333, 0.333333, 0.333334]]))),
    ).toEqual([]);
    expect(told(parse(planted(['checks.look.background', [0.1 + 0.2, 0.7]])))).toEqual([]);
  });

  test('the sum is told as a person would write it', () => {
    const parsed = parse(planted(['checks.look.background', [0.1, 0.2]]));

    expect(parsed.kind === 'bad' && parsed.problems[0]).toMatchObject({
      message: 'The chances add up to 0.3, not to 1.',
      value: '[0.1,0.2]',
    });
  });
});

describe('bands of a reading', () => {
  test.each([
    ['meet', [{ from: 12 }, { from: 2, below: 12 }, { below: 2 }], []],
    ['meet in any order', [{ below: 2 }, { from: 12 }, { from: 2, below: 12 }], []],
    [
      'end just where the plausible range ends',
      [
        { from: 12, below: 16 },
        { from: 2, below: 12 },
        { from: 0, below: 2 },
      ],
      [],
    ],
    ['leave a gap', [{ from: 12 }, { from: 2, below: 11 }, { below: 2 }], ['band-gap']],
    ['overlap', [{ from: 11 }, { from: 2, below: 12 }, { below: 2 }], ['band-overlap']],
    ['start too high', [{ from: 12 }, { from: 2, below: 12 }, { from: 1, below: 2 }], ['band-gap']],
    ['end too low', [{ from: 12, below: 15 }, { from: 2, below: 12 }, { below: 2 }], ['band-gap']],
    [
      'lie inside one another',
      [{ from: 5 }, { from: 2, below: 4 }, { below: 5 }],
      ['band-overlap', 'band-gap'],
    ],
    ['have no ends at all', [{}, {}, {}], ['band-ends']],
    [
      'stand upside down',
      [{ from: 12 }, { from: 12, below: 2 }, { below: 12 }],
      ['band-overlap', 'band-gap'],
    ],
  ])('bands that %s', (_, ends, codes) => {
    const parsed = bands(...ends);

    expect(told(parsed)).toEqual(codes.map((code) => `${code} checks.volts.results`));
  });

  test('a gap is told with both its ends', () => {
    const parsed = bands({ from: 12 }, { from: 2, below: 11.5 }, { below: 2 });

    expect(parsed.kind === 'bad' && parsed.problems[0]).toMatchObject({
      message: 'The bands have a gap between 11.5 and 12.',
      mend: 'Let each band begin ("from") where the one before it ends ("below").',
      value: '11.5 and 12',
    });
  });

  test.each([
    [
      'an empty plausible range',
      'checks.volts.reading.plausible',
      [16, 16],
      'plausible-range checks.volts.reading.plausible',
    ],
    [
      'a unit of something else',
      'checks.volts.reading.unit',
      'psi',
      'unknown-unit checks.volts.reading.unit',
    ],
    [
      'bands without a reading',
      'checks.volts.reading',
      undefined,
      'band-without-reading checks.volts.results',
    ],
  ])('%s is told', (_, path, value, expected) => {
    expect(told(parse(planted([path, value])))).toContain(expected);
  });
});
