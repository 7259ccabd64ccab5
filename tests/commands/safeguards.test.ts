import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { story } from '../../src/commands/story.ts';
import { runCommand, scratch } from '../helpers/commands.ts';
import { guardedFolder } from '../helpers/guarded.ts';

type Answer = {
  readonly ok: boolean;
  readonly step?: { readonly kind: string; readonly reason?: string };
  readonly problem?: { readonly code: string; readonly value?: string };
};

/** Enters actions into a new session on the guarded tree: an answer a line, and the story after. */
async function entered(lines: readonly string[]) {
  const folder = scratch();
  const trees = ['--trees', resolve(guardedFolder)];
  const { out } = await runCommand(open, ['boils', '--vehicle', 'Van', ...trees], { folder });
  const path = out.trim();
  const ran = await runCommand(enter, [path, ...trees], { folder, lines });
  const told = await runCommand(story, [path, '--json'], { folder });
  return {
    code: ran.code,
    answers: ran.out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Answer),
    story: JSON.parse(told.out) as { readonly passed: unknown; readonly findings: unknown[] },
  };
}

test('enter refuses what is behind a shut safeguard by a stable code, and takes it with a word', async () => {
  const {
    code,
    answers,
    story: told,
  } = await entered([
    '{"do":"find","check":"heat-run","result":"boils"}',
    '{"do":"standing","engine":"cranking"}',
    '{"do":"find","check":"heat-run","result":"boils","despite":"both were looked at"}',
  ]);

  expect(code).toBe(2);
  expect(answers.map(({ ok, problem }) => problem?.code ?? ok)).toEqual([
    'safeguard-shut',
    'safeguard-shut',
    true,
  ]);
  expect(answers[0]?.problem?.value).toBe('oil-look');
  expect(told.findings).toHaveLength(1);
  expect(told.passed).toMatchObject([
    { step: { kind: 'check', check: 'heat-run' }, why: 'both were looked at' },
  ]);
});

test('enter tells why a result that names danger ends the way', async () => {
  const { answers } = await entered([
    '{"do":"find","check":"oil-look","result":"milky"}',
    '{"do":"find","check":"heat-run","result":"boils"}',
  ]);

  expect(answers[0]?.step).toMatchObject({
    kind: 'stop',
    reason: 'Coolant is in the oil: it is not cranked or run again.',
  });
  expect(answers[1]?.problem?.code).toBe('safeguard-shut');
});
