import { describe, expect, test } from 'vitest';
import { lintBands } from '../../../../src/core/tree/lint/bands.ts';
import { saidOf } from '../../../../src/core/tree/lint/spans-in-words.ts';
import type { Reading, Tree } from '../../../../src/core/tree/model.ts';
import { shippedTrees } from '../../../helpers/library.ts';
import { toldBy, withCheck } from '../../../helpers/lint.ts';

const volts: Reading = { quantity: 'voltage', unit: 'V', plausible: [0, 16] };
const amps: Reading = { quantity: 'current', unit: 'A', plausible: [0, 50] };
const kiloohm: Reading = { quantity: 'resistance', unit: 'kohm', plausible: [0, 100] };
const psi: Reading = { quantity: 'pressure', unit: 'psi', plausible: [0, 250] };
const celsius: Reading = { quantity: 'temperature', unit: 'C', plausible: [-40, 300] };

describe('a stretch of readings in words', () => {
  test.each<[text: string, reading: Reading, low: number | undefined, high: number | undefined]>([
    ['9 V or more', volts, 9, undefined],
    ['full: 11.5 V or more', volts, 11.5, undefined],
    ['dead, under 2 V', volts, undefined, 2],
    ['Under 0.1 V each, pins bright.', volts, undefined, 0.1],
    ['0.2 V or less', volts, undefined, 0.2],
    ['4 to 10 A', amps, 4, 10],
    ['Reads 12.4-12.8 V at rest', volts, 12.4, 12.8],
    ['over 5 A', amps, 5, undefined],
    ['3 or more', volts, 3, undefined],
    ['under 500 mV', volts, undefined, 0.5],
    ['470 ohm or more', kiloohm, 0.47, undefined],
    ['12,4 V or more', volts, 12.4, undefined],
    // 1 psi is 6.894757 kPa: NIST SP 811.
    ['under 68.94757 kPa', psi, undefined, 10],
    ['under 212 F', celsius, undefined, 100],
    ['5 V or more, or stays full', volts, 5, undefined],
  ])('%s', (text, reading, low, high) => {
    const said = saidOf(text, reading);

    if (said === undefined || 'stranger' in said) throw new Error('nothing read');
    expect(said.low ?? -Infinity).toBeCloseTo(low ?? -Infinity, 4);
    expect(said.high ?? Infinity).toBeCloseTo(high ?? Infinity, 4);
  });

  test.each(['full', 'it lights', 'Within 0.2 V of the posts.', 'Terminal 87', 'pin 3 is dead'])(
    'none in: %s',
    (text) => {
      expect(saidOf(text, volts)).toBeUndefined();
    },
  );
});

const banded = (
  reading: Reading,
  healthy: string,
  results: readonly (readonly [
    label: string,
    from: number | undefined,
    below: number | undefined,
  ])[],
): Tree =>
  withCheck('volts', {
    reading,
    healthy,
    results: results.map(([label, from, below], index) => ({
      id: `r${index}`,
      label,
      ...(from !== undefined && { from }),
      ...(below !== undefined && { below }),
    })),
  });

test.each<[fault: string, tree: Tree, told: readonly string[]]>([
  [
    'nothing wrong',
    banded(volts, '12 V or more', [
      ['full: 11 V or more', 11, undefined],
      ['low: under 11 V', 1, 11],
      ['dead', undefined, 1],
    ]),
    [],
  ],
  [
    'all bands ten times off',
    banded(volts, '12 V or more', [
      ['full', 110, undefined],
      ['dead', undefined, 110],
    ]),
    ['healthy-against-band checks.volts.healthy', 'band-implausible checks.volts.results[0]'],
  ],
  [
    'all bands ten times too small',
    banded(volts, '12 V or more', [
      ['full', 1.1, undefined],
      ['dead', undefined, 1.1],
    ]),
    ['healthy-against-band checks.volts.healthy'],
  ],
  [
    'a label of another limit',
    banded(volts, '12 V or more', [
      ['9 V or more', 11, undefined],
      ['dead', undefined, 11],
    ]),
    ['label-against-band checks.volts.results[0].label'],
  ],
  [
    'healthy beyond the healthy band',
    banded(amps, '20 A or more', [
      ['right', 4, 10],
      ['high', 10, undefined],
      ['low', undefined, 4],
    ]),
    ['healthy-against-band checks.volts.healthy'],
  ],
  [
    'kiloohm for ohm',
    banded(kiloohm, 'Under 10 ohm.', [
      ['under 10 ohm', undefined, 10],
      ['open', 10, undefined],
    ]),
    [
      'healthy-against-band checks.volts.healthy',
      'label-against-band checks.volts.results[0].label',
    ],
  ],
  [
    'millivolts for volts',
    banded({ ...volts, unit: 'mV', plausible: [0, 16] }, '11.5 V or more', [
      ['full: 11.5 V or more', 11.5, undefined],
      ['dead', undefined, 11.5],
    ]),
    [
      'healthy-against-band checks.volts.healthy',
      'label-against-band checks.volts.results[0].label',
    ],
  ],
  [
    'a unit of something else',
    banded(volts, '5 A or more', [
      ['full', 11.5, undefined],
      ['dead', undefined, 11.5],
    ]),
    ['unit-in-words checks.volts.healthy'],
  ],
  [
    'plausible too small',
    banded({ ...volts, plausible: [0, 10] }, '12 V or more', [
      ['full', 12, undefined],
      ['dead', undefined, 12],
    ]),
    ['band-implausible checks.volts.results[0]'],
  ],
  [
    'a limit by the book',
    withCheck('volts', {
      healthy: 'as the book says, 17 inHg or more',
      reading: { quantity: 'vacuum', unit: 'inHg', plausible: [0, 28] },
      results: [
        { id: 'good', label: 'good', from: { book: 'idle-vacuum', minus: 2, else: 15 } },
        { id: 'low', label: 'low', below: { book: 'idle-vacuum', minus: 2, else: 15 } },
      ],
    }),
    [],
  ],
])('%s', (_fault, tree, told) => {
  expect(toldBy(lintBands, tree)).toEqual(told);
});

test('every measured check of the shipped trees times ten, or a tenth, is told', () => {
  const measured = shippedTrees().flatMap((tree) =>
    Object.entries(tree.checks)
      .filter(([, { reading, results }]) => reading !== undefined && results.length > 1)
      .map(([id, check]) => ({ tree, id, check })),
  );
  const silent = measured.flatMap(({ tree, id, check }) =>
    [10, 0.1].flatMap((factor) => {
      const results = check.results.map((result) => ({
        ...result,
        ...(typeof result.from === 'number' && { from: result.from * factor }),
        ...(typeof result.below === 'number' && { below: result.below * factor }),
      }));
      const checks = { ...tree.checks, [id]: { ...check, results } };
      return toldBy(lintBands, { ...tree, checks }).length > 0 ? [] : [`${id} x ${factor}`];
    }),
  );

  expect(measured.length).toBeGreaterThan(30);
  expect(silent).toEqual([]);
});
