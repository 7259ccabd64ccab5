import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { habitsOf } from '../../../src/core/review/habits.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { contradictionOf, contradictions } from '../../../src/core/session/contradiction.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { shippedShop, shippedTree, shippedTrees } from '../../helpers/library.ts';
import { after, headerFor, stampAt } from '../../helpers/story.ts';
import { smallTree, smallTreeData } from '../../helpers/tree.ts';

const find = (check: string, result: string): Action => ({
  do: 'find',
  check,
  result,
  acknowledged: true,
});
const read = (reading: string): Action => ({
  do: 'find',
  check: 'volts',
  reading,
  acknowledged: true,
});
const whole = find('look', 'whole');

/** The small tree with the edge of `volts` at 12.4 V, and what its reading may be off. */
const metered = (uncertainty?: number) => {
  const { checks } = smallTreeData();
  const { volts } = checks;
  const reading = { ...volts.reading, ...(uncertainty !== undefined && { uncertainty }) };
  const results = [
    { ...volts.results[0], from: 12.4 },
    { ...volts.results[1], below: 12.4 },
    volts.results[2],
  ];
  return headerFor(smallTree({ checks: { ...checks, volts: { ...volts, reading, results } } }));
};

const pairs = (story: Parameters<typeof contradictions>[0]) =>
  contradictions(story).map(({ earlier, later, repairsBetween }) => [
    earlier.result,
    later.result,
    repairsBetween,
  ]);

test('a check that shows worse with nothing changed contradicts itself', () => {
  const { story } = after([find('look', 'whole'), find('look', 'burnt')]);

  expect(pairs(story)).toEqual([['whole', 'burnt', 0]]);
  expect(contradictionOf(story, story.findings.at(-1))?.check).toBe('look');
});

test('one that shows better, or the same, does not', () => {
  const { story } = after([find('look', 'burnt'), find('look', 'burnt'), find('look', 'whole')]);

  expect(contradictions(story)).toEqual([]);
});

test('a finding that got worse over a repair contradicts the one before it', () => {
  const { story } = after([
    find('lamp', 'dark'),
    whole,
    { do: 'condemn', cause: 'wire' },
    { do: 'repair', cause: 'wire', acknowledged: true },
    { do: 'prove', result: 'dark' },
    find('look', 'burnt'),
  ]);

  expect(pairs(story)).toEqual([['whole', 'burnt', 1]]);
});

test('of several in a story all are told in order, and a finding that makes none has none', () => {
  const { story } = after([
    find('look', 'whole'),
    find('look', 'burnt'),
    find('look', 'whole'),
    find('look', 'burnt'),
    find('lamp', 'dark'),
  ]);

  expect(contradictions(story).map(({ later }) => later.n)).toHaveLength(2);
  expect(contradictionOf(story, story.findings.at(-1))).toBeUndefined();
});

test.each([
  // 12.4 V is off by 0.005 V + 0.8 %, so by 0.1 V: common practice, no source.
  ['12.45 V and 12.35 V lie within the error of a meter', ['12.45', '12.35'], undefined, 0],
  ['12.50 V and 12.30 V may both be 12.4 V', ['12.50', '12.30'], undefined, 0],
  ['12.55 V and 12.25 V cannot be one', ['12.55', '12.25'], undefined, 1],
  ['of a check that knows its own error, that counts: within', ['12.60', '12.35'], 0.25, 0],
  ['of a check that knows its own error, that counts: beyond', ['12.46', '12.34'], 0.05, 1],
])('%s', (_name, readings, uncertainty, expected) => {
  const { story } = after([whole, ...readings.map(read)], metered(uncertainty));

  expect(contradictions(story)).toHaveLength(expected);
});

test('a record from before the meter error counted is read by it all the same', () => {
  const strict = (n: number, value: number, result: string) => ({
    ...stampAt(n),
    n,
    kind: 'found' as const,
    check: 'volts',
    result,
    reading: { value, unit: 'V' },
  });
  const pair = (value: number) =>
    contradictions(fold(metered(), [strict(1, 12.45, 'full'), strict(2, value, 'low')]));

  expect(pair(12.35)).toEqual([]);
  expect(pair(12.3)).toHaveLength(1);
});

test('two readings within the error of one another never contradict', () => {
  const header = metered();
  fc.assert(
    fc.property(
      fc.double({ min: 1.5, max: 15, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      (first, part) => {
        // What the later one may be off: 0.005 V + 0.8 % of it.
        const second = first + part * (0.005 + 0.008 * first) * 0.99;
        const { story } = after([whole, read(String(first)), read(String(second))], header);

        expect(contradictions(story)).toEqual([]);
      },
    ),
    { seed: 12, numRuns: 100 },
  );
});

test('readings in different units are compared as one', () => {
  const { story } = after([whole, read('12450 mV'), read('12.35')], metered());

  expect(contradictions(story)).toEqual([]);
});

test('a reading that may be what was picked before does not contradict it', () => {
  const both = (reading: string) =>
    after([whole, find('volts', 'full'), read(reading)], metered()).story;

  expect(pairs(both('12.35'))).toEqual([]);
  expect(pairs(both('12.25'))).toEqual([['full', 'low', 0]]);
});

test('"one of these" contradicts only what neither of them can be', () => {
  const either = (result: string, orResult: string): Action => ({
    do: 'find',
    check: 'volts',
    result,
    orResult,
    acknowledged: true,
  });
  const { story } = after([whole, either('full', 'low'), find('volts', 'low')]);
  const { story: worse } = after([whole, either('full', 'low'), find('volts', 'dead')]);

  expect(contradictions(story)).toEqual([]);
  expect(pairs(worse)).toEqual([['full', 'dead', 0]]);
});

test('checks that show the same thing contradict one another, in the review as on the screen', () => {
  const header = headerFor(shippedTree('slow-crank'), shippedShop());
  const { story } = after(
    [find('crank-safe', 'lately'), find('when-ask', 'same'), find('hot-cold', 'hotslow')],
    header,
  );

  expect(contradictions(story).map(({ check }) => check)).toEqual(['hot-cold']);
  expect(contradictions(story)[0]?.earlier.check).toBe('when-ask');
  expect(habitsOf(story).contradictions).toBe(1);
});

test('an answer given anew is not asked about again', () => {
  const { story } = after([
    find('look', 'whole'),
    find('look', 'burnt'),
    { do: 'correct', n: 2, result: 'burnt' },
  ]);

  expect(contradictions(story)).toEqual([]);
});

test('every pair of results of every shipped check: worse contradicts, better does not', () => {
  for (const tree of shippedTrees()) {
    const header = headerFor(tree, shippedShop());
    const fresh = after([], header).story;
    for (const [check, { results }] of Object.entries(fresh.legs[0]?.tree.checks ?? {})) {
      const base = { leg: 0, repairs: 0, corrected: false, proof: false, stamp: header.opened };
      results.forEach((one, before) =>
        results.forEach((other, now) => {
          const findings = [one, other].map(({ id }, n) => ({ ...base, n, check, result: id }));
          const story = { ...fresh, findings } as unknown as typeof fresh;
          expect(contradictions(story), `${tree.id} ${check}`).toHaveLength(Number(now > before));
        }),
      );
    }
  }
});
