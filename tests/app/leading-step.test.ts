import { expect, test } from 'vitest';
import { readSettings } from '../../src/store/settings.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { unlisted } from '../../src/core/tree/model.ts';
import { makeProgram, press, startKeys, thoughtOut } from '../helpers/program.ts';

type Made = ReturnType<typeof makeProgram>;

const sessionOf = ({ program }: Made) => {
  const { session } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return session;
};

/** The complaint has been made to happen; the tree's own way wants its baseline next. */
function confirmed(lead: 'tree' | 'quicker') {
  const made = makeProgram({ settings: { lead } });
  press(made.program, `${startKeys()}<enter><enter><enter>2`);
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

test('a check the mechanic chose is not replaced by the quicker one', () => {
  const made = confirmed('quicker');

  press(made.program, 'o<down><down><down><enter>');

  expect(sessionOf(made).story.due).toMatchObject({ kind: 'check', why: 'chosen' });
});

test('l turns who leads, at once and for the next session too', async () => {
  const made = confirmed('tree');
  const { own } = sessionOf(made);

  press(made.program, 'l');
  expect(made.program.state().notice?.text).toBe('The quicker way leads.');
  expect(sessionOf(made).story.due).toEqual(sessionOf(confirmed('quicker')).story.due);
  await expect.poll(() => readSettings(nodeFiles, `${made.folder}/settings`).lead).toBe('quicker');

  press(made.program, 'l');
  expect(made.program.state().notice?.text).toBe("The tree's own way leads.");
  expect(sessionOf(made).story.due).toEqual(own);
});

test('j takes the check that the advice puts first, as the mechanic’s own choice', async () => {
  const made = confirmed('tree');
  await thoughtOut(made.program);
  const [first] = sessionOf(made).advice?.next ?? [];
  expect(first?.do).toBe('check');

  press(made.program, 'j');

  expect(sessionOf(made).story.due).toEqual({ kind: 'check', check: first?.id, why: 'chosen' });
});

test('j names nothing while the advice is not there yet', () => {
  const made = confirmed('tree');
  const { due } = sessionOf(made).story;

  press(made.program, 'j');

  expect(made.program.state().notice?.text).toContain('no quicker step');
  expect(sessionOf(made).story.due).toEqual(due);
});

test('an end that the tree names stands, whoever leads', () => {
  const made = makeProgram({ settings: { lead: 'quicker' } });

  press(made.program, `${startKeys()}<enter><enter><enter>1`);

  expect(sessionOf(made).own.kind).toBe('stop');
  expect(sessionOf(made).story.due).toEqual(sessionOf(made).own);
});
