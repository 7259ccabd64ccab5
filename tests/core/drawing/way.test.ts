import { expect, test } from 'vitest';
import { wayOf } from '../../../src/core/account/outcome-steps.ts';
import { wayMermaid } from '../../../src/core/drawing/mermaid.ts';
import { countChecks, shortened } from '../../../src/core/drawing/way-length.ts';
import { waySteps, type WayStep } from '../../../src/core/drawing/way-steps.ts';
import { oddStory } from '../../helpers/odd-story.ts';
import { after } from '../../helpers/story.ts';

const walked = after([
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'find', check: 'look', result: 'whole' },
]).story;

const way = (name: string): readonly WayStep[] => wayOf(oddStory(name));

test.each([
  ['easy', 'mended and proven'],
  ['handed on', 'handed on'],
  ['unproven', 'mended, not proven; still open'],
  ['contradiction', 'it did not show again'],
  ['forty findings', 'given up'],
])('the way of the job "%s" ends with how it ended', (name, words) => {
  const last = way(name).at(-1);

  expect(last?.kind).toBe('outcome');
  expect(last?.title).toMatch(new RegExp(`${words}$`));
  expect(wayMermaid(way(name))).toContain(words.split(';')[0]);
});

test('a new complaint parts the way, and each has its end', () => {
  const steps = way('two complaints');

  expect(steps.filter(({ kind }) => kind === 'complaint')).toHaveLength(2);
  expect(steps.filter(({ kind }) => kind === 'outcome').map(({ title }) => title)).toEqual([
    expect.stringContaining('given up'),
    expect.stringContaining('mended and proven'),
  ]);
});

test('a long way tells checks that showed nothing as one step, and counts them all', () => {
  const long = way('forty findings');

  const shown = shortened(long);
  expect(long.length).toBeGreaterThan(24);
  expect(shown.length).toBeLessThan(long.length);
  expect(shown.some(({ kind }) => kind === 'healthy checks')).toBe(true);
  expect(countChecks(shown)).toBe(countChecks(long));
});

test('what could not be told is not called passed over, nor is it in the chart', () => {
  const steps = way('long notes');

  expect(steps.filter(({ kind }) => kind === 'not told')).toHaveLength(1);
  expect(steps.some(({ kind }) => kind === 'passed over')).toBe(false);
  expect(wayMermaid(steps)).not.toContain('passed over');
});

test('the chart has no branch that was not taken', () => {
  expect(wayMermaid(waySteps(walked))).not.toMatch(/-\.-|burnt/);
});

test('what was put right, and what was taken back, leave their trace', () => {
  const begun: Parameters<typeof after>[0] = [
    { do: 'find', check: 'volts', reading: '12.4' },
    { do: 'condemn', cause: 'wire' },
  ];
  const { entries } = after(begun).story;
  const at = (kind: string): number =>
    entries.find(({ event }) => event.kind === kind)?.event.n ?? 0;
  const { story } = after([
    ...begun,
    { do: 'correct', n: at('found'), reading: '0.2', reason: 'Wrong terminal.' },
    { do: 'correct', n: at('condemned'), withdraw: true, reason: 'Too early.' },
  ]);

  expect(waySteps(story).map((one) => [one.kind, one.title, one.trace || one.taken])).toEqual([
    ['check', 'Volts at the lamp', 'first written as 12.4 V, and put right'],
    ['taken back', 'Wire broken', 'named as the cause'],
  ]);
});
