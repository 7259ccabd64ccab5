import { describe, expect, test } from 'vitest';
import { endingsOf } from '../../../../src/app/walk/lists.ts';
import { writeUp } from '../../../../src/core/account/account.ts';
import { stepWords } from '../../../../src/core/reason/history/wording.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { after, headerFor, verdict } from '../../../helpers/story.ts';
import { smallTree, smallTreeData } from '../../../helpers/tree.ts';

const triage = 'an inspection releases it.';
const sorting = smallTree({ format: 2, triage });
const sorted = (...actions: readonly Action[]) => after(actions, headerFor(sorting)).story;

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const burnt: Action = { do: 'find', check: 'look', result: 'burnt' };
const named: Action = { do: 'condemn', cause: 'fuse' };
const fixed: Action = { do: 'close', as: 'fixed' };
const record = { events: 4, passedOver: 0, link: 'ab'.repeat(32) };

describe('a tree that only sorts', () => {
  test('ends with a cause named as handed to inspection, and what to tell it', () => {
    const { due } = sorted(dark, burnt, named);

    expect(due).toEqual({
      kind: 'stop',
      reason: expect.stringMatching(
        /^Handed to inspection: an inspection releases it\. \w/,
      ) as string,
    });
  });

  test('mends nothing, proves nothing, and is never closed as fixed', () => {
    const story = sorted(dark, burnt, named);

    expect(verdict(story, { do: 'repair', cause: 'fuse' })).toBe('only-sorts');
    expect(verdict(story, { do: 'prove', result: 'lit' })).toBe('no-repair');
    expect(verdict(story, fixed)).toBe('for-inspection');
    expect(sorted(dark, named, { do: 'close' }).closed?.as).toBe('handed-on');
  });

  test('is offered for inspection where a session is closed', () => {
    expect(endingsOf(sorted(dark)).map(({ label }) => label)).toEqual([
      'handed to inspection',
      'given up',
      'the complaint could not be made to happen',
    ]);
    expect(endingsOf(after([dark]).story).map(({ as }) => as)).toContain('fixed');
  });

  test('says so in the account, closed or not', () => {
    const told = (...actions: readonly Action[]) =>
      writeUp(sorted(dark, burnt, named, ...actions), record).markdown;

    expect(told()).toContain(
      'Still to be inspected: an inspection releases it. Nothing was repaired.',
    );
    expect(told({ do: 'close' })).toContain('Handed to inspection: an inspection releases it.');
    expect(told({ do: 'close' })).toContain('closed by handing the vehicle to inspection');
    expect(told({ do: 'close' })).not.toContain('Proven');
  });

  test('names a cause for the inspection, and advises no repair', () => {
    expect(stepWords(sorting, { do: 'repair', id: 'fuse' })).toMatch(/^for the inspection: /);
  });
});

describe('a cause that only an inspection releases, in a tree that mends the others', () => {
  const { causes } = smallTreeData();
  const mixed = smallTree({ causes: { ...causes, fuse: { ...causes.fuse, triage } } });
  const told = (...actions: readonly Action[]) => after(actions, headerFor(mixed)).story;

  test('is handed on once it is named, never mended and never closed as fixed', () => {
    const story = told(dark, burnt, named);

    expect(story.due).toMatchObject({ kind: 'stop' });
    expect(verdict(story, { do: 'repair', cause: 'fuse' })).toBe('only-sorts');
    expect(verdict(story, fixed)).toBe('for-inspection');
    expect(endingsOf(story).map(({ label }) => label)).toContain('handed to inspection');
    expect(writeUp(story, record).markdown).toContain(`Still to be inspected: ${triage}`);
  });

  test('binds nothing while another one is named', () => {
    const other = told(dark, { do: 'condemn', cause: 'wire' });

    expect(other.due).toEqual({ kind: 'repair', cause: 'wire' });
    expect(endingsOf(other).map(({ as }) => as)).toContain('fixed');
    expect(stepWords(mixed, { do: 'repair', id: 'wire' })).toMatch(/^repair: /);
    expect(stepWords(mixed, { do: 'repair', id: 'fuse' })).toMatch(/^for the inspection: /);
  });

  test('binds no more once it was looked at and is not it', () => {
    const looked = told(dark, burnt, named, { do: 'not-this', cause: 'fuse' });

    expect(endingsOf(looked).map(({ as }) => as)).toContain('fixed');
  });
});
