import { describe, expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { nextNumber, type Story } from '../../../../src/core/session/story.ts';
import { guardedAfter, opened, see } from '../../../helpers/guarded.ts';
import { headerFor, verdict } from '../../../helpers/story.ts';

const world = { tree: () => undefined };
const despite = 'The owner looked at both this morning';

const refusal = (story: Story, action: Action): string => {
  const ruling = decide(story, action, world);
  return ruling.kind === 'refused'
    ? `${ruling.problem.message} ${ruling.problem.mend}`
    : 'accepted';
};

describe('a safeguard that has not been shown', () => {
  const { story } = guardedAfter([]);

  test.each<[string, Action]>([
    ['a check begun', { do: 'begin', check: 'heat-run' }],
    ['a finding', see('heat-run', 'boils')],
    ['a reading', { do: 'find', check: 'timing-light', reading: '6' }],
    ['an unsure answer', { do: 'unsure', check: 'heat-run' }],
    ['one of two', { do: 'unsure', check: 'heat-run', between: ['climbs', 'boils'] }],
    ['the engine run', { do: 'standing', engine: 'idling' }],
    ['the engine cranked', { do: 'standing', engine: 'cranking' }],
    ['the key at START', { do: 'standing', key: 'start' }],
    ['a repair by a running engine', { do: 'repair', cause: 'late' }],
    ['a word without a letter', { do: 'begin', check: 'heat-run', despite: '  ' }],
  ])('refuses %s', (_, action) => {
    expect(verdict(story, action)).toBe('safeguard-shut');
  });

  test.each<[string, Action]>([
    ['its own check', see('oil-look', 'clean')],
    ['what is done with the engine off', see('fan-spin', 'holds')],
    ['the key on', { do: 'standing', key: 'run' }],
    ['the engine stopped', { do: 'standing', engine: 'off' }],
    ['a check passed over', { do: 'skip', check: 'heat-run', reason: 'no driver' }],
    ['a repair by an engine at rest', { do: 'repair', cause: 'fan' }],
    ['a cause named', { do: 'condemn', cause: 'late' }],
  ])('lets by %s', (_, action) => {
    expect(verdict(story, action)).toBe('accepted');
  });

  test('is told by its check, what is known of it, and why it comes first', () => {
    expect(refusal(story, { do: 'standing', engine: 'cranking' })).toBe(
      'A safeguard holds this back: "Is the oil on the dipstick clean?" comes first and has not been made yet. Oil that is milky is coolant in the sump: cranked, a cylinder full of it bends a rod; run, the bearings go in a minute. Make "oil-look" first, or say in "despite" why you go on all the same.',
    );
  });

  test('lets all by once it is shown, and holds again by what shows danger', () => {
    expect(verdict(guardedAfter(opened).story, see('heat-run', 'boils'))).toBe('accepted');

    const milky = guardedAfter([see('cold-level', 'low'), see('oil-look', 'milky')]).story;
    expect(refusal(milky, see('heat-run', 'boils'))).toContain(
      'comes first and showed "milky, or cream under the cap".',
    );
  });

  test('holds what may be either of two results, and what was passed over', () => {
    const { story: either } = guardedAfter([
      see('cold-level', 'low'),
      { do: 'unsure', check: 'oil-look', between: ['clean', 'milky'] },
    ]);
    expect(refusal(either, see('heat-run', 'boils'))).toContain(
      'showed "clean oil or milky, or cream under the cap"',
    );

    const { story: skipped } = guardedAfter([
      see('cold-level', 'low'),
      { do: 'skip', check: 'oil-look', reason: 'stick broken' },
    ]);
    expect(refusal(skipped, see('heat-run', 'boils'))).toContain('was passed over');
  });

  test('is stale after a repair that may have changed it', () => {
    const { story: mended } = guardedAfter([
      ...opened,
      see('heat-run', 'boils'),
      see('cold-level', 'empty'),
      { do: 'repair', cause: 'gasket' },
    ]);

    expect(refusal(mended, { do: 'prove', result: 'steady' })).toContain(
      '"How high is the coolant, cold?" comes first and has not been made again since the repair.',
    );
  });

  test('holds a repair that is said to have been another one', () => {
    const { story: mended } = guardedAfter([{ do: 'repair', cause: 'fan' }]);
    const n = nextNumber(mended) - 1;

    expect(verdict(mended, { do: 'correct', n, cause: 'late' })).toBe('safeguard-shut');
    expect(verdict(mended, { do: 'correct', n, cause: 'pump' })).toBe('accepted');
  });
});

describe('an own word', () => {
  test('is kept with the step, by the safeguards that it passed, and told in the story', () => {
    const { story, events } = guardedAfter([{ ...see('heat-run', 'boils'), despite }]);

    expect(events[0]).toMatchObject({
      kind: 'check-begun',
      check: 'heat-run',
      despite: { checks: ['oil-look', 'cold-level'], why: despite },
    });
    expect(events.at(-1)?.kind).toBe('found');
    expect(story.passed).toMatchObject([
      {
        n: 1,
        step: { kind: 'check', check: 'heat-run' },
        why: despite,
        holds: [
          { check: 'oil-look', seen: { kind: 'nothing' } },
          { check: 'cold-level', seen: { kind: 'nothing' } },
        ],
      },
    ]);
  });

  test('holds for the step in hand and what it wants set, and no further', () => {
    const { story } = guardedAfter([{ do: 'begin', check: 'heat-run', despite }]);

    expect(verdict(story, { do: 'standing', engine: 'fast-idle' })).toBe('accepted');
    expect(verdict(story, { do: 'standing', engine: 'road' })).toBe('safeguard-shut');
    expect(verdict(story, see('flow-see', 'weak'))).toBe('safeguard-shut');

    const { story: answered } = guardedAfter([
      { do: 'begin', check: 'heat-run', despite },
      { do: 'standing', engine: 'fast-idle' },
      see('heat-run', 'boils'),
    ]);
    expect(verdict(answered, see('heat-run', 'boils'))).toBe('safeguard-shut');
    expect(verdict(answered, { do: 'standing', engine: 'idling' })).toBe('safeguard-shut');
  });

  test('ends with what is found of the safeguard meanwhile', () => {
    const { story } = guardedAfter([
      { do: 'begin', check: 'heat-run', despite },
      see('oil-look', 'milky'),
    ]);

    expect(verdict(story, see('heat-run', 'boils'))).toBe('safeguard-shut');
  });

  test('for a repair may be given when its cause is named', () => {
    const named: Action = { do: 'condemn', cause: 'late', despite };
    const { story } = guardedAfter([named]);

    expect(verdict(story, { do: 'standing', engine: 'idling' })).toBe('accepted');
    expect(verdict(story, { do: 'repair', cause: 'late' })).toBe('accepted');
    expect(guardedAfter([named, { do: 'repair', cause: 'late' }]).story.passed).toHaveLength(1);
    expect(guardedAfter([{ do: 'repair', cause: 'late', despite }]).story.passed).toMatchObject([
      { step: { kind: 'repair', cause: 'late' }, why: despite },
    ]);
  });

  test('is kept with a change of the vehicle by itself', () => {
    const { story, events } = guardedAfter([{ do: 'standing', engine: 'idling', despite }]);

    expect(events).toMatchObject([{ kind: 'standing', set: { engine: 'idling' }, despite: {} }]);
    expect(story.passed).toMatchObject([{ step: { kind: 'standing' } }]);
    expect(verdict(story, see('flow-see', 'weak'))).toBe('safeguard-shut');
  });

  test('that nothing asked for is not kept, and that is said', () => {
    const ruling = decide(
      guardedAfter(opened).story,
      { ...see('heat-run', 'boils'), despite },
      world,
    );

    expect(ruling).toMatchObject({
      kind: 'accepted',
      warnings: ['No safeguard held this back: the words in "despite" were not kept.'],
    });
    expect(JSON.stringify(ruling)).not.toContain(despite);
  });
});

test('a tree without safeguards holds nothing back', () => {
  const story = fold(headerFor(), []);

  expect(verdict(story, { do: 'standing', engine: 'cranking' })).toBe('accepted');
  expect(story.passed).toEqual([]);
});
