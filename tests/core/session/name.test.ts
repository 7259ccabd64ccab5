import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sessionId, slug } from '../../../src/core/session/name.ts';

describe('file names of sessions', () => {
  test.each([
    ['Orchard van', 'orchard-van'],
    ['  Orchard   van!  ', 'orchard-van'],
    ['Café', 'cafe'],
    ['../../etc/passwd', 'etc-passwd'],
    ['C:\\jobs\\van', 'c-jobs-van'],
    ['-rf', 'rf'],
    ['', 'job'],
    ['***', 'job'],
    ['畑の車', 'job'],
    ['CON', 'job-con'],
    ['nul', 'job-nul'],
    ['Com1', 'job-com1'],
    ['com¹', 'job-com1'],
    ['con.txt', 'con-txt'],
    ['\u202Evan\n', 'van'],
    ['x'.repeat(80), 'x'.repeat(40)],
    [`${'x'.repeat(39)} van`, 'x'.repeat(39)],
  ])('"%s" becomes %s', (text, name) => {
    expect(slug(text)).toBe(name);
  });

  test('any text becomes a name that every system takes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 100 }), (text) => {
        const name = slug(text);
        expect(name).toMatch(/^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/);
        expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)$/);
        expect(slug(name)).toBe(name);
      }),
      { seed: 54, numRuns: 2000 },
    );
  });

  test('a session is called by day, time, vehicle and complaint', () => {
    expect(sessionId('2026-04-11T10:42:07.123+02:00', 'Orchard van', 'no-supply')).toBe(
      '2026-04-11-1042-orchard-van-no-supply',
    );
  });
});
