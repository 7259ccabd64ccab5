import { describe, expect, test } from 'vitest';
import { eventKinds } from '../../../src/core/session/event.ts';
import { newEvent, parseEvent, parsePayload } from '../../../src/core/session/read-event.ts';
import { everyKind } from '../../helpers/every-kind.ts';
import { stampAt } from '../../helpers/story.ts';

describe('events of a session', () => {
  test('the table below holds every kind there is', () => {
    expect([...new Set(everyKind.map(({ kind }) => kind))].toSorted()).toEqual(
      eventKinds.toSorted(),
    );
  });

  test.each(everyKind.map((payload) => [payload.kind, payload] as const))(
    '%s is read back as it was written',
    (kind, payload) => {
      const event = { n: 7, ...stampAt(7), ...payload };

      expect(parseEvent(JSON.parse(JSON.stringify(event)))).toEqual(event);
      expect(parsePayload(kind, JSON.parse(JSON.stringify(payload)), event.at)).toEqual(payload);
    },
  );

  test('a time told without its offset is written with that of the event', () => {
    const stamp = { ...stampAt(7), at: '2026-11-26T10:00:00.000-05:00' };
    const told = (time: string) => newEvent(7, stamp, { kind: 'noted', text: 'x', told: time });

    expect(told('2026-11-26T02:57')).toMatchObject({ told: '2026-11-26T02:57-05:00' });
    expect(told('2026-11-26T02:57+02:00')).toMatchObject({ told: '2026-11-26T02:57+02:00' });
  });

  test('a kind of a later version is kept as an unknown one', () => {
    const event = { n: 7, ...stampAt(7), kind: 'smelled', of: 'burnt wire' };

    expect(parseEvent(event)).toEqual({ n: 7, ...stampAt(7), kind: 'unknown', was: 'smelled' });
  });

  test('a kind named like an own working of objects is unknown', () => {
    expect(parseEvent({ n: 7, ...stampAt(7), kind: 'constructor' })).toMatchObject({
      kind: 'unknown',
      was: 'constructor',
    });
  });

  test.each([
    ['no number', { ...stampAt(1), kind: 'paused' }],
    ['a number of text', { n: '1', ...stampAt(1), kind: 'paused' }],
    ['a number below nothing', { n: -1, ...stampAt(1), kind: 'paused' }],
    ['no time', { n: 1, kind: 'paused' }],
    ['a kind it does not fit', { n: 1, ...stampAt(1), kind: 'found', check: 'look' }],
    ['a standing that is not', { n: 1, ...stampAt(1), kind: 'standing', set: { key: 'half' } }],
    ['a time without end', { n: 1, ...stampAt(1), up: Infinity, kind: 'paused' }],
    ['nothing at all', null],
    ['a list', [1]],
  ])('a line with %s is no event', (_, value) => {
    expect(parseEvent(value)).toBeUndefined();
  });
});
