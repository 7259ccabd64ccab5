import { expect, test } from 'vitest';
import {
  chooseTree,
  goOn,
  makeUnloaded,
  makeProgram,
  passPages,
  press,
  startKeys,
} from '../../helpers/program.ts';

/** A program that stands at the first check of the rough-idle tree (eight facts). */
function atFirstCheck() {
  const made = makeProgram();
  press(made.program, startKeys());
  return made;
}

const session = ({ program }: ReturnType<typeof makeProgram>) => {
  const { session: open } = program.state();
  if (open === undefined) throw new Error('no session is open');
  return open;
};

test('a job starts with the complaint being made to happen', () => {
  const made = atFirstCheck();

  expect(session(made).story.due).toEqual({ kind: 'check', check: 'idle-check', why: 'chosen' });
  expect(session(made).own).toMatchObject({ check: 'idle-check' });
  expect(session(made).header.vehicle.name).toBe('Orchard van');
});

test('a vehicle without a name is asked for one', () => {
  const { program } = makeProgram();

  press(program, `${chooseTree('rough-idle')}<enter>`);

  expect(program.state().notice?.text).toContain('Give the vehicle a name');
  expect(program.state().session).toBeUndefined();
});

test('an altitude that cannot be is refused and can be typed again', () => {
  const { program } = makeProgram();

  press(program, `${chooseTree('rough-idle')}Orchard van<enter>JB<enter>90000ft<enter>`);
  expect(program.state().notice?.text).toContain('lies outside');
  press(program, `${'<back>'.repeat(7)}5200ft<enter>`);

  expect(program.state().notice).toBeUndefined();
});

test('all that is to be set before the answer is asked on one page, each thing its own event', () => {
  const made = atFirstCheck();
  expect(made.program.state().question.mode).toBe('prepare');

  press(made.program, 'y');

  expect(made.program.state().question.mode).toBe('look');
  expect(session(made).events.map(({ kind }) => kind)).toEqual([
    'check-begun',
    ...Array(3).fill('standing'),
  ]);
  expect(session(made).story.standing).toMatchObject({ key: 'run', engine: 'idling', heat: 'hot' });
});

test('a digit picks a result at once, and the walk goes on', () => {
  const made = atFirstCheck();

  press(made.program, 'y2');

  expect(session(made).story.findings).toMatchObject([{ check: 'idle-check', result: 'hunts' }]);
});

test('Enter answers nothing by itself', () => {
  const made = atFirstCheck();

  press(made.program, 'y<enter><enter>');

  expect(session(made).story.findings).toEqual([]);
  expect(made.program.state().notice?.text).toContain('Answer by its number');
});

test('an answer taken back is asked anew, and what was written stays written', () => {
  const made = atFirstCheck();

  press(made.program, 'y2b3');

  const { story, events } = session(made);
  expect(story.findings).toMatchObject([{ check: 'idle-check', corrected: false }]);
  expect(story.findings[0]?.result).not.toBe('hunts');
  expect(events.filter(({ kind }) => kind === 'found')).toMatchObject([{ result: 'hunts' }, {}]);
});

test('a check that cannot be got at wants a reason', () => {
  const made = atFirstCheck();

  press(made.program, 'x<enter>');
  expect(made.program.state().notice?.text).toContain('Say why');
  press(made.program, 'no tach here<enter>');

  expect(session(made).story.skipped).toMatchObject([
    { check: 'idle-check', reason: 'no tach here' },
  ]);
});

test('a note is kept with the check it was typed at', () => {
  const made = atFirstCheck();

  press(made.program, 'nfan belt squeals<enter>');

  expect(session(made).events.at(-1)).toMatchObject({
    kind: 'noted',
    text: 'fan belt squeals',
    about: 'idle-check',
  });
});

test('another check can be chosen, and the way goes on from its result', () => {
  const made = atFirstCheck();

  press(made.program, 'o<down><enter>');

  expect(session(made).story.due).toMatchObject({ kind: 'check', why: 'chosen' });
});

