import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import { baselineLines, baselineWords } from '../../../src/core/session/baseline/baseline.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';
import { shippedShop, shippedTrees } from '../../helpers/library.ts';

const world = { tree: () => undefined };

function job(tree: string) {
  const { program } = makeProgram();
  press(program, startKeys(tree));
  const session = () => {
    const { session: open } = program.state();
    if (open === undefined) throw new Error('a job is open');
    return open;
  };
  return { program, session, act: (action: Action) => program.dispatch({ kind: 'acted', action }) };
}

test("the tree's own checks come first, then the shop's list", () => {
  const lines = baselineLines(job('rough-idle').session().story);

  expect(lines.slice(0, 3).map(({ kind, id }) => [kind, id])).toEqual([
    ['check', 'choke-hot'],
    ['check', 'vac-level'],
    ['check', 'vac-needle'],
  ]);
  expect(lines.slice(3).every(({ kind, state }) => kind === 'item' && state === 'open')).toBe(true);
  expect(lines.some(({ id }) => id === 'photos')).toBe(true);
});

test('what the complaint does not allow is not asked, and refused', () => {
  const { session } = job('fuel-loss');
  const ids = baselineLines(session().story).map(({ id }) => id);

  expect(ids).toContain('photos');
  expect(ids).not.toContain('sound');
  expect(
    decide(session().story, { do: 'baseline', item: 'sound', seen: 'fine' }, world),
  ).toMatchObject({ kind: 'refused', problem: { code: 'unknown-baseline' } });
});

test('what a safeguard holds back waits for its check, but may be passed over with a reason', () => {
  const { session } = job('hot-restart');
  const { story } = session();
  const line = baselineLines(story).find(({ id }) => id === 'sound');

  expect(line).toMatchObject({ state: 'open', first: expect.any(String) });
  expect(decide(story, { do: 'baseline', item: 'sound', seen: 'fine' }, world)).toMatchObject({
    problem: { code: 'baseline-held' },
  });
  expect(decide(story, { do: 'baseline', item: 'sound', reason: 'not run' }, world)).toMatchObject({
    kind: 'accepted',
  });
});

test('a thing is taken down in own words, said anew, or passed over behind a minus', () => {
  const { program, session } = job('rough-idle');

  const before = session().events.length;
  press(program, `B${'<enter>'.repeat(20)}`);
  expect(program.state().screen).toMatchObject({ kind: 'baseline', cursor: -1 });
  expect(session().events).toHaveLength(before);
  press(program, '4');
  press(program, 'twelve of them<enter>');
  expect(session().story.baseline).toMatchObject([{ item: 'photos', seen: 'twelve of them' }]);
  press(program, '5- no light<enter>');

  expect(session().story.baseline).toMatchObject([
    { item: 'photos' },
    { item: 'routing', reason: 'no light' },
  ]);
  expect(session().story.baseline.map((one) => baselineWords(session().story, one))).toEqual([
    'Photographs, wide: four sides, fuse box, dash: twelve of them',
    'Photographs, close: hoses and wires, each junction: passed over, no light',
  ]);
  press(program, '4<C-u>a dozen<enter>');
  expect(session().story.baseline.find(({ item }) => item === 'photos')?.seen).toBe('a dozen');
});

test('an empty field keeps nothing; a minus wants its reason', () => {
  const { program, session } = job('rough-idle');
  const before = session().events.length;

  press(program, 'B4<enter>');
  press(program, '4-<enter>');

  expect(program.state().notice?.text).toMatch(/^Say why behind the minus/);
  expect(session().events).toHaveLength(before);
});

test('a check of the tree is made as any check: the walk has it', () => {
  const { program, session } = job('rough-idle');

  press(program, 'B1');

  expect(program.state().screen.kind).toBe('walk');
  expect(session().story.due).toMatchObject({ kind: 'check', check: 'choke-hot' });
});

test('each complaint that the shop names for its baseline is one of the library', () => {
  const named = Object.values(shippedShop().baseline).flatMap((item) => item['not-for']);
  const ids = shippedTrees().map(({ id }) => id);

  expect(named.length).toBeGreaterThan(0);
  expect(named.filter((id) => !ids.includes(id))).toEqual([]);
});
