import { describe, expect, test } from 'vitest';
import { Action } from '../../../../src/core/session/action.ts';
import type { World } from '../../../../src/core/session/rules/ruling.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { after, headerFor, verdict } from '../../../helpers/story.ts';
import { smallShop, smallTree, waitingChecks } from '../../../helpers/tree.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const fuse: Action = { do: 'repair', cause: 'fuse' };
const wire: Action = { do: 'repair', cause: 'wire' };
const good: Action = { do: 'prove', result: 'lit' };
const failed: Action = { do: 'prove', result: 'dark' };
const nowhere: World = { tree: () => undefined };

const told = (before: readonly Action[], action: Action, world = nowhere) => {
  const decision = decide(after(before).story, action, world);
  return decision.kind === 'refused'
    ? { refused: decision.problem.code }
    : { said: decision.payloads, warnings: decision.warnings };
};
const kinds = (before: readonly Action[], action: Action) =>
  (told(before, action).said ?? []).map(({ kind }) => kind);
const warnings = (before: readonly Action[], action: Action) => told(before, action).warnings;

describe('what happens', () => {
  test.each([
    ['a finding', [], dark, ['found']],
    [
      'a finding behind a panel opens it and turns the key',
      [dark],
      { do: 'find', check: 'volts', reading: '12' },
      ['access', 'standing', 'found'],
    ],
    [
      'nothing is implied twice',
      [{ do: 'find', check: 'volts', reading: '12' }],
      { do: 'find', check: 'volts', reading: '12' },
      ['found'],
    ],
    [
      'unsure behind a panel opened it all the same',
      [],
      { do: 'unsure', check: 'volts' },
      ['access', 'standing', 'unsure'],
    ],
    [
      'what is passed over opens nothing',
      [],
      { do: 'skip', check: 'volts', reason: 'x' },
      ['skipped'],
    ],
    [
      'cautions read are written before the answer',
      [],
      { do: 'find', check: 'volts', reading: '12.6', acknowledged: true },
      ['check-begun', 'access', 'standing', 'found'],
    ],
    [
      'cautions that stand beside the check in short are not said to be read',
      [],
      { do: 'find', check: 'look', result: 'whole', acknowledged: true },
      ['found'],
    ],
    ['a repair with the battery off', [], wire, ['standing', 'access', 'repaired']],
    ['a proof', [fuse], good, ['proved']],
    ['finding the complaint after a repair is the proof', [fuse], dark, ['proved']],
    ['finding it again after a failed proof is a finding', [fuse, failed], dark, ['found']],
    ['a pause', [], { do: 'pause' }, ['paused']],
    ['a timer', [], { do: 'timer', label: 'cool', minutes: 5 }, ['timer']],
  ] as const)('%s', (_, before, action, expected) => {
    expect(kinds(before as readonly Action[], Action.parse(action))).toEqual(expected);
  });

  test('what is implied says so', () => {
    expect(told([dark], { do: 'find', check: 'volts', reading: '12' }).said?.slice(0, 2)).toEqual([
      { kind: 'access', access: 'dash', now: 'open', implied: true },
      { kind: 'standing', set: { key: 'run' }, implied: true },
    ]);
  });

  test('a proof is good only by its first result, and only for certain', () => {
    const goodness = (action: Action) =>
      told([fuse], action).said?.map((one) => 'good' in one && one.good);

    expect(goodness(good)).toEqual([true]);
    expect(goodness(failed)).toEqual([false]);
    expect(goodness({ do: 'prove', result: 'lit', orResult: 'dark' })).toEqual([false]);
  });

  test('told when it was, an action keeps that time', () => {
    expect(told([], { ...dark, told: '2026-04-11T09:30' }).said).toMatchObject([
      { told: '2026-04-11T09:30' },
    ]);
  });

  test('a repair keeps what was done, with what, how long and for how much', () => {
    const action: Action = {
      do: 'repair',
      cause: 'fuse',
      text: 'new fuse',
      parts: ['fuse'],
      minutes: 4,
      cost: '1.20',
      acknowledged: true,
    };

    expect(told([], action).said).toEqual([
      {
        kind: 'repaired',
        cause: 'fuse',
        did: 'new fuse',
        parts: ['fuse'],
        minutes: 4,
        cost: '1.20',
        acknowledged: ['hot'],
      },
    ]);
  });

  test('what is open or off at the close is written and told', () => {
    const before: Action[] = [
      { do: 'access', open: 'dash' },
      { do: 'part-off', part: 'bezel' },
    ];

    expect(told(before, { do: 'close', as: 'given-up' })).toEqual({
      said: [{ kind: 'closed', as: 'given-up', leftOpen: ['Dash panel off', 'bezel (bag 1)'] }],
      warnings: ['Not closed up again: Dash panel off.', 'Still off: bezel (bag 1).'],
    });
  });

  test('closed without saying how, it is fixed only if proven', () => {
    expect(told([dark, fuse, good], { do: 'close' }).said).toMatchObject([{ as: 'fixed' }]);
    expect(told([dark, fuse], { do: 'close' }).said).toMatchObject([{ as: 'handed-on' }]);
  });

  test('another tree goes into the file whole, with its part of the shop', () => {
    const other = smallTree({ id: 'other' });
    const world: World = {
      tree: (id) => (id === 'other' ? { tree: other, shop: smallShop } : undefined),
    };

    expect(told([], { do: 'leg', tree: 'other', reason: 'r' }, world).said).toEqual([
      {
        kind: 'leg',
        tree: 'other',
        reason: 'r',
        whole: other,
        shop: { ...smallShop, sources: {} },
      },
    ]);
    expect(
      told([], { do: 'leg', tree: 'no-light' }, { tree: () => ({ tree: other, shop: smallShop }) }),
    ).toEqual({ refused: 'same-tree' });
  });
});

