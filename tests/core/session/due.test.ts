import { describe, expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { smallTree, smallTreeData } from '../../helpers/tree.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const lit: Action = { do: 'find', check: 'lamp', result: 'lit' };
const whole: Action = { do: 'find', check: 'look', result: 'whole' };
const burnt: Action = { do: 'find', check: 'look', result: 'burnt' };
const dead: Action = { do: 'find', check: 'volts', reading: '0.2' };
const full: Action = { do: 'find', check: 'volts', reading: '12.6' };
const fuse: Action = { do: 'repair', cause: 'fuse' };
const wire: Action = { do: 'repair', cause: 'wire' };
const good: Action = { do: 'prove', result: 'lit' };
const failed: Action = { do: 'prove', result: 'dark' };

const check = (id: string, why = 'way') => ({ kind: 'check', check: id, why });
const exhausted = (reason: string) => ({ kind: 'exhausted', reason });
const leadsNowhere = 'What would lead on was passed over, or leads nowhere.';
const step = (...actions: readonly Action[]) => after(actions).story.due;
const stepIn = (change: Record<string, unknown>, ...actions: readonly Action[]) =>
  after(actions, headerFor(smallTree(change))).story.due;

describe('what is to be done now', () => {
  test.each([
    ['first the complaint is made to happen', [], check('lamp')],
    ['then the tree begins', [dark], check('look')],
    ['a complaint that does not happen stops', [lit], { kind: 'stop', reason: 'The lamp lights.' }],
    ['an answer leads on', [dark, whole], check('volts')],
    ['an answer names a cause', [dark, burnt], { kind: 'named', cause: 'fuse' }],
    ['a reading names a cause', [dark, whole, dead], { kind: 'named', cause: 'wire' }],
    [
      'a healthy end stops with its reason',
      [dark, whole, full],
      { kind: 'stop', reason: 'Neither fits.' },
    ],
    [
      'a cause condemned is to be repaired',
      [dark, burnt, { do: 'condemn', cause: 'fuse' }],
      { kind: 'repair', cause: 'fuse' },
    ],
    [
      'a cause condemned before the proof of a repair is mended before it',
      [dark, burnt, fuse, { do: 'condemn', cause: 'wire' }],
      { kind: 'repair', cause: 'wire' },
    ],
    [
      'any cause may be condemned',
      [dark, { do: 'condemn', cause: 'wire' }],
      { kind: 'repair', cause: 'wire' },
    ],
    [
      'an answer after it goes on with the way',
      [dark, { do: 'condemn', cause: 'wire' }, whole],
      check('volts'),
    ],
    ['a repair is to be proven', [dark, burnt, fuse], { kind: 'proof', cause: 'fuse' }],
    [
      'a repair may ask for a check again first',
      [dark, whole, dead, wire],
      check('volts', 'repeat'),
    ],
    ['then it is to be proven', [dark, whole, dead, wire, full], { kind: 'proof', cause: 'wire' }],
    [
      'a check to repeat may be passed over',
      [dark, wire, { do: 'skip', check: 'volts', reason: 'no meter' }],
      { kind: 'proof', cause: 'wire' },
    ],
    [
      'a check to repeat may stay unsure',
      [dark, wire, { do: 'unsure', check: 'volts' }],
      { kind: 'proof', cause: 'wire' },
    ],
    ['a good proof is the end', [dark, burnt, fuse, good], { kind: 'proven' }],
    [
      'a failed proof begins at the start; what the repair may have changed is asked anew',
      [dark, burnt, fuse, failed],
      check('look'),
    ],
    [
      'a failed proof may lead to another cause',
      [dark, dead, whole, fuse, failed],
      { kind: 'named', cause: 'wire' },
    ],
    [
      'a cause that is named again after its repair ends the way',
      [dark, burnt, fuse, failed, burnt],
      exhausted('The way names "Fuse burnt" again, which was mended.'),
    ],
    [
      'a second repair is to be proven anew',
      [dark, burnt, fuse, failed, dead, wire, full],
      { kind: 'proof', cause: 'wire' },
    ],
    [
      'a proof that fails after a good one goes on',
      [dark, burnt, fuse, good, failed],
      check('look'),
    ],
    [
      'a check begun is the step',
      [dark, { do: 'begin', check: 'volts' }],
      check('volts', 'chosen'),
    ],
    [
      'until it is answered',
      [dark, { do: 'begin', check: 'volts' }, dead],
      { kind: 'named', cause: 'wire' },
    ],
    [
      'a check begun after a repair comes before the proof',
      [dark, fuse, { do: 'begin', check: 'look' }],
      check('look', 'chosen'),
    ],
    ['a note changes no step', [dark, { do: 'note', text: 'n' }], check('look')],
    ['closed is closed', [dark, { do: 'close' }], { kind: 'closed' }],
    ['closed after a proof too', [dark, fuse, good, { do: 'close' }], { kind: 'closed' }],
  ] as const)('%s', (_, actions, expected) => {
    expect(step(...(actions as readonly Action[]))).toEqual(expected);
  });

  test.each([
    [
      'unsure of a check goes on as if it were healthy',
      [dark, { do: 'unsure', check: 'look' }],
      check('volts'),
    ],
    [
      'a check passed over goes on likewise',
      [dark, { do: 'skip', check: 'look', reason: 'x' }],
      check('volts'),
    ],
    [
      'the complaint passed over begins the tree',
      [{ do: 'skip', check: 'lamp', reason: 'x' }],
      check('look'),
    ],
    ['unsure of the complaint begins the tree', [{ do: 'unsure', check: 'lamp' }], check('look')],
    [
      'past the last check the way is at its end',
      [dark, whole, { do: 'skip', check: 'volts', reason: 'x' }],
      exhausted(leadsNowhere),
    ],
    [
      'so it is where everything was passed over',
      [dark, { do: 'skip', check: 'look', reason: 'x' }, { do: 'unsure', check: 'volts' }],
      exhausted(leadsNowhere),
    ],
  ] as const)('%s', (_, actions, expected) => {
    expect(stepIn({}, ...(actions as readonly Action[]))).toEqual(expected);
  });

  test('a check that waits for one passed over is asked as if that were healthy', () => {
    expect(step(dark, { do: 'skip', check: 'look', reason: 'x' })).toEqual(check('volts'));
  });

  test('baseline readings come before anything else, in their order', () => {
    const change = { baseline: ['volts', 'look'] };

    expect(stepIn(change, dark)).toEqual(check('volts'));
    expect(stepIn(change, dark, full)).toEqual(check('look'));
    expect(stepIn(change, dark, { do: 'skip', check: 'volts', reason: 'x' })).toEqual(
      check('look'),
    );
  });

  test('a check picked out of turn does not pass over the baseline', () => {
    expect(stepIn({ baseline: ['volts'] }, dark, burnt)).toEqual(check('volts'));
  });

  test('a cause that the baseline names is named when the baseline is done', () => {
    const change = { baseline: ['volts'] };

    expect(stepIn(change, dark, dead)).toEqual({ kind: 'named', cause: 'wire' });
    expect(stepIn(change, dark, dead, whole)).toEqual({ kind: 'named', cause: 'wire' });
    expect(stepIn({ ...change, baseline: ['volts', 'look'] }, dark, dead)).toEqual(check('look'));
  });

  test('a result may lead to another tree', () => {
    const checks = smallTreeData().checks;
    const [first, second] = checks.look.results;
    const results = [first, { ...second, next: 'tree:no-crank', reason: 'It is the feed.' }];
    const bare = [first, { ...second, next: 'tree:no-crank' }];

    expect(
      stepIn({ checks: { ...checks, look: { ...checks.look, results } } }, dark, burnt),
    ).toEqual({ kind: 'leg', tree: 'no-crank', reason: 'It is the feed.' });
    expect(
      stepIn({ checks: { ...checks, look: { ...checks.look, results: bare } } }, dark, burnt),
    ).toMatchObject({ kind: 'leg', reason: 'This tree goes on there.' });
  });

  test('checks that lead to one another in a ring do not go on for ever', () => {
    const checks = smallTreeData().checks;
    const [full_, low, dead_] = checks.volts.results;
    const ring = { ...checks.volts, results: [{ ...full_, next: 'look' }, low, dead_] };

    expect(stepIn({ checks: { ...checks, volts: ring } }, dark, whole, full)).toEqual(
      exhausted('The way comes round to what is known already.'),
    );
  });

  test('a result that leads nowhere ends the way', () => {
    const checks = smallTreeData().checks;
    const [{ next: _, ...first }, second] = checks.look.results as [{ next: string }, object];
    const look = { ...checks.look, results: [first, second] };

    expect(stepIn({ checks: { ...checks, look } }, dark, whole)).toEqual(exhausted(leadsNowhere));
  });
});

describe('a check that shows the same as another', () => {
  const { lamp, look, volts } = smallTreeData().checks;
  const relook = {
    ...look,
    same: 'fuse',
    results: [
      { id: 'intact', label: 'whole', next: 'volts' },
      { id: 'blown', label: 'burnt', next: 'cause:fuse' },
    ],
  };
  const checks = {
    lamp: { ...lamp, results: [lamp.results[0], { ...lamp.results[1], next: 'relook' }] },
    look: { ...look, same: 'fuse' },
    relook,
    volts,
  };

  test('is asked while neither is answered', () => {
    expect(stepIn({ checks }, dark)).toEqual(check('relook'));
  });

  test.each([
    ['whole', whole, { kind: 'stop', reason: 'Neither fits.' }],
    ['burnt', burnt, { kind: 'named', cause: 'fuse' }],
  ] as const)('is passed through by what the other showed: %s', (_, found, expected) => {
    // A failed proof begins at the start again, past what is known.
    expect(stepIn({ checks }, dark, found, wire, full, failed)).toEqual(expected);
  });

  test('goes by the later of the two answers', () => {
    const blown: Action = { do: 'find', check: 'relook', result: 'blown' };

    expect(stepIn({ checks }, dark, whole, blown, wire, full, failed)).toEqual({
      kind: 'named',
      cause: 'fuse',
    });
  });
});
