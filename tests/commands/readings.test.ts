import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { advise } from '../../src/commands/advise.ts';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { story } from '../../src/commands/story.ts';
import { runCommand, scratch } from '../helpers/commands.ts';
import { answers, said } from '../helpers/begun.ts';
import { find, readingsFolder, see } from '../helpers/readings.ts';

const trees = ['--trees', resolve(readingsFolder)];

/** A session on the tree of readings after some actions, and what `enter` answered. */
async function entered(...actions: readonly object[]) {
  const folder = scratch();
  const options = ['--vehicle', 'Van', '--facts', 'cylinders=four', '--sheet', 'idle-vacuum=20'];
  const opened = await runCommand(open, ['weak-runner', ...trees, ...options], { folder });
  const path = opened.out.trim();
  const lines = said(see('pull-test', 'weak'), ...actions);
  const { out } = await runCommand(enter, [path, ...trees], { folder, lines });
  return { path, folder, answered: answers(out).slice(1) };
}

const storyOf = async ({ path, folder }: { path: string; folder: string }): Promise<unknown> =>
  JSON.parse((await runCommand(story, [path, '--json'], { folder })).out);

test('all that a reading can be goes in by a line of JSON and comes out of the story', async () => {
  const session = await entered(
    find('feed-drop', '12.55 12.30'),
    find('coil-ohms', 'OL'),
    find('idle-vacuum', '17.6'),
    find('compression', '150 148 90 149 psi'),
  );

  expect(session.answered.map(({ ok }) => ok)).toEqual([true, true, true, true]);
  expect(await storyOf(session)).toMatchObject({
    vehicle: { sheet: { 'idle-vacuum': { value: 20, unit: 'inHg' } } },
    over: [],
    findings: [
      { check: 'pull-test' },
      {
        result: 'much',
        reading: { value: 0.25, unit: 'V' },
        readings: [{ value: 12.55 }, { value: 12.3 }],
      },
      { result: 'open', beyond: 'OL' },
      { result: 'good', orResult: 'low', reading: { value: 17.6 } },
      { result: 'uneven', reading: { value: 60, unit: '%' }, readings: { length: 4 } },
    ],
  });
});

test('a wrong count is refused in one line, and nothing of it is kept', async () => {
  const session = await entered(find('compression', '150 148 90'), find('feed-drop', '12.5'));

  expect(session.answered.map(({ problem }) => problem?.code)).toEqual([
    'reading-count',
    'reading-count',
  ]);
  expect(await storyOf(session)).toMatchObject({ findings: { length: 1 } });
});

test('a state that is spent is told by enter, and stands in the story', async () => {
  const session = await entered({ do: 'unsure', check: 'bowl-look' }, see('bowl-look', 'still'));

  expect(session.answered[1]).toMatchObject({
    ok: true,
    warnings: [expect.stringMatching(/only while it refuses/)],
  });
  expect(await storyOf(session)).toMatchObject({
    over: ['refuses'],
    findings: [{}, { check: 'bowl-look', unsaid: true }],
  });
});

test('the advice tells the parts of what a step takes', async () => {
  const { path, folder } = await entered();
  const { out } = await runCommand(advise, [path, '--json'], { folder });
  const { next } = JSON.parse(out) as {
    next: { parts: Record<string, number>; minutes: number }[];
  };

  expect(next.length).toBeGreaterThan(0);
  for (const { parts, minutes } of next) {
    const { total, ...each } = parts;
    expect(total).toBe(minutes);
    expect(Object.values(each).reduce((sum, part) => sum + part, 0)).toBeCloseTo(minutes, 9);
  }
});

test('a reading that may be either says nothing of the two to the suspects', async () => {
  const advised = async (reading: string) => {
    const { path, folder } = await entered(find('feed-drop', reading));
    const { out } = await runCommand(advise, [path, '--json'], { folder });
    const { suspects } = JSON.parse(out) as { suspects: { cause: string; chance: number }[] };
    return suspects.find(({ cause }) => cause === 'feed-joint')?.chance ?? 0;
  };
  const [over, under, much] = [
    await advised('12.50 12.295'),
    await advised('12.50 12.305'),
    await advised('12.50 12.2'),
  ];

  // Both bands are all that the check can show, so a drop right at the limit is no evidence.
  expect(over).toBeCloseTo(under, 12);
  expect(over).toBeCloseTo(0.24, 2);
  expect(much).toBeGreaterThan(0.85);
});
