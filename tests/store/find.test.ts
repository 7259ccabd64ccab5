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

const line = (vehicle: string): string =>
  `${JSON.stringify({ format: 1, id: 'x', who: '"vehicle":{"name":"a"', vehicle: { name: vehicle, facts: {} }, tree: 'no-supply', trees: {} })}\n`;

test.each([
  ['a job that is open', '', 'open'],
  ['fixed', '{"n":1,"kind":"closed","as":"fixed"}\n', 'fixed'],
  ['handed on', '{"n":1,"kind":"closed","as":"handed-on"}\n', 'handed-on'],
  ['opened again', '{"n":1,"kind":"closed","as":"fixed"}\n{"n":2,"kind":"reopened"}\n', 'open'],
  [
    'closed, and that taken back',
    '{"n":1,"kind":"closed","as":"fixed"}\n{"n":2,"kind":"corrected","of":1}\n',
    'open',
  ],
] as const)('the list says how a job stands and whose it is: %s', (_, events, state) => {
  const one = new MemoryFiles({ 'jobs/2026-04-12-van.jsonl': line('The "old" van') + events });

  expect(homeLines(one, 'jobs')).toMatchObject([
    { state, of: { vehicle: 'The "old" van', tree: 'no-supply' } },
  ]);
});

test('one that cannot be read, or was not looked into, is nothing to pick up', () => {
  files.refuse = ({ number }) => (number === 1 ? 'EACCES' : undefined);

  expect(homeLines(files, 'jobs', 2).map(({ name, state }) => [name, state])).toEqual([
    ['2026-05-01-truck', 'unknown'],
    ['2026-04-12-van', 'open'],
    ['2026-04-11-van', 'unknown'],
  ]);
});
