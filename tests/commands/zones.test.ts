import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { pageOf, textOf } from '../../src/commands/account-files.ts';
import { storyJson } from '../../src/commands/story.ts';
import { accountOf } from '../../src/commands/write.ts';
import { reviewOf } from '../../src/core/review/review.ts';
import { readSession, type Recovered } from '../../src/store/recover.ts';
import { chained } from '../helpers/session-file.ts';
import { headerFor, stampAt } from '../helpers/story.ts';

const zones = ['UTC', 'America/New_York', 'Australia/Lord_Howe'];
const folder = 'sessions/examples';

function read(bytes: Uint8Array, name: string): Recovered {
  const reading = readSession(bytes, name);
  if (reading.kind === 'bad') throw new Error(`${name} cannot be read`);
  return reading.value;
}

/** An old file: times told without an offset, one of them in an hour that New York leaves out. */
const old = chained([
  headerFor(),
  { n: 1, ...stampAt(1), kind: 'found', check: 'lamp', result: 'dark', told: '2026-03-08T01:50' },
  { n: 2, ...stampAt(2), kind: 'noted', text: 'a cup of tea', told: '2026-03-08T02:30' },
  { n: 3, ...stampAt(3), kind: 'found', check: 'look', result: 'whole', told: '2026-03-08T03:10' },
]).join('');

const sessions: readonly (readonly [name: string, reading: Recovered])[] = [
  ['old', read(Buffer.from(old), 'old')],
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.jsonl'))
    .map((name) => [name, read(readFileSync(join(folder, name)), name)] as const),
];

const own = process.env['TZ'];
afterEach(() => {
  process.env['TZ'] = own;
});

/** All that is told of a session, by a machine in some zone. */
function toldIn(zone: string, [name, reading]: (typeof sessions)[number]): string {
  process.env['TZ'] = zone;
  const account = accountOf(reading, { pictures: 'pictures' });
  return JSON.stringify([
    account,
    textOf(account),
    pageOf(account, 'pictures', new Map(Object.entries(account.pictures))),
    storyJson(reading),
    // Its beginning: every decision more costs a second, and is told by the same clock.
    reviewOf(name, { ...reading, events: reading.events.slice(0, 6) }, { vehicles: 2 }),
  ]);
}

test('the machine of this test does change its zone', () => {
  const hours = zones.map((zone) => {
    process.env['TZ'] = zone;
    return new Date('2026-04-11T10:00:00Z').getHours();
  });

  expect(hours).toEqual([10, 6, 20]);
});

test.each(sessions)('%s is told in the same bytes in every zone', (...session) => {
  const [first, ...others] = zones.map((zone) => toldIn(zone, session));

  for (const other of others) expect(other).toBe(first);
});

test('a time told without an offset stands by the offset of its own event', () => {
  const { events } = read(Buffer.from(old), 'old');

  expect(events.map((event) => ('told' in event ? event.told : ''))).toEqual([
    '2026-03-08T01:50+00:00',
    '2026-03-08T02:30+00:00',
    '2026-03-08T03:10+00:00',
  ]);
});
