import { describe, expect, test } from 'vitest';
import {
  byTime,
  clockTime,
  dateOf,
  isTime,
  offsetOf,
  secondsBetween,
  withOffset,
} from '../../../src/core/session/clock.ts';

describe('a time of the record', () => {
  test('says what the wall said', () => {
    const at = '2026-04-11T10:42:07.000+02:00';

    expect([clockTime(at), dateOf(at), offsetOf(at)]).toEqual(['10:42', '2026-04-11', '+02:00']);
  });

  // The examples of RFC 3339, section 5.8: the first two name one moment each (from memory).
  test.each([
    ['two names of one moment', '1996-12-19T16:39:57-08:00', '1996-12-20T00:39:57Z', 0],
    ['a half-hour zone', '1937-01-01T12:00:27.87+00:20', '1937-01-01T11:40:27.870Z', 0],
    [
      'a day over the end of a year',
      '2026-12-31T23:59:30+01:00',
      '2027-01-01T23:59:30+01:00',
      86_400,
    ],
    ['a leap day', '2028-02-28T12:00Z', '2028-03-01T12:00Z', 2 * 86_400],
    // New York goes from 02:00 to 03:00 on 8 March 2026, Lord Howe back half an hour on 5 April.
    [
      'an hour that another zone leaves out',
      '2026-03-08T01:30+00:00',
      '2026-03-08T02:30+00:00',
      3600,
    ],
    [
      'an hour that another zone has twice',
      '2026-04-05T01:00+11:00',
      '2026-04-05T02:00+11:00',
      3600,
    ],
    ['no offset, which is read as none from Greenwich', '2026-03-08T01:30', '2026-03-08T01:30Z', 0],
    ['no offset on either side', '2026-03-08T01:30', '2026-03-08T03:30', 7200],
  ])('%s is measured by its offset alone', (_, from, to, seconds) => {
    expect(secondsBetween(from, to)).toBe(seconds);
  });

  test('that is none has no distance', () => {
    expect(secondsBetween('noon', '2026-04-11T10:42Z')).toBeUndefined();
  });

  test('keeps its own offset, and takes that of another where it has none', () => {
    expect(withOffset('2026-11-26T02:57', '2026-11-26T10:00:00.000-05:00')).toBe(
      '2026-11-26T02:57-05:00',
    );
    expect(withOffset('2026-11-26T02:57Z', '2026-11-26T10:00-05:00')).toBe('2026-11-26T02:57Z');
    expect(withOffset('2026-11-26', '2026-11-26')).toBe('2026-11-26');
  });

  test('is put in order by its moment, not by its letters', () => {
    const [earlier, later] = ['2026-04-11T10:00+02:00', '2026-04-11T09:30Z'];

    expect([later, earlier].toSorted(byTime)).toEqual([earlier, later]);
  });

  test.each([
    ['2026-04-11T10:42', true],
    ['2026-04-11T10:42+10:30', true],
    ['2026-04-31T10:42', false],
    ['2026-04-11T25:10', false],
    ['noon', false],
  ])('%s is a time: %s', (text, is) => {
    expect(isTime(text)).toBe(is);
  });
});