test('a cause can be condemned, repaired, proven and the job closed, by keys alone', () => {
  const made = atFirstCheck();

  press(made.program, 'y2');
  condemnFirst(made);
  for (let guard = 0; guard < 40 && session(made).story.due.kind !== 'proof'; guard += 1)
    goOn(made.program);
  passPages(made.program);
  press(made.program, '1');
  expect(session(made).story.due).toEqual({ kind: 'proven' });
  press(made.program, 'c1y');

  expect(session(made).story.closed).toMatchObject({ as: 'fixed' });
});

/** Picks the second suspect, reads its cautions page by page and condemns it. */
function condemnFirst(made: ReturnType<typeof makeProgram>): number {
  press(made.program, 'r2Z');
  let pages = 0;
  for (; made.program.state().question.mode === 'cause-caution' && pages < 20; pages += 1)
    press(made.program, String(pages + 1));
  expect(made.program.state().question.mode).toBe('named');
  expect(session(made).story.condemned).toEqual([]);
  press(made.program, 'y');
  return pages;
}

test('a cause that is picked has each new caution read before it is condemned', () => {
  const made = atFirstCheck();

  const pages = condemnFirst(made);

  const { cause } = session(made).story.condemned[0] ?? { cause: '' };
  const { tree } = session(made).story.legs[0] ?? {};
  const cautions = tree?.causes[cause]?.repair.cautions ?? [];
  const read = session(made).story.acknowledged.flatMap((one) => one.cautions);
  expect(pages).toBeGreaterThan(0);
  expect(cautions.filter((id) => !read.includes(id))).toEqual([]);
});

test('a cause that was picked is left again without a word in the record', () => {
  const made = atFirstCheck();
  const before = session(made).events.length;

  press(made.program, 'r2Z1b');

  expect(made.program.state().question.mode).toBe('prepare');
  expect(session(made).events.length).toBe(before);
});

test('a proof cannot be answered with unsure', () => {
  const made = atFirstCheck();
  condemnFirst(made);
  for (let guard = 0; guard < 40 && session(made).story.due.kind !== 'proof'; guard += 1)
    goOn(made.program);
  passPages(made.program);

  press(made.program, 'u');

  expect(made.program.state().notice?.text).toContain('test it until you are sure');
});

test('pasted lines answer nothing outside a text field', () => {
  const made = atFirstCheck();

  const { length } = session(made).events;

  made.program.dispatch({ kind: 'pasted', text: '1\n1\n1\n' });

  expect(session(made).events).toHaveLength(length);
  expect(made.program.state().notice?.text).toContain('No field is open here');
});

test('pasted text goes into a note as one line', () => {
  const made = atFirstCheck();

  press(made.program, 'n');
  made.program.dispatch({ kind: 'pasted', text: 'first\nsecond' });
  press(made.program, '<enter>');

  expect(session(made).events.at(-1)).toMatchObject({ text: 'first second' });
});

test('leaving puts the session down, and it can be picked up where it stood', () => {
  const made = atFirstCheck();
  press(made.program, 'y2');
  const { due } = session(made).story;

  press(made.program, 'q1');

  expect(session(made).story.due).toEqual(due);
  expect(
    session(made)
      .events.map(({ kind }) => kind)
      .slice(-2),
  ).toEqual(['paused', 'resumed']);
});

test('ctrl-c leaves the program with everything on the disk', () => {
  const made = atFirstCheck();

  press(made.program, '<C-c>');

  expect(made.left()).toBe(true);
  expect(made.program.state().session?.events.at(-1)).toMatchObject({ kind: 'paused' });
});

test('keys typed before the program has loaded meet what the keys before them opened', () => {
  const { program, load } = makeUnloaded();

  press(program, startKeys());
  load();

  expect(program.state().session?.story.due).toMatchObject({ check: 'idle-check' });
});
