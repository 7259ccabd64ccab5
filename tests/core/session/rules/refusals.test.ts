import { describe, expect, test } from 'vitest';
import { Action } from '../../../../src/core/session/action.ts';
import type { World } from '../../../../src/core/session/rules/ruling.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { after, headerFor, verdict } from '../../../helpers/story.ts';
import { smallTree } from '../../../helpers/tree.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const fuse: Action = { do: 'repair', cause: 'fuse' };
const wire: Action = { do: 'repair', cause: 'wire' };
const good: Action = { do: 'prove', result: 'lit' };
const failed: Action = { do: 'prove', result: 'dark' };
const nowhere: World = { tree: () => undefined };

describe('what may not happen', () => {
  test.each([
    ['a check that is not', [], { do: 'begin', check: 'lok' }, 'unknown-check'],
    [
      'finding at a check that is not',
      [],
      { do: 'find', check: 'lok', result: 'x' },
      'unknown-check',
    ],
    ['unsure of a check that is not', [], { do: 'unsure', check: 'lok' }, 'unknown-check'],
    [
      'passing over a check that is not',
      [],
      { do: 'skip', check: 'lok', reason: 'x' },
      'unknown-check',
    ],
    ['passing over without a reason', [], { do: 'skip', check: 'look', reason: '  ' }, 'no-reason'],
    [
      'unsure between results that are not',
      [],
      { do: 'unsure', check: 'look', between: ['whole', 'x'] },
      'unknown-result',
    ],
    ['an empty note', [], { do: 'note', text: ' \n' }, 'empty-note'],
    ['condemning a cause that is not', [], { do: 'condemn', cause: 'bulb' }, 'unknown-cause'],
    ['repairing a cause that is not', [], { do: 'repair', cause: 'bulb' }, 'unknown-cause'],
    ['a proof before any repair', [dark], good, 'no-repair'],
    [
      'a proof by another check',
      [dark, fuse],
      { do: 'prove', check: 'look', result: 'whole' },
      'not-the-proof',
    ],
    ['a proof after a failed one', [dark, fuse, failed], good, 'already-proved'],
    ['a proof with no answer', [dark, fuse], { do: 'prove' }, 'no-answer'],
    ['closing as fixed with nothing repaired', [dark], { do: 'close', as: 'fixed' }, 'no-repair'],
    ['closing as fixed unproven', [dark, fuse], { do: 'close', as: 'fixed' }, 'no-proof'],
    [
      'closing as fixed after a failed proof',
      [dark, fuse, failed],
      { do: 'close', as: 'fixed' },
      'no-proof',
    ],
    [
      'closing as fixed when repaired since',
      [dark, fuse, good, wire],
      { do: 'close', as: 'fixed' },
      'no-proof',
    ],
    [
      'closing as fixed when it failed since',
      [dark, fuse, good, failed],
      { do: 'close', as: 'fixed' },
      'no-proof',
    ],
    ['opening what is not there', [], { do: 'access', open: 'floor' }, 'unknown-access'],
    [
      'opening twice',
      [{ do: 'access', open: 'dash' }],
      { do: 'access', open: 'dash' },
      'already-open',
    ],
    ['closing what is not open', [], { do: 'access', close: 'dash' }, 'not-open'],
    ['opening nothing', [], { do: 'access' }, 'no-access'],
    ['opening and closing in one', [], { do: 'access', open: 'dash', close: 'dash' }, 'no-access'],
    ['a standing of nothing', [], { do: 'standing' }, 'no-standing'],
    ['taking off what was not put on', [], { do: 'aid-off', aid: 'jumper' }, 'aid-not-on'],
    ['putting on what is not off', [], { do: 'part-on', part: 'bezel' }, 'part-not-off'],
    [
      'an altitude in the sky',
      [],
      { do: 'conditions', altitude: '60000' },
      'condition-out-of-range',
    ],
    [
      'a temperature that is none',
      [],
      { do: 'conditions', temperature: 'warm' },
      'reading-not-a-number',
    ],
    ['a tree the library has not', [], { do: 'leg', tree: 'no-crank' }, 'unknown-tree'],
    [
      'an event that is not there',
      [dark],
      { do: 'correct', n: 9, withdraw: true },
      'no-such-event',
    ],
  ] as const)('%s is refused with code, message and mend', (_, before, action, code) => {
    const decision = decide(
      after(before as readonly Action[]).story,
      Action.parse(action),
      nowhere,
    );

    expect(decision).toMatchObject({
      kind: 'refused',
      problem: {
        code,
        message: expect.stringMatching(/\.$/) as unknown,
        mend: expect.stringMatching(/[.?]$/) as unknown,
      },
    });
  });

  test('after closing only notes, photos and follow-ups are taken', () => {
    const { story } = after([dark, { do: 'close' }]);

    expect(verdict(story, { do: 'note', text: 'n' })).toBe('accepted');
    expect(verdict(story, { do: 'photo', file: 'a.jpg', caption: 'c' })).toBe('accepted');
    expect(verdict(story, { do: 'follow-up', text: 'n' })).toBe('accepted');
    expect(verdict(story, dark)).toBe('closed');
    expect(verdict(story, { do: 'correct', n: 1, withdraw: true })).toBe('closed');
    expect(verdict(story, { do: 'close' })).toBe('closed');
  });

  test('as fixed while nobody has looked for what brought the cause about', () => {
    const tree = smallTree();
    for (const cause of Object.values(tree.causes).slice(0, 1)) cause.because = ['wire'];
    const open = after([dark, { do: 'repair', cause: 'fuse' }, good], headerFor(tree)).story;
    const close: Action = { do: 'close', as: 'fixed' };

    expect(verdict(open, close)).toBe('reason-unasked');
    expect(verdict(open, { do: 'close', as: 'handed-on' })).toBe('accepted');
    const passed = after(
      [dark, fuse, { do: 'skip', check: 'volts', reason: 'dash stays shut' }, good],
      headerFor(tree),
    ).story;
    expect(verdict(passed, close)).toBe('accepted');
  });

  test('a name that is nearly right is offered', () => {
    const decision = decide(after([]).story, { do: 'begin', check: 'loo' }, nowhere);

    expect(decision).toMatchObject({ problem: { mend: 'Did you mean look?', value: 'loo' } });
  });
});
