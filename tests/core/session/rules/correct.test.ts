import { describe, expect, test } from 'vitest';
import type { Action, ActionOf } from '../../../../src/core/session/action.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { after, keptPhoto, stampAt } from '../../../helpers/story.ts';
import { smallShop, smallTree, smallTreeData } from '../../../helpers/tree.ts';

type Correction = Omit<ActionOf<'correct'>, 'do' | 'n'>;

const correct = (first: Action, correction: Correction, ...rest: readonly Action[]) => {
  const { story, events } = after([...rest, first]);
  const decision = decide(
    story,
    { do: 'correct', n: events.length, ...correction },
    { tree: () => undefined },
  );
  return decision.kind === 'refused' ? decision.problem.code : decision.payloads[0];
};

const look: Action = { do: 'find', check: 'look', result: 'burnt', told: '2026-04-11T09:00' };
const repair: Action = { do: 'repair', cause: 'fuse', parts: ['fuse'] };

describe('correcting', () => {
  test.each([
    [
      'a finding',
      look,
      { result: 'whole' },
      { kind: 'found', check: 'look', result: 'whole', told: '2026-04-11T09:00+00:00' },
    ],
    ['a note', { do: 'note', text: 'a' }, { text: 'b' }, { kind: 'noted', text: 'b' }],
    [
      'a reason',
      { do: 'skip', check: 'look', reason: 'a' },
      { text: 'b' },
      { kind: 'skipped', check: 'look', reason: 'b' },
    ],
    [
      'a caption',
      { do: 'photo', file: 'f', caption: 'a' },
      { text: 'b' },
      { kind: 'photographed', ...keptPhoto, caption: 'b' },
    ],
    [
      'a part',
      { do: 'part-off', part: 'a' },
      { text: 'b' },
      { kind: 'part-off', part: 'b', bag: 1 },
    ],
    [
      'a thing to do',
      { do: 'follow-up', text: 'a' },
      { text: 'b' },
      { kind: 'follow-up', text: 'b', urgency: 'noticed' },
    ],
    [
      'a condemned cause',
      { do: 'condemn', cause: 'fuse' },
      { cause: 'wire' },
      { kind: 'condemned', cause: 'wire' },
    ],
    [
      'a repair',
      repair,
      { cause: 'wire', text: 'spliced' },
      { kind: 'repaired', cause: 'wire', did: 'spliced', parts: ['fuse'], acknowledged: [] },
    ],
  ] as const)('%s says what it should have been', (_, first, correction, to) => {
    expect(correct(first as Action, correction)).toEqual({ kind: 'corrected', of: 1, to });
  });

  test('a reading is judged anew', () => {
    expect(
      correct(
        { do: 'find', check: 'volts', result: 'dead' },
        { reading: '12.5', reason: 'misread' },
      ),
    ).toEqual({
      kind: 'corrected',
      of: 3,
      reason: 'misread',
      to: {
        kind: 'found',
        check: 'volts',
        result: 'full',
        reading: { value: 12.5, unit: 'V', typed: '12.5' },
      },
    });
  });

  test('a proof is judged anew', () => {
    expect(correct({ do: 'prove', result: 'dark' }, { result: 'lit' }, repair)).toMatchObject({
      to: { kind: 'proved', result: 'lit', good: true },
    });
    expect(
      correct({ do: 'prove', result: 'lit' }, { result: 'lit', orResult: 'dark' }, repair),
    ).toMatchObject({
      to: { good: false },
    });
  });

  test('taken back, it says nothing in its place', () => {
    expect(correct(look, { withdraw: true, reason: 'wrong fuse' })).toEqual({
      kind: 'corrected',
      of: 1,
      reason: 'wrong fuse',
    });
  });

  test.each([
    ['with nothing', { do: 'note', text: 'a' }, {}, 'nothing-to-correct'],
    ['a finding with nothing', look, {}, 'no-answer'],
    ['a finding with a result it has not', look, { result: 'x' }, 'unknown-result'],
    [
      'a reading with an implausible one',
      { do: 'find', check: 'volts', reading: 1 },
      { reading: 99 },
      'implausible',
    ],
    ['a repair with a cause that is not', repair, { cause: 'bulb' }, 'unknown-cause'],
    ['a check begun', { do: 'begin', check: 'look' }, { text: 'volts' }, 'nothing-to-correct'],
    ['a standing', { do: 'standing', key: 'run' }, { text: 'off' }, 'nothing-to-correct'],
    ['a pause', { do: 'pause' }, { withdraw: true }, 'not-correctable'],
  ] as const)('%s is refused', (_, first, correction, code) => {
    expect(correct(first as Action, correction)).toBe(code);
  });

  test('what was taken back or is a correction itself cannot be corrected', () => {
    const { story } = after([look, { do: 'correct', n: 1, withdraw: true }]);
    const again = (n: number) =>
      decide(story, { do: 'correct', n, result: 'whole' }, { tree: () => undefined });

    expect(again(1)).toMatchObject({ problem: { code: 'not-correctable' } });
    expect(again(2)).toMatchObject({ problem: { code: 'not-correctable' } });
  });

  test('a finding of the tree before can still be corrected', () => {
    const { events, header } = after([look]);
    const { lamp, volts } = smallTreeData().checks;
    const checks = {
      lamp: { ...lamp, results: lamp.results.map(({ id, label }) => ({ id, label })) },
      volts,
    };
    const whole = smallTree({ id: 'other', checks, start: 'volts' });
    const leg = {
      n: 2,
      ...stampAt(2),
      kind: 'leg' as const,
      tree: 'other',
      whole,
      shop: smallShop,
    };
    const story = fold(header, [...events, leg]);

    const decision = decide(
      story,
      { do: 'correct', n: 1, result: 'whole' },
      { tree: () => undefined },
    );
    expect(decision.kind).toBe('accepted');
  });
});

describe('proofs and trees', () => {
  test('the new complaint shown after an unproven repair is no proof of that repair', () => {
    const { events, header } = after([repair]);
    const leg = {
      n: 2,
      ...stampAt(2),
      kind: 'leg' as const,
      tree: 'other',
      whole: smallTree({ id: 'other' }),
      shop: smallShop,
    };
    const story = fold(header, [...events, leg]);

    const decision = decide(
      story,
      { do: 'find', check: 'lamp', result: 'dark' },
      { tree: () => undefined },
    );
    expect(decision.kind === 'accepted' && decision.payloads.map(({ kind }) => kind)).toEqual([
      'found',
    ]);
  });
});
