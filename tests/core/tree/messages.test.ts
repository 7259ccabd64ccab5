import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { showRoots } from '../../../src/core/problem.ts';
import { checkTree } from '../../../src/core/reason/plan/check-tree.ts';
import { shippedShop } from '../../helpers/library.ts';

/*
 * One slip of an author's hand in a tree of our own that is sound: it is told once, on the line where
 * it was made, in words that say how it is put right. The slips stand in
 * slips.json: what was typed for what, the code, words of the line it then stands on, and what the
 * message must say.
 */

const whole = readFileSync('tests/fixtures/authoring/dead-wipers.json', 'utf8');
const shop = shippedShop();
const file = 'dead-wipers.json';

const check = (text: string) => checkTree(text, { file, shop, trees: ['dead-wipers'] }).problems;

test('the tree before any slip has nothing wrong', () => {
  expect(check(whole)).toEqual([]);
});

type Slip = {
  readonly slip: string;
  readonly from: string;
  readonly to: string | { readonly times: number; readonly of: string };
  readonly code: string;
  readonly at: string;
  readonly says: string;
};

const slips = JSON.parse(
  readFileSync('tests/fixtures/authoring/slips.json', 'utf8'),
) as readonly Slip[];
const made = ({ from, to }: Slip): string =>
  whole.replace(from, typeof to === 'string' ? to : to.of.repeat(to.times));

test.each(slips)('$slip is told once, in its place', (slip) => {
  const text = made(slip);
  expect(text).not.toBe(whole);

  const problems = check(text);
  const roots = problems.filter(({ follows }) => follows === undefined);

  expect(roots.map((one) => [one.code, one.line])).toEqual([[slip.code, expect.any(Number)]]);
  expect(showRoots(problems)[0]).toMatch(new RegExp(slip.says));
  expect(text.split('\n')[(roots[0]?.line ?? 0) - 1]).toContain(slip.at);
});

test.each([
  ['a comment', '"odds": 30,', '"odds": 30, // of a hundred\n'],
  ['a comma before a bracket', '"minutes": 60,', '"minutes": 60,'.concat(' "parts": ["motor",],')],
  ['another indent', '  "start"', '\t\t"start"'],
  ['curly quotes inside a text', 'Splice the wire.', 'Splice the \u201cblue\u201d wire.'],
])('%s is no mistake', (_, from, to) => {
  expect(check(whole.replace(from, to))).toEqual([]);
});

test('the percents of a whole tree, or odds as fractions, are one line with the number of the others', () => {
  const percents = whole.replaceAll(
    /\[(0\.\d+), (0\.\d+)\]/g,
    (_, one, other) => `[${Math.round(100 * Number(one))}, ${Math.round(100 * Number(other))}]`,
  );
  const fractions = whole.replaceAll(
    /"odds": (\d+)/g,
    (_, odds) => `"odds": ${Number(odds) / 1000}`,
  );

  expect(showRoots(check(percents))).toEqual([
    expect.stringMatching(/97 is no chance.* write 0\.97\. And 9 more that follow from this\.$/),
  ]);
  expect(showRoots(check(fractions))).toEqual([
    expect.stringMatching(/in a hundred of all the odds/),
  ]);
});

test('no message speaks of what a library expected, of infinity, or takes work out', () => {
  const all = slips.flatMap((slip) => showRoots(check(made(slip))));

  expect(all.length).toBeGreaterThanOrEqual(slips.length);
  expect(
    all.filter((one) => /expected|received|Invalid|Infinity|>=|<=|Take it out/.test(one)),
  ).toEqual([]);
});
