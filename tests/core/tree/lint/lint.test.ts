import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkTree } from '../../../../src/core/reason/plan/check-tree.ts';
import { skeleton } from '../../../../src/core/tree/skeleton.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';

/*
 * One file a planted fault, in tests/fixtures/lint: the tree of "trees new" with one thing wrong. A
 * fault that brings others with it (what only it led to is reached no more) names them all.
 */

const shop = shippedShop();
const trees = shippedTrees().map(({ id }) => id);

const check = (text: string, file: string) => checkTree(text, { file, shop, trees });
const planted = (name: string) =>
  check(readFileSync(`tests/fixtures/lint/${name}.json`, 'utf8'), `${name}.json`).problems;
const told = (name: string): readonly string[] =>
  planted(name).map(({ code, path = '' }) => `${code} ${path}`.trim());

test('a new tree as it is begun has nothing wrong', () => {
  expect(check(JSON.stringify(skeleton('plain')), 'plain.json')).toMatchObject({
    problems: [],
    doubts: [],
  });
});

test.each<[fault: string, ...told: string[]]>([
  [
    'result-without-next',
    'dead-end checks.first-look.results[0].next',
    'unreachable-cause causes.second-cause',
    'unreachable-check checks.second-reading',
  ],
  ['stop-without-reason', 'no-reason checks.second-reading.results[0].reason'],
  ['tree-without-reason', 'no-reason checks.second-reading.results[0].reason'],
  ['tree-not-in-library', 'unknown-tree checks.second-reading.results[0].next'],
  ['check-never-reached', 'unreachable-check checks.spare', 'asks-alike checks.spare.ask'],
  ['cause-never-named', 'unreachable-cause causes.first-cause'],
  ['way-goes-round', 'loop checks.second-reading.results[0].next'],
  ['no-source', 'no-source checks.first-look.source'],
  ['no-steps', 'no-how checks.first-look.how'],
  ['reading-without-healthy', 'no-healthy checks.second-reading.healthy'],
  ['cause-without-place', 'no-where causes.first-cause.where'],
  ['cause-without-signs', 'no-shows causes.second-cause.shows'],
  ['question-too-long', 'text-long checks.first-look.ask'],
  ['label-too-long', 'text-long checks.first-look.results[0].label'],
  ['brakes-say-drive', 'brakes-drive causes.first-cause.repair.do[0]'],
  [
    'odds-far-off',
    'odds-scale causes.first-cause.odds',
    'condemns-wrongly checks.second-reading.results[1].next',
  ],
  ['odds-as-fractions', 'odds-scale causes'],
  ['background-too-small', 'background-small checks.first-look.background[1]'],
  ['link-too-certain', 'row-certain checks.first-look.points.first-cause'],
  ['row-healthier', 'row-healthier checks.second-reading.points.first-cause[1]'],
  ['same-with-other-results', 'same-results checks.second-reading.same'],
  ['escape-sequences', 'text-marks checks.first-look.how[0]'],
  ['hazard-fuel', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-tank', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-battery', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-jack', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-belt', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-fan', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-hot', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-spark', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-coil-lead', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-brake', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-asbestos', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-exhaust', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-crank', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-coolant', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-solvent', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-spring', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-acid', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-charger', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-jump-leads', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-propane', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-mercury', 'hazard-without-caution checks.first-look.how[0]'],
  ['hazard-in-repair', 'hazard-without-caution causes.second-cause.repair.do[0]'],
  ['hazard-in-label', 'hazard-without-caution checks.first-look.results[1].label'],
  [
    'hazard-running-engine',
    'hazard-without-caution checks.second-reading.standing',
    'hazard-without-caution checks.second-reading.standing',
  ],
  ['hazard-road-test', 'hazard-without-caution checks.second-reading.standing'],
  [
    'condemns-the-wrong-one',
    'named-by-less checks.first-look.results[1].next',
    'condemns-wrongly checks.first-look.results[1].next',
    'condemns-wrongly checks.second-reading.results[1].next',
  ],
  ['check-tells-nothing', 'check-tells-nothing checks.first-look.points'],
  [
    'unknown-check',
    'unknown-check checks.first-look.results[0].next',
    'unreachable-cause causes.second-cause',
    'unreachable-check checks.second-reading',
  ],
  ['unknown-cause', 'unknown-cause checks.second-reading.points.third-cause'],
  ['unknown-caution', 'unknown-caution checks.first-look.cautions[0]'],
  ['unknown-fact', 'unknown-fact checks.first-look.when'],
  ['row-off-one', 'row-sum checks.first-look.background'],
  ['row-too-short', 'row-length checks.first-look.points.first-cause'],
  ['bands-with-gap', 'band-gap checks.second-reading.results'],
  ['bands-overlap', 'band-overlap checks.second-reading.results'],
  ['unit-of-something-else', 'unknown-unit checks.second-reading.reading.unit'],
  ['result-twice', 'result-twice checks.first-look.results[1].id'],
  ['feed-without-path', 'feed-missing checks.second-reading.feed'],
  ['unknown-key', 'wrong-shape checks.first-look.minuets'],
  ['number-far-too-large', 'wrong-shape causes.first-cause.odds'],
  ['key-twice', 'key-twice unlisted'],
  ['reserved-name', 'reserved-name causes.__proto__'],
  ['not-a-number', 'not-json'],
])('%s is found', (fault, ...expected) => {
  const problems = planted(fault);

  expect(told(fault)).toEqual(expected);
  for (const problem of problems) {
    expect(problem.file).toBe(`${fault}.json`);
    expect(problem.message).toMatch(/\w.*[.!?]$/);
    expect(problem.mend).toMatch(/\w.*[.!?:)]/);
  }
});

test('several faults in one file are all told at once', () => {
  expect(told('several').toSorted()).toEqual([
    'dead-end checks.first-look.results[0].next',
    'hazard-without-caution causes.second-cause.repair.do[0]',
    'no-how checks.first-look.how',
    'no-source checks.second-reading.source',
    'no-where causes.first-cause.where',
    'odds-scale unlisted',
    'row-healthier checks.second-reading.points.first-cause[1]',
    'unknown-cause checks.second-reading.results[1].next',
    'unreachable-cause causes.second-cause',
    'unreachable-check checks.second-reading',
  ]);
});

test('faults of shape do not hide the others', () => {
  expect(told('several-with-wrong-shape').toSorted()).toEqual([
    'hazard-without-caution checks.second-reading.how[0]',
    'no-where causes.first-cause.where',
    'row-sum checks.second-reading.background',
    'unknown-check start',
    'wrong-shape checks.first-look.kind',
    'wrong-shape color',
    'wrong-shape format',
  ]);
});

test('a problem names the value, and the mend says what may stand there', () => {
  expect(planted('tree-not-in-library')[0]).toEqual({
    code: 'unknown-tree',
    file: 'tree-not-in-library.json',
    path: 'checks.second-reading.results[0].next',
    line: 58,
    column: 90,
    value: 'tree:no-wings',
    message: 'The library has no tree "no-wings".',
    mend: `It has: ${trees.join(', ')}.`,
  });
});

test('what a row must hold at least is worked out', () => {
  // Background 0.97 and 0.03; healthy 0.99 of it leaves 0.99 * 0.03 / 0.97 = 0.0306 to the other.
  expect(planted('row-healthier')[0]).toMatchObject({
    value: '0.01',
    message:
      '"low" gets 0.01, but the background alone makes it 0.0306: healthier than a sound vehicle.',
    mend: 'Give it at least 0.031, or lower the background.',
  });
});
