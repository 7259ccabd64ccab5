// How long the story of a long session takes: the whole fold, and one event more, as ratios of the
// shortest in one run. Nothing is held to a time.
import { fold, step } from '../../src/core/session/fold.ts';
import type { Event } from '../../src/core/session/event.ts';
import { newEvent } from '../../src/core/session/read-event.ts';
import type { Payload } from '../../src/core/session/event.ts';
import { headerFor, stampAt } from '../helpers/story.ts';

const kinds: readonly Payload[] = [
  { kind: 'check-begun', check: 'look', acknowledged: ['hot'] },
  { kind: 'found', check: 'look', result: 'whole' },
  { kind: 'noted', text: 'green dust at the clip' },
  { kind: 'part-off', part: 'bezel' },
  { kind: 'part-on', part: 'bezel' },
  { kind: 'found', check: 'volts', result: 'full', reading: { value: 12.5, unit: 'V' } },
  { kind: 'access', access: 'dash', now: 'open' },
  { kind: 'access', access: 'dash', now: 'closed' },
  { kind: 'timer', label: 'cool', minutes: 1 },
  { kind: 'timer-off', of: 9 },
];

const eventsOf = (count: number): readonly Event[] =>
  Array.from({ length: count }, (_, index) => {
    const payload = kinds[index % kinds.length] ?? { kind: 'paused' as const };
    const said = payload.kind === 'timer-off' ? { ...payload, of: index } : payload;
    return newEvent(index + 1, { ...stampAt(0), mono: index * 1000, up: index }, said);
  });

const header = headerFor();

/** The middle of several runs, in milliseconds. */
function median(times: number, run: () => void): number {
  const all = Array.from({ length: times }, () => {
    const begun = performance.now();
    run();
    return performance.now() - begun;
  }).toSorted((one, other) => one - other);
  return all[Math.floor(all.length / 2)] ?? 0;
}

const rows = [1000, 10_000, 100_000].map((count) => {
  const events = eventsOf(count);
  const whole = median(count > 10_000 ? 3 : 9, () => void fold(header, events));
  const story = fold(header, events);
  const next = newEvent(count + 1, stampAt(count), {
    kind: 'found',
    check: 'look',
    result: 'burnt',
  });
  const one = median(101, () => void step(story, next));
  return { count, whole, one };
});

const [first] = rows;
for (const { count, whole, one } of rows)
  process.stdout.write(
    `${String(count).padStart(7)} events  fold ${whole.toFixed(1).padStart(8)} ms (x ${(whole / (first?.whole ?? 1)).toFixed(1)})  one more ${(one * 1000).toFixed(0).padStart(6)} us (x ${(one / (first?.one ?? 1)).toFixed(1)})\n`,
  );
