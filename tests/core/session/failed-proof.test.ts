import { expect, test } from 'vitest';
import { failedProofWords } from '../../../src/app/wording.ts';
import { proofBlocks } from '../../../src/core/account/blocks/tables.ts';
import { failedRepairs } from '../../../src/core/account/blocks/ledger.ts';
import { complaintBlocks } from '../../../src/core/account/opening/complaint.ts';
import { eventWords } from '../../../src/core/account/clauses/clauses.ts';
import { accountContext } from '../../../src/core/account/context.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { curedBy } from '../../../src/core/reason/history/cured.ts';
import { after } from '../../helpers/story.ts';

const find = (check: string, given: object): Action => ({ do: 'find', check, ...given }) as Action;
const found = [
  find('lamp', { result: 'dark' }),
  find('look', { result: 'whole' }),
  find('volts', { reading: '1' }),
];
const mended: Action = { do: 'repair', cause: 'wire', acknowledged: true };
const failed: Action = { do: 'prove', result: 'dark' };
const oneOfTwo = [...found, mended, find('volts', { reading: '12.4' }), failed];

test('a failed proof says so until something is answered', () => {
  const { story } = after([...found, mended, failed]);

  expect(failedProofWords(story)).toBe('The proof failed: the complaint is still there.');
  expect(
    failedProofWords(after([...found, mended, failed, { do: 'note', text: 'x' }]).story),
  ).not.toBe('');
  expect(failedProofWords(after([...found, mended, failed, found[1] as Action]).story)).toBe('');
});

test('a repair whose own reading came right mended a real fault, and is told as one of two', () => {
  const { story } = after(oneOfTwo);
  const [repair] = story.repairs;

  expect(repair && curedBy(story, repair)).toMatchObject([
    { before: { result: 'dead' }, after: { result: 'full' } },
  ]);
  expect(failedRepairs(story)).toEqual([]);
  expect(failedProofWords(story)).toContain('a real fault, and not the only one');
  const last = story.entries.at(-1);
  expect(last && eventWords(story, last)).toContain(
    'had been needed, and it was not the only fault',
  );
  expect(JSON.stringify(complaintBlocks(accountContext(story)))).not.toContain('did not cure');
});

test('without such a reading it is told as a repair that did not cure', () => {
  const { story } = after([...found, mended, failed]);

  expect(failedRepairs(story)).toHaveLength(1);
  expect(JSON.stringify(complaintBlocks(accountContext(story)))).toContain('which did not cure it');
});

test('the reading that it put right stands in the table of the proof, after the next repair too', () => {
  const { story } = after([
    ...oneOfTwo,
    { do: 'repair', cause: 'fuse', acknowledged: true },
    { do: 'prove', result: 'lit' },
  ]);

  expect(JSON.stringify(proofBlocks(accountContext(story)))).toMatch(
    /Volts at the lamp.*1 V.*12\.4 V/,
  );
});

test('once the complaint was tried, nothing is asked to be repeated, and a healthy answer leaves it proven', () => {
  const proven = [...found, mended, { do: 'prove', result: 'lit' } as const];

  expect(after([...found, mended]).story.due).toMatchObject({ check: 'volts', why: 'repeat' });
  expect(after(proven).story.due.kind).toBe('proven');
  expect(after([...proven, find('volts', { reading: '12.4' })]).story.due.kind).toBe('proven');
  expect(after([...proven, find('volts', { reading: '3' })]).story.due.kind).not.toBe('proven');
});
