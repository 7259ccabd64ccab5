import { expect, test } from 'vitest';
import { advise } from '../../src/commands/advise.ts';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

type Told = {
  readonly suspects: readonly { cause: string; chance: number }[];
  readonly unlisted: number;
  readonly coverage: number;
  readonly next: readonly {
    do: string;
    id: string;
    minutes: number;
    cost: number;
    expectedLeft: number;
  }[];
  readonly because: string;
  readonly openQuestions: readonly object[];
};

const dead = { do: 'find', check: 'lamps-horn', result: 'dead' };
const known = new Map<string, Promise<Told>>();

/** What is advised there: worked out once for all tests that ask for the same. */
function advised(tree: string, actions: readonly object[]): Promise<Told> {
  const key = JSON.stringify([tree, actions]);
  const told = known.get(key) ?? adviseAnew(tree, actions);
  known.set(key, told);
  return told;
}

async function adviseAnew(tree: string, actions: readonly object[]): Promise<Told> {
  const folder = scratch();
  const { out } = await runCommand(open, [tree, '--vehicle', 'Orchard van', '--altitude', '0ft'], {
    folder,
  });
  const session = out.trim();
  const lines = actions.map((action) => JSON.stringify(action));
  const entered = await runCommand(enter, [session], { folder, lines });
  if (entered.code !== 0) throw new Error(entered.out);
  const ran = await runCommand(advise, [session, '--json'], { folder });
  return JSON.parse(ran.out) as Told;
}

test('a fresh session has every cause suspected, adding up to more than one fault', async () => {
  const told = await advised('no-supply', []);

  const sum = told.suspects.reduce((total, { chance }) => total + chance, told.unlisted);
  expect(sum).toBeGreaterThan(1);
  expect(told.coverage).toBe(1);
  expect(told.suspects.every(({ chance }) => chance >= 0 && chance <= 1)).toBe(true);
});

test('the steps come by their cost, and the minutes of the first are walked out', async () => {
  const told = await advised('no-supply', [dead]);

  const costs = told.next.map(({ cost }) => cost);
  const [first] = told.next;
  if (first === undefined) throw new Error('nothing is advised');
  expect(costs).toEqual(costs.toSorted((one, other) => one - other));
  // It takes its own minutes at least, and costs no more than its parts on top of them.
  expect(first.expectedLeft).toBeGreaterThan(first.minutes);
  expect(first.expectedLeft).toBeLessThan(1.1 * first.cost);
  expect(told.because).toMatch(/leads with \d+ %/);
});

test('a repair takes its cause off the suspects, and the proof comes first', async () => {
  const told = await advised('no-supply', [dead, { do: 'repair', cause: 'post-film' }]);

  expect(told.suspects.find(({ cause }) => cause === 'post-film')).toBeUndefined();
  expect(told.next[0]).toMatchObject({ do: 'check', id: 'lamps-horn' });
});

test('after a failed proof the belief goes on with what is left', async () => {
  const told = await advised('no-supply', [
    dead,
    { do: 'repair', cause: 'post-film' },
    { do: 'prove', result: 'dead' },
  ]);

  expect(told.suspects.find(({ cause }) => cause === 'post-film')).toBeUndefined();
  expect(told.next.length).toBeGreaterThan(0);
});

test('a finding that got worse is an open question until it is settled', async () => {
  const actions = [
    { do: 'find', check: 'lamps-horn', result: 'dead' },
    { do: 'find', check: 'bat-rest-volts', reading: '12.65' },
    { do: 'repair', cause: 'relay-stud' },
    { do: 'prove', result: 'dead' },
    { do: 'find', check: 'bat-rest-volts', reading: '12.1' },
  ];
  const open = await advised('no-supply', actions);
  const settled = await advised('no-supply', [...actions, { do: 'settle', as: 'new-since' }]);

  expect(open.openQuestions).toMatchObject([{ check: 'bat-rest-volts', repairsBetween: 1 }]);
  expect(open.next.length).toBeGreaterThan(0);
  expect(settled.openQuestions).toEqual([]);
  expect(settled.suspects.map(({ cause }) => cause)).toContain('brought-by-repair-1');
});

test('a check that was passed over is not advised again', async () => {
  const before = await advised('no-supply', [dead]);
  const first = before.next.find((step) => step.do === 'check');
  const after = await advised('no-supply', [
    dead,
    { do: 'skip', check: first?.id, reason: 'no meter here' },
  ]);

  expect(after.next.map(({ id }) => id)).not.toContain(first?.id);
});

test('the same session gets the same advice, to the last bit', async () => {
  const actions = [
    { do: 'find', check: 'idle-check', result: 'hunts' },
    { do: 'find', check: 'choke-hot', result: 'open' },
    { do: 'find', check: 'vac-level', reading: '15 inHg' },
  ];

  expect(await adviseAnew('rough-idle', actions)).toEqual(await adviseAnew('rough-idle', actions));
});

test('a job that is closed is told so, with no suspects and no empty list of steps', async () => {
  const folder = scratch();
  const { out } = await runCommand(open, ['no-supply', '--vehicle', 'Orchard van'], { folder });
  const lines = [JSON.stringify({ do: 'close', as: 'handed-on' })];
  await runCommand(enter, [out.trim()], { folder, lines });

  const told = await runCommand(advise, [out.trim()], { folder });
  expect(told.out).toBe('This job is closed: there is no next step.\n');
  const data = await runCommand(advise, [out.trim(), '--json'], { folder });
  expect(JSON.parse(data.out)).toMatchObject({ next: [], held: [] });
});
