import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { began, tell } from '../../helpers/plain.ts';

test('the last thing is taken back, and said in one line', async () => {
  const lines = [...began, '1', 'y', '5', 'b'];
  const { answers, kinds } = await tell(lines);

  expect(answers.at(-1)).toContain('Taken back: ');
  expect(answers.at(-1)).toContain('Which things still work?');
  expect(kinds).toEqual(['check-begun', 'standing', 'found', 'corrected', 'paused']);
}, 60_000);

test('a second complaint is taken up on the same job', async () => {
  const { answers, kinds, events } = await tell([...began, 'C', 'dim', '1', 'since the rain', '2']);

  expect(answers.at(-1)).toContain('My truck · dim lamps');
  expect(kinds).toEqual(['leg', 'paused']);
  expect(events[0]).toMatchObject({ complaint: { words: 'since the rain' } });
}, 60_000);

test('empty lines record nothing, wherever one leans on Enter', async () => {
  const enters = Array.from({ length: 12 }, () => '');
  const home = await tell(enters);
  const start = await tell(['s', ...enters]);
  const job = await tell([...began, ...enters, '1', ...enters, 'y', ...enters, 'n', ...enters]);

  expect([home.kinds, start.kinds]).toEqual([[], []]);
  expect(job.kinds).toEqual(['check-begun', 'standing', 'paused']);
}, 120_000);

test('where the lines end the record is whole, and the job is picked up there', async () => {
  const first = await tell([...began, '1', 'y', 'n', 'it rained']);
  const second = await tell(['1', '5'], {
    folder: first.folder,
    first: 'resume',
  });

  expect(first.kinds).toEqual(['check-begun', 'standing', 'noted', 'paused']);
  expect(first.out).toMatch(/resume with: droplight resume \S+my-truck-no-supply\n$/);
  expect(second.answers[0]).toContain('Picked up where it was put down.');
  expect(second.kinds.slice(4)).toEqual(['resumed', 'found', 'paused']);
}, 60_000);

test('a line that means nothing is answered with what can be said; ? tells all of it', async () => {
  const { answers, kinds } = await tell([
    ...began,
    '1',
    'y',
    'horse',
    '77',
    '12',
    '?',
    'u',
    'n',
    '.',
  ]);
  const [horse, seven, twelve, all, asked, field] = answers.slice(-7);

  expect(horse).toContain('"horse" means nothing here.\nA number: that result.');
  expect(seven).toContain('"77" means nothing here.');
  expect(twelve).toContain('"12" means nothing here.');
  expect(all).toContain('u: cannot tell: kept, but no evidence');
  expect(all).not.toMatch(/PgDn|arrow|backspace/);
  expect(asked).toContain('Not sure: kept, but no evidence? (y: yes)');
  // "n" is no yes: it is read as what it is on the step.
  expect(field).toContain('Note');
  expect(kinds).toEqual(['check-begun', 'standing', 'paused']);
}, 60_000);

test('an unlikely reading waits for a second word; where numbers are readings # picks a result', async () => {
  const toReading = [...began, '1', 'y', '5', '1', '2', '3', 'y'];
  const { answers, events } = await tell([...toReading, '99', '', '12.6 12.5', '#9', '#1']);
  const [asked, unlikely, again, refused, none] = answers.slice(toReading.length);

  expect(asked).toContain('Reading > _ V');
  expect(unlikely).toMatch(/Is it really\s+so\?/);
  expect(again).toContain('Reading > _ V');
  expect(refused).toContain('"12.6 12.5" is not a number.');
  expect(none).toContain('"#9" means nothing here.');
  const found = events.filter(({ kind }) => kind === 'found').at(-1);
  expect(found).toMatchObject({ check: 'bat-rest-volts', result: 'full' });
  expect(found).not.toHaveProperty('reading');
}, 60_000);

test('lines are folded to the columns, wide and right-to-left signs measured, and turning marks shown', async () => {
  const vehicle = `東京のトラック ${'שלום '.repeat(9)}\u202eabc`;
  const job = began.map((line) => (line === 'My truck' ? vehicle : line));
  const { out } = await tell([...job, 'n', '熱い'.repeat(40), '1', 'o', '.', 'a'], { columns: 60 });
  const said = out.split('\n').filter((line) => !line.startsWith('> '));

  expect(said.filter((line) => stringWidth(line) > 60)).toEqual([]);
  expect(out).toContain('東京のトラック');
  expect(out).not.toContain('\u202e');
  expect(out).toContain('<U+202E>');
}, 60_000);

test('a replay is told decision by decision, and calls no job back', async () => {
  const { folder } = await tell([...began, '1', 'y', '2', 'n', 'it rained']);
  const [name = ''] = readdirSync(join(folder, 'sessions')).filter((file) =>
    file.endsWith('.jsonl'),
  );
  const { answers, out } = await tell(['', 'b', '', 'q'], {
    folder,
    args: [name.replace('.jsonl', '')],
    first: 'replay',
  });

  expect(answers[0]).toContain('decision 0 of 1');
  expect(answers[1]).toContain('decision 1 of 1');
  expect(answers[2]).toContain('decision 0 of 1');
  expect(answers[3]).toContain('decision 1 of 1');
  expect(out).not.toMatch(/resume with|\(kept/);
}, 60_000);
