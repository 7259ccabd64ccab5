import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Event } from '../../src/core/session/event.ts';
import { StoreError } from '../../src/store/files.ts';
import { readSession } from '../../src/store/recover.ts';
import { openJournal, path } from '../helpers/journal-run.ts';
import { note } from '../helpers/session-file.ts';
import { stampAt } from '../helpers/story.ts';

const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.integer({ min: 19_990, max: 20_010 }).map((length) => 'x'.repeat(length)),
  fc
    .integer({ min: 36, max: 44 })
    .map((length) => `2026-01-01T00:00:00.${'0'.repeat(length - 21)}Z`),
);
const amount = fc.record({
  value: fc.oneof(fc.double(), fc.integer()),
  unit: fc.constantFrom('V', 'furlong', '', 'F', 'x'.repeat(21)),
  typed: fc.integer({ min: 198, max: 202 }).map((length) => '1'.repeat(length)),
});
const id = fc.constantFrom('lamp', 'look', 'volts', '__proto__', 'X'.repeat(70), '');

/** What writers could ever hand over, and more. */
const payload = fc.oneof(
  fc.record({ kind: fc.constant('noted'), text }),
  fc.record({ kind: fc.constant('noted'), text, told: text }),
  fc.record({ kind: fc.constant('found'), check: id, result: id, reading: amount }),
  fc.record({ kind: fc.constant('conditions'), set: fc.record({ altitude: amount }) }),
  fc.record({ kind: fc.constant('timer'), label: text, minutes: fc.double() }),
  fc.record({ kind: fc.constant('skipped'), check: id, reason: text }),
);

test('whatever is acknowledged is read back, and whatever is refused is not in the file', () => {
  let [kept, refused] = [0, 0];
  fc.assert(
    fc.property(fc.array(payload, { minLength: 1, maxLength: 4 }), (payloads) => {
      const { files, journal } = openJournal();
      const acknowledged: number[] = [];
      for (const said of payloads) {
        const n = acknowledged.length + 1;
        try {
          journal.commit([{ n, ...stampAt(n), ...said } as Event]);
          acknowledged.push(n);
          kept += 1;
        } catch (error) {
          if (!(error instanceof StoreError)) throw error;
          refused += 1;
        }
      }
      const read = readSession(files.read(path), path);
      if (read.kind === 'bad') throw new Error('the record does not read');
      expect(read.value.events.map(({ n }) => n)).toEqual(acknowledged);
      expect(read.value.damage).toEqual([]);
    }),
    { seed: 17, numRuns: 400 },
  );
  expect(Math.min(kept, refused)).toBeGreaterThan(50);
});

test('a number that cannot be counted on from is refused', () => {
  const { journal } = openJournal();

  expect(() => journal.commit([{ ...note(1), n: 2 ** 53 }])).toThrow('could not be read back');
});
