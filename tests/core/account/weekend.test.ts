import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fold } from '../../../src/core/session/fold.ts';
import { roadNotes } from '../../../src/core/account/blocks/road.ts';
import { stretchOver } from '../../../src/core/session/time.ts';
import { complaintsOf, isProvenGone } from '../../../src/core/session/complaints.ts';
import { readSession } from '../../../src/store/recover.ts';

// The example of a whole weekend: two complaints, a carburetor in twelve bags, a night, the road.
const folder = 'sessions/examples';
const name = readdirSync(folder).find((file) => /^2026-06-13.*\.jsonl$/.test(file)) ?? '';
const read = readSession(readFileSync(`${folder}/${name}`), name);
if (read.kind === 'bad') throw new Error('the weekend cannot be read');
const { header, events } = read.value;
const story = fold(header, events);
const account = readFileSync(`${folder}/${name.replace('.jsonl', '.md')}`, 'utf8');

test('two complaints, each proven by its own test, in paragraphs of their own', () => {
  expect(complaintsOf(story).map((one) => isProvenGone(story, one))).toEqual([true, true]);
  expect(account).toContain('On the same job its owner had another complaint:');
});

test('twelve bags off and on again, as a table; nothing is left off', () => {
  expect(story.partsOff).toEqual([]);
  expect(account.match(/^\| \d+ \| .* \| back on \|$/gm)).toHaveLength(12);
});

test('the parts add up to the cent: 14.80 + 2 x 0.35 + 21.90 + 11.20 + 9.40', () => {
  expect(1480 + 2 * 35 + 2190 + 1120 + 940).toBe(5800);
  expect(account).toMatch(/\| all told \|\s+\|\s+\| 58\.00 EUR \|/);
});

test('the vacuum before and after is judged by the book of the vehicle', () => {
  expect(account).toMatch(/14\.8 inHg, .* its own book: 18\.5 inHg, fair.*18\.4 inHg, .*, good/);
});

test('the night between is no work, and the parts of the time are the whole of it', () => {
  const { worked, away, gap } = stretchOver(events);
  const [first, last] = [events[0], events.at(-1)].map((event) => Date.parse(event?.at ?? ''));

  expect(gap).toBe(0);
  expect(away / 3600).toBeGreaterThan(12);
  expect(worked + away).toBeCloseTo(((last ?? 0) - (first ?? 0)) / 1000, 0);
});

test('five photos, three things to do, and the road with its times', () => {
  expect(account.match(/!\[.*\]\(.*photo-\d+\.png\)/g)).toHaveLength(5);
  expect(story.followUps).toHaveLength(3);
  expect(roadNotes(story)).toHaveLength(5);
  expect(account.match(/^\| \d\d:\d\d \| .* \|$/gm)).toHaveLength(5);
});
