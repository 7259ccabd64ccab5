import { expect, test } from 'vitest';
import { frameAt, frameStops } from '../../../src/core/review/frames.ts';
import { replayCast, replayText } from '../../../src/core/review/replay-forms.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { after } from '../../helpers/story.ts';

const job: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark', acknowledged: true },
  { do: 'note', text: 'rain' },
  { do: 'expect', check: 'look', result: 'burnt' },
  { do: 'find', check: 'look', result: 'whole' },
  { do: 'repair', cause: 'wire', acknowledged: true },
  { do: 'prove', result: 'lit', acknowledged: true },
];
const recorded = after(job);
const stops = frameStops(recorded);
const frames = stops.map((count) => frameAt(recorded, count));
const look = frames[1]!;
const said = (tag: string) => look.lines.find((line) => line.tag === tag)?.text;

test('there is a frame for each decision and none for anything else', () => {
  expect(stops.map((count) => recorded.events[count - 1]?.kind)).toEqual([
    'found',
    'found',
    'repaired',
    'proved',
  ]);
});

test('a frame tells what was asked, expected and found, who moved, and the time of the session', () => {
  // The clock of these tests goes on a minute an event; the first event is the first minute.
  expect(look.clock).toMatch(/^2026-04-11 10:0\d, \d minutes after the beginning$/);
  expect(said('EXPECTED')).toMatch(/^JB expected "burnt" \(by the odds /);
  expect(said('FOUND')).toBe('"whole", not as expected');
  expect(said('FELL')).toMatch(/^#{4}\. -> #+\.+ {2}fuse burnt \(likely -> /);
  expect(said('ROSE')).toContain('wire broken');
  expect(look.told).toBe('We asked "Is the fuse whole?": whole.');
});

test('a frame tells nothing that came after it', () => {
  const [first] = frames;
  const shorter = after(job.slice(0, 1));

  expect(frameAt(shorter, stops[0]!)).toEqual(first);
});

test('what the screens may show has no percentages in it', () => {
  expect(JSON.stringify(frames)).not.toContain('%');
});

test('the text has every frame with its number, in eighty columns', () => {
  const text = replayText('A job', frames);

  expect(text).toContain('decision 4 of 4');
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});

test('the recording is JSON lines: a head, then frames with times that go on', () => {
  const [head = '', ...lines] = replayCast('A job', frames, 1_775_901_600.5).trimEnd().split('\n');
  const shown = lines.map((line) => JSON.parse(line) as [number, string, string]);
  const times = shown.map(([seconds]) => seconds);

  expect(JSON.parse(head)).toEqual({
    version: 2,
    width: 80,
    height: 24,
    timestamp: 1_775_901_600,
    title: 'A job',
  });
  expect(shown.length).toBe(frames.length + 1);
  expect(times).toEqual(times.toSorted((one, other) => one - other));
  expect(times.slice(1).every((seconds, index) => seconds - times[index]! >= 3)).toBe(true);
  expect(shown.every(([, kind]) => kind === 'o')).toBe(true);
  // Nothing that drives a terminal stands in the file itself.
  expect(replayCast('A job', frames, 0)).toMatch(/^[\n\x20-\x7e]*$/);
});

test('a long word and a hostile note stay within their columns, and drive nothing', () => {
  const hostile = after([
    ...job.slice(0, 1),
    { do: 'skip', check: 'look', reason: `\u001b[2J${'x'.repeat(200)}` },
  ]);
  const text = replayText(
    'A job',
    frameStops(hostile).map((count) => frameAt(hostile, count)),
  );

  expect(text).not.toContain('\u001b');
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});
