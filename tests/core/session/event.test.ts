import { describe, expect, test } from 'vitest';
import { eventKinds, newEvent, parseEvent, parsePayload } from '../../../src/core/session/event.ts';
import type { Payload } from '../../../src/core/session/event.ts';
import { stampAt } from '../../helpers/story.ts';

const amount = { value: 12.4, unit: 'V', typed: '12,4' };

/** One of every kind, with everything that it can say. */
const said: readonly Payload[] = [
  { kind: 'conditions', set: { altitude: { value: 5200, unit: 'ft' } } },
  { kind: 'standing', set: { battery: 'disconnected', key: 'off' }, implied: true },
  { kind: 'access', access: 'dash', now: 'open', implied: true },
  { kind: 'check-begun', check: 'look', acknowledged: ['hot'] },
  {
    kind: 'found',
    check: 'volts',
    result: 'full',
    orResult: 'low',
    reading: amount,
    insisted: true,
  },
  { kind: 'unsure', check: 'look', told: '2026-04-11T10:00+02:00' },
  { kind: 'skipped', check: 'look', reason: 'rusted in' },
  { kind: 'noted', text: 'n', about: 'look' },
  { kind: 'photographed', file: 'a.jpg', caption: 'c', about: 'look' },
  { kind: 'part-off', part: 'bezel', where: 'tray' },
  { kind: 'part-on', part: 'bezel' },
  { kind: 'timer', label: 'cool down', minutes: 10 },
  { kind: 'condemned', cause: 'wire', acknowledged: ['spark'] },
  {
    kind: 'repaired',
    cause: 'wire',
    did: 'spliced',
    parts: ['sleeve'],
    minutes: 20,
    cost: '2.50',
    acknowledged: [],
  },
  { kind: 'proved', check: 'lamp', result: 'lit', good: true },
  { kind: 'leg', tree: 'no-crank', reason: 'r', whole: {}, shop: {} },
  { kind: 'corrected', of: 3, to: { kind: 'noted', text: 'x' }, reason: 'typo' },
  { kind: 'follow-up', urgency: 'soon', text: 'tires' },
  { kind: 'paused' },
  { kind: 'resumed', torn: 17 },
  { kind: 'closed', as: 'fixed', text: 't', leftOpen: ['bezel'] },
];

describe('events of a session', () => {
  test('the table below holds every kind there is', () => {
    expect(said.map(({ kind }) => kind)).toEqual(eventKinds);
  });

  test.each(said.map((payload) => [payload.kind, payload] as const))(
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
