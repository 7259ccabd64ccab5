import type { Payload } from '../../src/core/session/event.ts';

const amount = { value: 12.4, unit: 'V', typed: '12,4' };

/** One of every kind, with everything that it can say. */
export const everyKind: readonly Payload[] = [
  { kind: 'conditions', set: { altitude: { value: 5200, unit: 'ft' } }, notKnown: ['temperature'] },
  { kind: 'standing', set: { battery: 'disconnected', key: 'off' }, implied: true },
  { kind: 'access', access: 'dash', now: 'open', implied: true },
  {
    kind: 'check-begun',
    check: 'look',
    acknowledged: ['hot'],
    despite: { checks: ['volts'], why: 'w' },
  },
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
  {
    kind: 'noted',
    text: 'n',
    about: 'look',
    figure: {
      figure: 'ohms-law',
      inputs: { volts: { value: 12, unit: 'V' } },
      outputs: { amps: { value: 4, unit: 'A' } },
      verdict: 'more than the wire takes',
      source: 'the law itself',
      mark: 'published',
    },
  },
  { kind: 'photographed', file: 'a.jpg', caption: 'c', about: 'look' },
  { kind: 'part-off', part: 'bezel', where: 'tray' },
  { kind: 'part-on', part: 'bezel' },
  { kind: 'timer', label: 'cool down', minutes: 10 },
  { kind: 'condemned', cause: 'wire', found: 'chafed at the clip', acknowledged: ['spark'] },
  {
    kind: 'repaired',
    cause: 'wire',
    did: 'spliced',
    parts: ['sleeve'],
    minutes: 20,
    cost: '2.50',
    acknowledged: [],
  },
  {
    kind: 'described',
    of: 12,
    did: 'spliced',
    parts: ['2 x sleeve at 0.40'],
    minutes: 9,
    cost: '1',
  },
  { kind: 'proved', check: 'lamp', result: 'lit', good: true },
  { kind: 'leg', tree: 'no-crank', reason: 'r', whole: {}, shop: {} },
  { kind: 'corrected', of: 3, to: { kind: 'noted', text: 'x' }, reason: 'typo' },
  { kind: 'settled', as: 'new-since', check: 'look', earlier: 2, later: 5 },
  { kind: 'follow-up', urgency: 'soon', text: 'tires' },
  { kind: 'paused' },
  { kind: 'resumed', torn: 17 },
  { kind: 'closed', as: 'fixed', text: 't', leftOpen: ['bezel'] },
];