describe('what the mechanic should hear', () => {
  test('a caution that must be read and was not', () => {
    const volts: Action = { do: 'find', check: 'volts', reading: '12' };
    const before: Action[] = [{ do: 'find', check: 'look', result: 'whole' }];

    expect(warnings(before, volts)).toEqual(['Caution not acknowledged: Spark.']);
    expect(warnings(before, { ...volts, acknowledged: true })).toEqual([]);
    expect(
      warnings([...before, { do: 'begin', check: 'volts', acknowledged: true }], volts),
    ).toEqual([]);
    expect(warnings([], wire)).toEqual(['Caution not acknowledged: Spark.']);
    expect(warnings([{ do: 'condemn', cause: 'wire', acknowledged: true }], wire)).toEqual([]);
  });

  test('of a caution that is only to be seen, nothing', () => {
    expect(warnings([], { do: 'find', check: 'look', result: 'whole' })).toEqual([]);
  });

  test('of a check whose gate was opened by one that shows the same, nothing', () => {
    const { look, ...checks } = waitingChecks();
    const again = { ...look, ask: 'Is it whole by lamp?', same: 'fuse' };
    const same = headerFor(
      smallTree({ checks: { ...checks, look: { ...look, same: 'fuse' }, again } }),
    );
    const warned = (result: string) => {
      const { story } = after([{ do: 'find', check: 'again', result }], same);
      const decision = decide(story, { do: 'begin', check: 'volts' }, nowhere);
      return decision.kind === 'refused' ? undefined : decision.warnings;
    };

    expect(warned('whole')).toEqual([]);
    expect(warned('burnt')).toBeUndefined();
  });
});

describe('a check that means nothing yet', () => {
  const volts: Action = { do: 'find', check: 'volts', reading: '12', acknowledged: true };
  const waiting = headerFor(smallTree({ checks: waitingChecks() }));
  const seen = (result: string): Action => ({ do: 'find', check: 'look', result });
  const refusal = (before: readonly Action[], action: Action) => {
    const decision = decide(after(before, waiting).story, action, nowhere);
    return decision.kind === 'refused' ? decision.problem : undefined;
  };

  test('is neither begun nor counted before the other has shown good; one line says what comes first', () => {
    const first = {
      code: 'too-early',
      message: 'This can be judged only after "Is the fuse whole?" has shown good.',
      mend: 'Make that check first: "look".',
    };

    expect(refusal([], { do: 'begin', check: 'volts' })).toMatchObject(first);
    expect(refusal([], volts)).toMatchObject(first);
    expect(refusal([seen('burnt')], volts)?.mend).toBe(
      'It has not: mend what it shows, or make another check.',
    );
    expect(refusal([seen('whole')], volts)).toBeUndefined();
  });

  test('may be passed by, or not be told, at any time', () => {
    expect(refusal([], { do: 'skip', check: 'volts', reason: 'rusted in' })).toBeUndefined();
    expect(refusal([], { do: 'unsure', check: 'volts' })).toBeUndefined();
  });
});

describe('an intermittent complaint', () => {
  const tries = headerFor(smallTree({ complaint: { say: 'x', confirm: 'lamp', tries: 3 } }));

  test('is proven only after as many good tries as the tree asks for', () => {
    const { story } = after([dark, fuse, good], tries);

    expect(verdict(story, { do: 'close', as: 'fixed' })).toBe('no-proof');
  });

  test('tried as often as that, it may be closed as fixed', () => {
    const { story } = after([dark, fuse, good, good, good], tries);

    expect(verdict(story, { do: 'close', as: 'fixed' })).toBe('accepted');
  });
});
