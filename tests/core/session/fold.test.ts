import { describe, expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { parseEvent } from '../../../src/core/session/read-event.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { nextNumber } from '../../../src/core/session/story.ts';
import { after, headerFor, stampAt } from '../../helpers/story.ts';
import { smallShop, smallTree, smallTreeData } from '../../helpers/tree.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const burnt: Action = { do: 'find', check: 'look', result: 'burnt' };

describe('the story of a session', () => {
  test('begins with the battery on, key and engine off, nothing open', () => {
    const { story } = after([]);

    expect(story).toMatchObject({
      standing: { battery: 'connected', key: 'off', engine: 'off' },
      open: [],
      findings: [],
      minutes: 0,
      closed: undefined,
    });
    expect(nextNumber(story)).toBe(1);
  });

  test('keeps what was opened in order until it is closed', () => {
    const { story } = after([
      { do: 'access', open: 'dash' },
      { do: 'part-off', part: 'bezel', where: 'tray' },
      { do: 'part-off', part: 'clip' },
      { do: 'part-on', part: 'bezel' },
    ]);

    expect(story.open).toEqual(['dash']);
    expect(story.partsOff).toEqual([{ n: 3, part: 'clip', bag: 2 }]);
    expect(
      after([
        { do: 'access', open: 'dash' },
        { do: 'access', close: 'dash' },
      ]).story.open,
    ).toEqual([]);
  });

  test('a finding takes its check off the lists of what was passed over', () => {
    const passed = after([
      { do: 'skip', check: 'look', reason: 'stuck' },
      { do: 'unsure', check: 'look' },
    ]);
    const found = after([
      { do: 'skip', check: 'look', reason: 'stuck' },
      { do: 'unsure', check: 'look' },
      burnt,
    ]);

    expect([passed.story.skipped.length, passed.story.unsure.length]).toEqual([1, 1]);
    expect([found.story.skipped.length, found.story.unsure.length]).toEqual([0, 0]);
  });

  test('a finding knows how many repairs were made before it', () => {
    const { story } = after([dark, { do: 'repair', cause: 'fuse' }, burnt]);

    expect(story.findings.map(({ check, repairs }) => [check, repairs])).toEqual([
      ['lamp', 0],
      ['look', 1],
    ]);
  });

  test('cautions read are kept by step, each once', () => {
    const { story } = after([
      { do: 'begin', check: 'volts', acknowledged: true },
      { do: 'begin', check: 'volts', acknowledged: true },
      { do: 'condemn', cause: 'fuse', acknowledged: true },
    ]);

    expect(story.acknowledged.map(({ step, cautions }) => [step, cautions])).toEqual([
      ['check:volts', ['spark']],
      ['check:volts', ['spark']],
      ['cause:fuse', ['hot']],
    ]);
  });

  test('conditions, follow-ups and the close are told', () => {
    const { story } = after([
      { do: 'conditions', altitude: '5200' },
      { do: 'conditions', temperature: '70F' },
      { do: 'follow-up', text: 'cracked tire', urgency: 'unsafe' },
      { do: 'close', as: 'handed-on', text: 'to the owner' },
    ]);

    expect(story.conditions).toEqual({
      altitude: { value: 5200, unit: 'ft', typed: '5200' },
      temperature: { value: 70, unit: 'F', typed: '70F' },
    });
    expect(story.followUps).toMatchObject([{ text: 'cracked tire', urgency: 'unsafe' }]);
    expect(story.closed).toMatchObject({ as: 'handed-on', text: 'to the owner', leftOpen: [] });
  });

  test('minutes are those of the events', () => {
    expect(after([dark, burnt]).story.minutes).toBeCloseTo(1, 12);
  });

  test('a kind that is not known is kept and changes nothing', () => {
    const { events, header, story } = after([dark]);
    const unknown = parseEvent({ n: 2, ...stampAt(1), kind: 'smelled' });
    if (unknown === undefined) throw new Error('an unknown kind is an event');

    const later = fold(header, [...events, unknown]);

    expect(later.entries.at(-1)?.event).toEqual(unknown);
    expect({ ...later, entries: [] }).toEqual({ ...story, entries: [] });
    expect(nextNumber(later)).toBe(3);
  });
});

describe('corrections in the story', () => {
  test('a corrected finding counts in its place and says so', () => {
    const { story } = after([dark, burnt, { do: 'correct', n: 2, result: 'whole' }]);

    expect(story.findings.map(({ n, result, corrected }) => [n, result, corrected])).toEqual([
      [1, 'dark', false],
      [2, 'whole', true],
    ]);
    expect(story.due).toEqual({ kind: 'check', check: 'volts', why: 'way' });
  });

  test('a finding taken back leaves its check to be done', () => {
    const { story, events } = after([dark, burnt, { do: 'correct', n: 2, withdraw: true }]);

    expect(story.findings.map(({ check }) => check)).toEqual(['lamp']);
    expect(story.due).toEqual({ kind: 'check', check: 'look', why: 'way' });
    expect(events[1]).toMatchObject({ n: 2, kind: 'found', result: 'burnt' });
  });

  test('a repair taken back is no repair, and what followed knows', () => {
    const { story } = after([
      dark,
      { do: 'repair', cause: 'fuse' },
      { do: 'find', check: 'look', result: 'whole' },
      { do: 'correct', n: 2, withdraw: true },
    ]);

    expect(story.repairs).toEqual([]);
    expect(story.findings.map(({ repairs }) => repairs)).toEqual([0, 0]);
  });

  test('a proof read wrongly becomes a failed one', () => {
    const { story } = after([
      dark,
      { do: 'repair', cause: 'fuse' },
      { do: 'prove', result: 'lit' },
      { do: 'correct', n: 3, result: 'dark' },
    ]);

    expect(story.proofs).toMatchObject([{ result: 'dark', good: false, corrected: true }]);
    expect(story.due.kind).not.toBe('proven');
  });

  test('a proof whose repair is taken back proves nothing', () => {
    const { story } = after([
      dark,
      { do: 'repair', cause: 'fuse' },
      { do: 'prove', result: 'lit' },
      { do: 'correct', n: 2, withdraw: true },
    ]);

    expect(story.due.kind).not.toBe('proven');
  });
});

describe('going on with another tree', () => {
  const other = smallTree({ id: 'other' });
  const leg = { tree: 'other', whole: other, shop: smallShop };
  const withLeg = (said: object) => {
    const { events, header } = after([dark]);
    const event = parseEvent({ n: 2, ...stampAt(2), kind: 'leg', ...said });
    return fold(header, event === undefined ? events : [...events, event]);
  };

  test('begins a leg with its own tree, fitted to the vehicle', () => {
    const story = withLeg({ ...leg, reason: 'no crank' });

    expect(story.legs.map(({ tree, since, reason }) => [tree.id, since, reason])).toEqual([
      ['no-light', 0, undefined],
      ['other', 2, 'no crank'],
    ]);
    expect(story.findings.map((one) => one.leg)).toEqual([0]);
  });

  test.each([
    ['a tree that is none', { ...leg, whole: { id: 'other' } }],
    ['a shop that is none', { ...leg, shop: 7 }],
  ])('with %s stays on the tree it has', (_, said) => {
    expect(withLeg(said).legs).toHaveLength(1);
  });

  test('a header that names a tree it does not hold is our own mistake', () => {
    expect(() => fold({ ...headerFor(), tree: 'gone' }, [])).toThrow('does not hold');
  });

  test('the vehicle has the tree that its facts allow', () => {
    const data = smallTreeData();
    const causes = { ...data.causes, fuse: { ...data.causes.fuse, when: { choke: 'manual' } } };
    const header = headerFor(smallTree({ causes }), smallShop, { choke: 'automatic' });

    expect(Object.keys(fold(header, []).legs[0]?.tree.causes ?? {})).toEqual(['wire']);
  });
});
