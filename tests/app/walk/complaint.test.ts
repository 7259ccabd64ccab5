import { describe, expect, test } from 'vitest';
import { workerAt } from '../../../src/core/session/story.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

/** What is open after keys from Home. */
function after(keys: string, tree?: string) {
  const { program } = makeProgram();
  press(program, `${startKeys(tree)}${keys}`);
  const state = program.state();
  const { session } = state;
  if (session === undefined) throw new Error('no session is open');
  return { ...state, session };
}

/** `C`, a complaint found by its letters, and don't know to all that is asked of the vehicle for it. */
const charging = `Ccharging<enter>lamp glows<enter>${`${'<down>'.repeat(9)}<enter>`.repeat(6)}`;

describe('another complaint on the job', () => {
  test('C asks which one, what its owner says, and only what the job does not know of the vehicle', () => {
    const { session, screen } = after(`y2${charging}`);

    expect(screen.kind).toBe('walk');
    expect(session.story.legs.at(-1)).toMatchObject({
      tree: { id: 'charging' },
      complaint: { words: 'lamp glows' },
    });
    expect(session.story.workers).toEqual([{ n: 0, who: 'JB' }]);
  });

  test('left at its first question, the walk stands as it did and nothing is written', () => {
    const before = after('y2').session.events.length;

    expect(after('y2C<esc>').session.events).toHaveLength(before);
    expect(after('y2C<esc>').screen.kind).toBe('walk');
  });

  test('one press of undo takes it back', () => {
    expect(after(`y2${charging}b`).session.story.legs).toHaveLength(1);
  });

  test('leaning on Enter, C or a digit takes nothing up', () => {
    for (const key of ['<enter>', 'C', '1'])
      expect(after(`y2C${key.repeat(30)}`).session.story.legs.length).toBeLessThan(2);
  });
});

describe('on to the tree that a result leads to', () => {
  const works = 'y1<enter>';

  test('y asks what that tree wants to know of the vehicle and nobody said, then goes there', () => {
    const asked = after(`${works}y`, 'no-supply');

    expect(after(works, 'no-supply').session.story.due).toMatchObject({
      kind: 'leg',
      tree: 'no-crank',
    });
    expect(asked.screen).toMatchObject({ kind: 'start', form: { begins: 'leg', at: 0 } });
    expect(asked.session.story.legs).toHaveLength(1);

    const { session, screen } = after(`${works}y${'1'.repeat(7)}`, 'no-supply');
    expect(screen.kind).toBe('walk');
    expect(session.story.legs.at(-1)).toMatchObject({ tree: { id: 'no-crank' } });
    expect(session.story.legs.at(-1)?.reason).toMatch(/^The feed is alive/);
    expect(session.story.facts).toMatchObject({ 'starter-switch': 'relay' });
    expect(session.story.legs.at(-1)?.complaint).toBeUndefined();
  });

  test('left at its first question nothing is written, and the end stands as it did', () => {
    const left = after(`${works}y<esc>`, 'no-supply');

    expect(left.session.story.legs).toHaveLength(1);
    expect(left.session.story.due.kind).toBe('leg');
  });
});

describe('who works', () => {
  test('W lists who is known; Enter on no line and Esc say nothing', () => {
    expect(after('W').screen).toEqual({ kind: 'worker', cursor: -1 });
    expect(after('W<enter>').session.story.workers).toHaveLength(1);
    expect(after('W<esc>').screen.kind).toBe('walk');
  });

  test('a new name is typed, and counts from there', () => {
    const { story } = after('WnC.<enter>').session;

    expect(workerAt(story)).toBe('C.');
    expect(story.workers.map(({ who }) => who)).toEqual(['JB', 'C.']);
  });

  test('the same as before is no news', () => {
    const { session } = after('W1');

    expect(session.story.workers).toHaveLength(1);
  });

  test('it is asked when a job is picked up that knows a name', () => {
    const { program } = makeProgram();
    press(program, `${startKeys()}y2q`);
    press(program, '1');

    expect(program.state().screen.kind).toBe('worker');
    press(program, 'Z<esc>');
    expect(program.state().screen.kind).toBe('walk');
  });
});
