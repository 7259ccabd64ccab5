import { expect, test } from 'vitest';
import { findSession, listSessions } from '../../src/store/find.ts';
import { sessionLines as homeLines } from '../../src/store/find.ts';
import { MemoryFiles } from '../helpers/memory-files.ts';

const files = new MemoryFiles({
  'jobs/2026-04-11-van.jsonl': '{"kind":"closed"}\n',
  'jobs/2026-04-12-van.jsonl': '{"kind":"noted","text":"\\"kind\\":\\"closed\\""}\n',
  'jobs/2026-04-12-van.jsonl.lock': '',
  'jobs/2026-04-12-van.jsonl.fresh': '',
  'jobs/2026-05-01-truck.jsonl': '',
  'elsewhere/old.jsonl': '',
});

const find = (named: string) => {
  const found = findSession(files, 'jobs', { named, path: named });
  return found.kind === 'good' ? found.value : found.problems[0]?.code;
};

test('sessions are listed newest first, without what stands beside them', () => {
  expect(listSessions(files, 'jobs').map(({ name }) => name)).toEqual([
    '2026-05-01-truck',
    '2026-04-12-van',
    '2026-04-11-van',
  ]);
  expect(listSessions(files, 'nowhere')).toEqual([]);
});

test.each([
  ['elsewhere/old.jsonl', 'elsewhere/old.jsonl'],
  ['2026-04-11-van', 'jobs/2026-04-11-van.jsonl'],
  ['2026-04-11-van.jsonl', 'jobs/2026-04-11-van.jsonl'],
  ['2026-05', 'jobs/2026-05-01-truck.jsonl'],
  ['2026-04', 'several-sessions'],
  ['', 'several-sessions'],
  ['truck', 'no-such-session'],
])('"%s" means %s', (named, found) => {
  expect(find(named)).toBe(found);
});

test('Home knows which are closed; one that cannot be read is nothing to pick up', () => {
  files.refuse = ({ number }) => (number === 1 ? 'EACCES' : undefined);

  expect(homeLines(files, 'jobs').map(({ name, closed }) => [name, closed])).toEqual([
    ['2026-05-01-truck', true],
    ['2026-04-12-van', false],
    ['2026-04-11-van', true],
  ]);
});
