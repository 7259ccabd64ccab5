import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import type { AccountOptions } from '../../../src/core/account/context.ts';
import { fold, type Recorded } from '../../../src/core/session/fold.ts';
import { readSession } from '../../../src/store/recover.ts';
import { storyFaults, storyOf } from '../../helpers/account-lint.ts';
import { oddSessions } from '../../helpers/odd-sessions.ts';

const record = { events: 9, passedOver: 0, link: 'ab'.repeat(32) };
const folder = 'sessions/examples';

const examples = readdirSync(folder).filter((name) => name.endsWith('.jsonl'));

function exampleOf(name: string): Recorded {
  const read = readSession(readFileSync(`${folder}/${name}`), name);
  if (read.kind === 'bad') throw new Error(`${name} cannot be read`);
  return read.value;
}

const jobs: readonly (readonly [name: string, make: () => Recorded])[] = [
  ...examples.map((name) => [name, () => exampleOf(name)] as const),
  ...Object.entries(oddSessions),
];

const words = (text: string): number => text.match(/[\p{L}\p{N}][\p{L}\p{N}.,'’-]*/gu)?.length ?? 0;

const accountOf = ({ header, events }: Recorded, options: AccountOptions = {}): string =>
  writeUp(fold(header, events), record, { pictures: 'p', ...options }).markdown;

/** Ids of everything that a tree or the shop names. */
function idsOf({ header, events }: Recorded): readonly string[] {
  const { legs } = fold(header, events);
  return legs.flatMap(({ tree, shop }) => [
    ...Object.keys(tree.checks),
    ...Object.keys(tree.causes),
    ...Object.keys(shop.accesses),
  ]);
}

describe.each(jobs)('%s', (_, make) => {
  const job = make();

  test.each(['i', 'we', 'they'] as const)('has nothing to strike out, in the voice %s', (voice) => {
    expect(storyFaults(storyOf(accountOf(job, { voice })), idsOf(job))).toEqual([]);
  });

  test('is a story of 600 words at the most', () => {
    expect(words(storyOf(accountOf(job)).join(' '))).toBeLessThanOrEqual(600);
  });

  test('is one line in a line, and its first screenful in short', () => {
    const [line, short] = (['line', 'short'] as const).map((length) => accountOf(job, { length }));

    expect(line?.trim().split('\n')).toHaveLength(1);
    expect(short).not.toMatch(/^## /m);
    expect(short).toMatch(/The record's closing link is/);
  });
});

test('an account of one complaint is its first screenful in short: 170 words at the most', () => {
  const short = examples.flatMap((name) => {
    const job = exampleOf(name);
    const { legs, followUps } = fold(job.header, job.events);
    return legs.length === 1 && followUps.length < 2
      ? [words(accountOf(job, { length: 'short' }))]
      : [];
  });

  expect(short.length).toBeGreaterThan(2);
  expect(Math.max(...short)).toBeLessThanOrEqual(170);
});

const good = 'We tried the spark: there was none. The points took the lead, at 28 %.';

test.each<[string, string, readonly string[]]>([
  ['a good paragraph', good, []],
  ['what people said is theirs', `${good} We noted: "It clicks? Look there!"`, []],
  ['a question', `${good} Is it the coil?`, ['asks']],
  ['an order', 'Look down the throat and work the throttle.', ['orders']],
  ['a bare subject', 'We tried the spark. This cleared the coil.', ['bare subject']],
  ['three that begin alike', 'We saw it. We heard it. We felt it.', ['three begin alike']],
  ['a running total', 'The spark cleared one of nine suspects.', ['running total']],
  ['a raw id', 'We looked at the fuel-pump.', ['raw id fuel-pump']],
  ['marks that no word stands between', 'We tried the spark: .', ['marks']],
  ['two inferences', `${good} The coil was ruled out.`, ['more than one inference']],
])('the lint: %s', (_, paragraph, faults) => {
  expect(storyFaults([paragraph], ['fuel-pump']).map((fault) => fault.split(':')[0])).toEqual(
    faults,
  );
});

test('the lint reads the story alone, and all of it', () => {
  const text = '# a\n\nIt?\n\n## How it went\n\nOne.\n\n![p](p.svg)\n\nTwo.\n\n## Then\n\nIt?\n';

  expect(storyOf(text)).toEqual(['One.', 'Two.']);
});

test('a mentor reads in the margin what a guess stood at, what stood open, and what to ask; nobody else does', () => {
  const job = exampleOf(examples.find((name) => name.endsWith('no-start.jsonl')) ?? '');
  const text = accountOf(job, { audience: 'mentor' });

  expect(text).toMatch(
    /Margin\.\* Mended at 13 %\. In front then: .* Open then: .*, about \d+ minutes\./,
  );
  expect(text.match(/Margin\./g)?.length).toBeGreaterThan(1);
  expect(accountOf(job)).not.toContain('Margin.');
  expect(accountOf(job, { audience: 'reader' })).not.toContain('Margin.');
});

test('a picture of the suspects stands beside the paragraph it belongs to, the way at the end', () => {
  const job = exampleOf(examples.find((name) => name.endsWith('no-start.jsonl')) ?? '');
  const text = accountOf(job);

  const places = ['How it went', 'suspects.svg', 'way.svg', '## What was done'].map((one) =>
    text.indexOf(one),
  );
  expect(places).toEqual(places.toSorted((one, other) => one - other));
  expect(text.slice(places[1], places[2])).toMatch(/[a-z]\.\n/);
});
