import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkTree } from '../../../src/core/reason/plan/check-tree.ts';
import { branched } from '../../helpers/branched.ts';
import { planted } from '../../helpers/plant.ts';
import { smallShop } from '../../helpers/tree.ts';

/** Words in the place of ids and shares, and of what a block of branches makes. */
const said =
  'always mostly half seldom never unlisted stop none here elsewhere prototype 7 look-fuse'.split(
    ' ',
  );

/** The keys of the format, the words that it gives a meaning, and what an object answers to by itself. */
function wordsOfFormat(): readonly string[] {
  const words = new Set([...said, ...Object.getOwnPropertyNames(Object.prototype)]);
  JSON.parse(readFileSync('trees/tree.schema.json', 'utf8'), (key, value: unknown) => {
    if (key === 'properties') for (const name of Object.keys(value as object)) words.add(name);
    return value;
  });
  return [...words];
}

/** One id of each kind that stands in the small tree with branches. */
const ids = {
  cause: 'fuse',
  check: 'volts',
  'complaint test': 'lamp',
  'healthy result': 'whole',
  'bad result': 'burnt',
  "complaint's result": 'dark',
  block: 'pull',
  branch: 'two',
};

const text = JSON.stringify(
  planted(
    ...branched(),
    ['checks.volts.after', { look: ['whole'] }],
    ['checks.look.background', undefined],
    ['checks.look.points', undefined],
    ['checks.look.sound', { burnt: 2 }],
    ['checks.look.shows-with', { fuse: { burnt: 95 } }],
    ['checks.look.results.0.next', [{ if: { lamp: ['dark'] }, go: 'pull' }, 'volts']],
  ),
);

/** The tree with something called by another word, wherever its name stands. */
const renamed = (id: string, word: string): string =>
  text.replaceAll(`"${id}"`, JSON.stringify(word)).replaceAll(`cause:${id}"`, `cause:${word}"`);

const check = (made: string) =>
  checkTree(made, { file: 'no-light.json', shop: smallShop, trees: ['no-light'] }).problems;

/** What a change makes wrong in itself: problems that follow from no other, as `code path`. */
const rootsOf = (made: string): readonly string[] =>
  check(made)
    .filter(({ code, follows }) => follows === undefined && !besides.test(code))
    .map(({ code, path = '' }) => `${code} ${path}`);

/** What the small tree leaves out, and what is asked of the words in any text. */
const besides = /^(no-(where|shows|how|healthy)|hazard-without-caution)$/;

const words = wordsOfFormat().filter((word) => said.includes(word) || !text.includes(`"${word}"`));

test('the words tried are many, and those that mean something where ids stand are among them', () => {
  expect(words.length).toBeGreaterThan(60);
  expect(words).toEqual(expect.arrayContaining(['when', 'is', 'stop', 'mostly', '__proto__']));
});

test('by whatever word of the format something is called, it works or one line tells that it cannot', () => {
  expect(rootsOf(text)).toEqual([]);
  fc.assert(
    fc.property(fc.constantFrom(...Object.values(ids)), fc.constantFrom(...words), (id, word) => {
      const roots = rootsOf(renamed(id, word));

      expect(roots.length).toBeLessThanOrEqual(1);
      expect(roots.join()).toMatch(/^$|^(reserved-name|wrong-shape) /);
    }),
    { numRuns: 400 },
  );
});

test.each([
  ['a result', 'burnt', 'always', 'reserved-name checks.look.results[1].id'],
  ['a cause', 'fuse', 'unlisted', 'reserved-name causes.unlisted'],
  ['a cause', 'fuse', 'when', 'reserved-name causes.when'],
  ['a check', 'volts', 'stop', 'reserved-name checks.stop'],
  ['a check', 'volts', 'when', 'reserved-name checks.when'],
  ['a block', 'pull', 'stop', 'reserved-name branches.stop'],
  ['a branch', 'two', '2', 'reserved-name branches.pull.of.2'],
])('%s "%s" called "%s" is told in its place', (_, id, word, told) => {
  expect(rootsOf(renamed(id, word))).toEqual([told]);
});

test.each(['none', 'here', 'elsewhere'])('a branch may be called "%s"', (word) => {
  expect(rootsOf(renamed('two', word))).toEqual([]);
});

test.each([
  ['"burnt":95', '"always":95', 'unknown-result'],
  ['"burnt":95', '"always":"always"', 'certain-elsewhere'],
  ['"burnt":95', '"always":"mostly","burnt":3', 'unknown-result'],
  ['"burnt":2', '"always":2', 'unknown-result'],
])('a row that names no result, %s as %s, is told', (from, to, code) => {
  const made = text.replace(from, to);

  expect(made).not.toBe(text);
  expect(rootsOf(made).join()).toContain(code);
});
