import { expect, test } from 'vitest';
import { writeUp } from '../../../../src/core/account/account.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { partsWords, readPart } from '../../../../src/core/session/costs/parts.ts';
import { after, verdict } from '../../../helpers/story.ts';

const named: Action = { do: 'condemn', cause: 'wire' };
const mended: Action = { do: 'repair', cause: 'wire' };

const tableOf = (...actions: readonly Action[]): string | undefined =>
  writeUp(after(actions).story, { events: 9, passedOver: 0, link: 'ab'.repeat(32) })
    .markdown.split('\n')
    .find((line) => line.startsWith('|') && line.split('|').length === 7 && /wire/i.test(line));

test('what nobody noted is told as not noted, and never as done or as none', () => {
  const row = tableOf(named, mended);

  expect(row?.split('|').slice(2, 6)).toEqual(Array(4).fill(' not noted '));
});

test('what was said after the repair is part of it', () => {
  const { story } = after([
    named,
    { do: 'describe', text: 'chafed through at the clip' },
    mended,
    {
      do: 'describe',
      text: 'spliced and sleeved',
      minutes: 40,
      parts: ['2 x sleeve at 0.40'],
      cost: '0.80 USD',
    },
  ]);

  expect(story.condemned).toMatchObject([{ cause: 'wire', found: 'chafed through at the clip' }]);
  expect(story.repairs).toMatchObject([
    { did: 'spliced and sleeved', minutes: 40, parts: ['2 x sleeve at 0.40'], cost: '0.80 USD' },
  ]);
});

test('that there were no parts is told where somebody said so', () => {
  expect(tableOf(named, { ...mended, parts: [] })).toContain('| none |');
  expect(tableOf(named, mended, { do: 'describe', parts: ['none'] })).toContain('| none |');
});

test('it can be put right, by the repair it describes, or withdrawn', () => {
  const said: readonly Action[] = [named, mended, { do: 'describe', text: 'spliced', minutes: 4 }];
  const { events } = after(said);
  const of = (kind: string): number => events.find((event) => event.kind === kind)?.n ?? 0;
  const anew = after([...said, { do: 'correct', n: of('repaired'), minutes: 40 }]).story;
  const gone = after([...said, { do: 'correct', n: of('described'), withdraw: true }]).story;

  expect(anew.repairs).toMatchObject([{ did: 'spliced', minutes: 40 }]);
  expect(gone.repairs[0]).not.toHaveProperty('did');
});

test('nothing is described before a cause is named, and nothing empty is kept', () => {
  expect(verdict(after([]).story, { do: 'describe', text: 'x' })).toBe('nothing-to-describe');
  expect(verdict(after([named]).story, { do: 'describe', minutes: 4 })).toBe('empty-description');
  expect(verdict(after([named]).story, { do: 'describe', n: 7, text: 'x' })).toBe(
    'nothing-to-describe',
  );
});

test.each([
  ['2 x fuse link at 3.50', { name: 'fuse link', count: 2, each: '3.50' }],
  ['fuse link @ 3,50 EUR', { name: 'fuse link', each: '3,50 EUR' }],
  ['4 x clip at $0.20 each', { name: 'clip', count: 4, each: '$0.20' }],
  ['hose at the manifold', { name: 'hose at the manifold' }],
  ['tape', { name: 'tape' }],
])('a part as it is typed: %s', (text, part) => {
  expect(readPart(text)).toEqual(part);
});

test('parts are told with count and price', () => {
  expect(partsWords(['2 x fuse link at 3.50', 'tape'])).toBe('2 x fuse link at 3.50 each; tape');
});
