import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { advise } from '../../../src/commands/advise.ts';
import { enter } from '../../../src/commands/enter.ts';
import { practice } from '../../../src/commands/practice/practice.ts';
import { review } from '../../../src/commands/review.ts';
import { sessions } from '../../../src/commands/sessions.ts';
import { verify } from '../../../src/commands/verify.ts';
import { write } from '../../../src/commands/write.ts';
import { loadSession } from '../../../src/store/sessions.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { pastJobs, unsafeLeft } from '../../../src/store/vehicles.ts';
import { newVehicle } from '../../../src/core/session/vehicle/vehicle.ts';
import { isPractice } from '../../../src/core/session/header/is-practice.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';

/** A practice begun in a folder of its own, and the path of its session. */
async function begun(folder: string, ...args: readonly string[]): Promise<string> {
  const { out, err } = await runCommand(practice, [...args, '--json'], { folder });
  if (err !== '') throw new Error(err);
  return (JSON.parse(out) as { path: string }).path;
}

const line = (action: object): string => JSON.stringify(action);

async function entered(folder: string, path: string, ...actions: readonly object[]) {
  const { out } = await runCommand(enter, [path], { folder, lines: actions.map(line) });
  return out
    .trim()
    .split('\n')
    .map((one) => JSON.parse(one) as { ok: boolean; problem?: { code: string }; shown?: object });
}

/** Enough to prove the bulkhead joint. */
const toTheEnd = [
  { do: 'make', check: 'lamps-horn', acknowledged: true },
  { do: 'hint' },
  { do: 'repair', cause: 'bulkhead', acknowledged: true },
  { do: 'make', check: 'lamps-horn', acknowledged: true },
] as const;

const header = (path: string) => {
  const loaded = loadSession(nodeFiles, path);
  if (loaded.kind === 'bad') throw new Error('unreadable');
  return loaded.value.header;
};

test('a practice is played by lines: the vehicle answers, and the proof tells the fault', async () => {
  const folder = scratch();
  const path = await begun(folder, 'no-supply', '--cause', 'bulkhead', '--who', 'KL');
  const refused = await entered(folder, path, { do: 'find', check: 'lamps-horn', result: 'dead' });
  const before = readFileSync(path, 'utf8');
  const answers = await entered(folder, path, ...toTheEnd);

  expect(isPractice(header(path))).toBe(true);
  expect(refused[0]?.problem?.code).toBe('practice-answers');
  expect(answers.map(({ ok }) => ok)).toEqual([true, true, true, true]);
  expect(answers[0]?.shown).toMatchObject({ check: 'lamps-horn' });
  expect(before).not.toContain('revealed');
  expect(readFileSync(path, 'utf8')).toContain('"as":"proven","causes":["bulkhead"]');
});

test('it is told apart in the lists, the account, the review and by verify', async () => {
  const folder = scratch();
  const path = await begun(folder, 'no-supply', '--cause', 'bulkhead');
  await entered(folder, path, ...toTheEnd);
  const [listed, reviewed, verified] = await Promise.all([
    runCommand(sessions, [], { folder }),
    runCommand(review, [path], { folder }),
    runCommand(verify, [path], { folder }),
  ]);
  await runCommand(write, [path, '--out', join(folder, 'out')], { folder });
  const pages = readdirSync(join(folder, 'out')).filter((name) => name.endsWith('.md'));
  const account = readFileSync(join(folder, 'out', pages[0] ?? ''), 'utf8');

  expect(listed.out).toContain('  practice, ');
  expect(reviewed.out.split('\n')[0]).toContain('PRACTICE on a hidden fault');
  expect(account.split('\n').find((text) => /\w/.test(text) && !text.startsWith('<!'))).toContain(
    'PRACTICE on a hidden fault',
  );
  expect(account).toContain('bulkhead');
  expect(verified.code).toBe(0);
  expect(verified.out).toContain("every answer is its vehicle's");
});

test('a secret that is gone ends the practice, and the record says so', async () => {
  const folder = scratch();
  const path = await begun(folder, 'no-supply');
  rmSync(join(folder, 'settings', 'practice'), { recursive: true });
  const answers = await entered(
    folder,
    path,
    { do: 'make', check: 'lamps-horn' },
    { do: 'close', as: 'given-up' },
  );
  const verified = await runCommand(verify, [path], { folder });

  expect(answers.map(({ ok, problem }) => problem?.code ?? ok)).toEqual(['practice-lost', true]);
  expect(readFileSync(path, 'utf8')).toContain('"kind":"revealed","as":"lost","previous"');
  expect(verified.out).toContain('the fault was lost');
});

test('a secret that was exchanged is no secret of this practice', async () => {
  const folder = scratch();
  const path = await begun(folder, 'no-supply', '--cause', 'bulkhead');
  const secrets = join(folder, 'settings', 'practice');
  const [name = ''] = readdirSync(secrets);
  writeFileSync(join(secrets, name), line({ causes: ['ammeter'], salt: 'c'.repeat(64) }));
  const [answer] = await entered(folder, path, { do: 'make', check: 'lamps-horn' });

  expect(answer?.problem?.code).toBe('practice-lost');
});

