import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { apartName } from '../../../src/core/session/apart/apart.ts';
import { beforeProof } from '../../../src/core/session/apart/before-proof.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';
import { after } from '../../helpers/story.ts';

const world = { tree: () => undefined };
const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const repaired: readonly Action[] = [
  { do: 'condemn', cause: 'fuse' },
  { do: 'repair', cause: 'fuse' },
];
const off: Action = { do: 'part-off', part: 'bezel' };
const named = (...actions: readonly Action[]) => {
  const { story } = after(actions);
  return beforeProof(story).map((thing) => apartName(story, thing));
};

test('what came off after the complaint showed is asked back before the proof', () => {
  const actions = [off, dark, { do: 'part-off', part: 'lens' } as const, ...repaired];
  const { story } = after(actions);

  expect(named(...actions)).toEqual(['lens (bag 2)']);
  expect(decide(story, { do: 'prove', result: 'lit' }, world)).toMatchObject({
    kind: 'accepted',
    warnings: [
      'Proved although not all is back. Still off: lens (bag 2). Say why before it, with leave-apart.',
    ],
  });
});

test('with an own word the proof goes on so, and the word is told', () => {
  const actions: readonly Action[] = [
    dark,
    off,
    { do: 'aid-on', aid: 'jumper' },
    ...repaired,
    { do: 'leave-apart', why: 'the meter hangs on it' },
  ];
  const { story } = after(actions);

  expect(beforeProof(story)).toEqual([]);
  expect(story.leftApart).toMatchObject([{ things: [2, 3], why: 'the meter hangs on it' }]);
  expect(decide(story, { do: 'prove', result: 'lit' }, world)).toMatchObject({ warnings: [] });
  // What comes off after that is asked for again.
  expect(named(...actions, { do: 'part-off', part: 'lens' })).toEqual(['lens (bag 2)']);
});

test('the word needs something that is not back, and may not be empty', () => {
  expect(decide(after([dark]).story, { do: 'leave-apart', why: 'so' }, world)).toMatchObject({
    problem: { code: 'nothing-apart' },
  });
  expect(decide(after([dark, off]).story, { do: 'leave-apart', why: ' ' }, world)).toMatchObject({
    problem: { code: 'no-reason' },
  });
});

test('on the page before the proof a number marks and y puts back; g asks for a word', () => {
  const { program } = makeProgram();
  press(program, `${startKeys()}y2`);
  for (const part of ['lens', 'bezel'])
    program.dispatch({ kind: 'acted', action: { do: 'part-off', part } });
  program.dispatch({ kind: 'acted', action: { do: 'condemn', cause: 'vac-hose' } });
  program.dispatch({ kind: 'acted', action: { do: 'repair', cause: 'vac-hose' } });
  const due = () => program.state().question.due;
  for (let guard = 0; guard < 9 && due()?.asked?.purpose !== 'proof'; guard += 1)
    program.dispatch({
      kind: 'acted',
      action: { do: 'skip', check: due()?.asked?.id ?? '', reason: 'no time' },
    });

  expect(program.state().question.mode).toBe('before-proof');
  press(program, 'y');
  expect(program.state().notice?.text).toBe('Mark what is back by its number first.');
  press(program, '1y');
  expect(program.state().session?.story.partsOff.map(({ part }) => part)).toEqual(['lens']);
  press(program, 'gthe lens is broken<enter>');

  expect(program.state().session?.events.at(-1)).toMatchObject({
    kind: 'left-apart',
    why: 'the lens is broken',
  });
  expect(program.state().question.mode).not.toBe('before-proof');
});
