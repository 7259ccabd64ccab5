import { expect, test } from 'vitest';
import { readSettings } from '../../src/store/settings.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { defaultSettings } from '../../src/core/settings.ts';
import { unlisted } from '../../src/core/tree/model.ts';
import { fold } from '../../src/core/session/fold.ts';
import { ledStory } from '../../src/app/leading-step.ts';
import { quickerLine } from '../../src/app/walk/why.ts';
import type { Action } from '../../src/core/session/action.ts';
import { makeProgram, press, startKeys, thoughtOut } from '../helpers/program.ts';
import { guardedAfter, guardedTree } from '../helpers/guarded.ts';
import { shippedShop, shippedTree } from '../helpers/library.ts';
import { after, headerFor } from '../helpers/story.ts';

type Made = ReturnType<typeof makeProgram>;

const sessionOf = ({ program }: Made) => {
  const { session } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return session;
};

/** The complaint has been made to happen; the tree's own way wants its baseline next. */
function confirmed(lead: 'tree' | 'quicker') {
  const made = makeProgram({ settings: { lead } });
  press(made.program, `${startKeys()}y2`);
  return made;
}

test("the tree's own way leads unless it is asked otherwise", () => {
  const session = sessionOf(confirmed('tree'));

  expect(session.story.due).toEqual(session.own);
  expect(session.own).toMatchObject({ kind: 'check', why: 'way' });
});

test('when the quicker way leads, the step on screen is the first that the advice names', () => {
  const session = sessionOf(confirmed('quicker'));
  const [first] = session.advice?.next ?? [];

  expect(first?.id).toBeDefined();
  expect(first?.id).not.toBe(unlisted);
  expect(session.story.due).toEqual(
    first?.do === 'check'
      ? { kind: 'check', check: first.id, why: 'advised' }
      : { kind: 'named', cause: first?.id },
  );
  expect(session.own).toEqual(sessionOf(confirmed('tree')).own);
});

test('thinking on changes the advice but never the step on screen', async () => {
  const made = confirmed('quicker');
  const { due } = sessionOf(made).story;

  await thoughtOut(made.program);

  expect(sessionOf(made).advice?.final).toBe(true);
  expect(sessionOf(made).story.due).toEqual(due);
});

test('the complaint is made to happen first, whoever leads', () => {
  const made = makeProgram({ settings: { lead: 'quicker' } });
  press(made.program, startKeys());

  expect(sessionOf(made).story.due).toMatchObject({ kind: 'check', check: 'idle-check' });
});

test("what makes the complaint's own test safe is no more led away from than that test", () => {
  const { header, events } = guardedAfter([]);

  const { story, own } = ledStory(fold(header, events), { ...defaultSettings, lead: 'quicker' });

  expect(own).toMatchObject({ kind: 'check', why: 'way' });
  expect(own).not.toMatchObject({ check: guardedTree.complaint.confirm });
  expect(story.due).toEqual(own);
});

test('a check the mechanic chose is not replaced by the quicker one', () => {
  const made = confirmed('quicker');

  press(made.program, 'o<down><down><down><enter>');

  expect(sessionOf(made).story.due).toMatchObject({ kind: 'check', why: 'chosen' });
});

test('t on the page of reasons turns who leads, at once and for the next session too', async () => {
  const made = confirmed('tree');
  const { own } = sessionOf(made);

  press(made.program, 'wt');
  expect(made.program.state().settings.lead).toBe('tree');
  press(made.program, 'y');
  expect(made.program.state().notice?.text).toBe('The quicker way leads.');
  expect(sessionOf(made).story.due).toEqual(sessionOf(confirmed('quicker')).story.due);
  await expect.poll(() => readSettings(nodeFiles, `${made.folder}/settings`).lead).toBe('quicker');

  press(made.program, 'wty');
  expect(made.program.state().notice?.text).toBe("The tree's own way leads.");
  expect(sessionOf(made).story.due).toEqual(own);
});

test('s takes the check that the advice puts first, as the mechanic’s own choice', async () => {
  const made = confirmed('tree');
  await thoughtOut(made.program);
  const [first] = sessionOf(made).advice?.next ?? [];
  expect(first?.do).toBe('check');

  press(made.program, 's');

  expect(sessionOf(made).story.due).toEqual({ kind: 'check', check: first?.id, why: 'chosen' });
});

test('s names nothing while the advice is not there yet', () => {
  const made = confirmed('tree');
  const { due } = sessionOf(made).story;

  press(made.program, 's');

  expect(made.program.state().notice?.text).toContain('no quicker step');
  expect(sessionOf(made).story.due).toEqual(due);
});

/** What the quicker way makes of a shipped tree after some findings. */
function quicklyLed(tree: string, shows: Readonly<Record<string, string>>) {
  const actions = Object.entries(shows).map(([check, result]): Action => ({
    do: 'find',
    check,
    result,
    acknowledged: true,
  }));
  const { header, events } = after(actions, headerFor(shippedTree(tree), shippedShop()));
  return ledStory(fold(header, events), { ...defaultSettings, lead: 'quicker' });
}

test('an end that the tree names stands, whoever leads', () => {
  const led = quicklyLed('steering', { 'steer-which': 'none' });

  expect(led.own.kind).toBe('stop');
  expect(led.story.due).toEqual(led.own);
});

test('a healthy look that the advice put in does not end the job while others are open', () => {
  const led = quicklyLed('runs-cold', {
    'cold-level': 'full',
    'heat-test': 'cool-air',
    'flow-see': 'strong',
  });

  expect(led.own.kind).toBe('stop');
  expect(led.story.due).toMatchObject({ kind: 'check', why: 'advised' });
});

test('what is seen to be broken ends the job, however many looks are open', () => {
  const led = quicklyLed('steering', {
    'steer-which': 'wanders',
    'nuts-look': 'tight',
    'gear-watch': 'still',
    'link-watch': 'firm',
    'arm-look': 'bent',
  });

  expect(led.own.kind).toBe('stop');
  expect(led.story.due).toEqual(led.own);
});

/** A walk of the small tree, as it is led when nobody asked for the quicker way. */
function ledBy(...actions: readonly Action[]) {
  const { header, events } = after(actions);
  return ledStory(fold(header, events), defaultSettings);
}

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const burnt: Action = { do: 'find', check: 'look', result: 'burnt' };
const notProven: Action = { do: 'prove', result: 'dark' };

test("where the tree's own way gives out, the first of the advice is the step, and the foot says so", () => {
  const led = ledBy(
    dark,
    { do: 'skip', check: 'look', reason: 'the cover is rusted on' },
    { do: 'unsure', check: 'volts' },
  );

  expect(led.own.kind).toBe('exhausted');
  expect(led.story.due).toEqual({ kind: 'named', cause: led.advice?.next[0]?.id });
  expect(quickerLine(led)).toMatch(/^ADVISED .*own way ends here; what follows is the advice/);
});

test('where nothing listed is left either, no step is made up and no advice is promised', () => {
  const led = ledBy(
    dark,
    burnt,
    { do: 'repair', cause: 'fuse' },
    notProven,
    burnt,
    { do: 'repair', cause: 'wire' },
    { do: 'find', check: 'volts', reading: '12.6' },
    notProven,
  );

  expect(led.own.kind).toBe('exhausted');
  expect(led.story.due).toEqual(led.own);
  expect(quickerLine(led)).not.toContain('ADVISED');
});