test('given up, the fault is told; nothing answers after that', async () => {
  const folder = scratch();
  const path = await begun(folder, 'no-supply', '--hard', '--seed', '3');
  const answers = await entered(
    folder,
    path,
    { do: 'close', as: 'given-up' },
    { do: 'reopen' },
    { do: 'make', check: 'lamps-horn' },
    { do: 'hint' },
  );

  expect(answers.map(({ problem }) => problem?.code)).toEqual([
    undefined,
    undefined,
    'practice-over',
    'practice-over',
  ]);
  expect(readFileSync(path, 'utf8')).toMatch(
    /"as":"given-up","causes":\["[a-z-]+","[a-z-]+"\],"salt":"[0-9a-f]{64}"/,
  );
});

test('the advice is a hint: one at a time, for minutes, and not for nothing', async () => {
  const folder = scratch();
  const path = await begun(folder, 'no-supply', '--seed', '1');
  const free = await runCommand(advise, [path], { folder });
  const answers = await entered(folder, path, { do: 'hint' }, { do: 'hint' });
  const paid = await runCommand(advise, [path], { folder });

  expect(free.err).toContain('advice is a hint');
  expect(answers.map(({ problem }) => problem?.code)).toEqual([undefined, 'hint-given']);
  expect(paid.code).toBe(0);
});

test('the same seed hides the same, and another one leaves the same first line but its commitment', async () => {
  const commitments = await Promise.all(
    ['7', '7', '8'].map(async (seed) => {
      const made = header(await begun(scratch(), 'no-start', '--seed', seed));
      return made.practice;
    }),
  );

  expect(commitments[0]).toEqual(commitments[1]);
  expect(commitments[2]).not.toEqual(commitments[0]);
  expect(Object.keys(commitments[0] ?? {})).toEqual(['commitment']);
});

/** A set of three faults. */
async function setOf(tree: string) {
  const folder = scratch();
  const file = join(folder, 'set.json');
  const args = ['set', tree, '--count', '3', '--name', 'march', '--out', file];
  const made = await runCommand(practice, args, { folder });
  return { folder, file, args, made, text: readFileSync(file, 'utf8') };
}

test('a set hides the same for everybody, and no cause stands in it', async () => {
  const { file, text } = await setOf('no-crank');
  const numbers = ['2', '2', '3'];
  const paths = await Promise.all(
    numbers.map((number) => begun(scratch(), '--set', file, '--number', number)),
  );
  const [one, other, third] = paths.map(header);
  const seeds = (JSON.parse(text) as { faults: { seed: string }[] }).faults.map(({ seed }) => seed);
  const named = Object.keys(one?.trees['no-crank']?.causes ?? {}).filter((cause) =>
    text.includes(`"${cause}"`),
  );

  expect(one?.practice).toEqual(other?.practice);
  expect(one?.practice?.set).toEqual({ name: 'march', number: 2 });
  expect(third?.practice?.commitment).not.toBe(one?.practice?.commitment);
  expect(named).toEqual([]);
  expect(
    paths.some((path) => seeds.some((seed) => readFileSync(path, 'utf8').includes(seed))),
  ).toBe(false);
});

test('a set is not written over, has its numbers, and is bound to its tree', async () => {
  const { folder, file, args, text, made } = await setOf('no-crank');
  const over = await runCommand(practice, args, { folder });
  const strange = await runCommand(practice, ['--set', file, '--number', '4'], { folder });
  writeFileSync(file, text.replace(/"mark": "[0-9a-f]/, '"mark": "x'));
  const changed = await runCommand(practice, ['--set', file, '--number', '1'], { folder });

  expect(made.code).toBe(0);
  expect(over.err).toContain('never written over');
  expect(strange.err).toContain('1 to 3');
  expect(changed.err).toContain('another version of the tree');
});

test('it is no job of any vehicle', async () => {
  const folder = scratch();
  const path = await begun(folder, 'no-supply', '--cause', 'bulkhead');
  await entered(folder, path, { do: 'follow-up', text: 'brake hose', urgency: 'unsafe' });
  const kept = join(folder, 'sessions');

  expect(pastJobs(nodeFiles, kept, newVehicle('Practice vehicle'))).toEqual([]);
  expect(unsafeLeft(nodeFiles, kept)).toEqual([]);
  expect(readdirSync(kept)).not.toContain('vehicles');
});

test.each([
  [['brakes'], 'handed to inspection'],
  [['no-supply', '--cause', 'flat'], 'no cause "flat"'],
  [['no-supply', '--hard', '--cause', 'bulkhead'], '--hard draws two faults'],
  [[], 'wants one tree'],
])('%j is refused in one line', async (args, words) => {
  const { code, err } = await runCommand(practice, args);

  expect(code).toBe(2);
  expect(err).toContain(words);
});

test('members of a class are compared as a page, as JSON and as a table', async () => {
  const folder = scratch();
  const who = await Promise.all(
    ['KL', 'MN'].map((name) => begun(folder, 'no-supply', '--seed', '5', '--who', name)),
  );
  const [page, json, csv] = await Promise.all(
    ['md', 'json', 'csv'].map((as) =>
      runCommand(practice, ['compare', ...who, '--as', as], { folder }),
    ),
  );
  const strange = await runCommand(practice, ['compare', ...who, '--as', 'pdf'], { folder });

  expect(page?.out).toContain('| KL | open |');
  expect(JSON.parse(json?.out ?? '')).toMatchObject({ faults: [{ members: [{}, {}] }] });
  expect(csv?.out.split('\r\n')).toHaveLength(4);
  expect(strange.code).toBe(2);
});
