import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { scratch } from '../helpers/commands.ts';
import { expectGolden } from '../helpers/golden.ts';
import { buildApart, runProgram, type Shown } from '../helpers/pseudo-terminal.ts';
import { pictured, pressesIn, withoutHours } from '../helpers/ten-minutes.ts';
import { xmlTrouble } from '../helpers/xml.ts';

let program = '';
beforeAll(async () => {
  program = await buildApart();
}, 60_000);
afterAll(() => rmSync(dirname(dirname(program)), { recursive: true }));

/** The README's picture of a screen is what this program shows there: `npm run golden` draws it anew. */
async function expectPicture(shown: Shown): Promise<void> {
  shown.spell(pictured);
  await shown.until(`${pictured}_`);
  await shown.until('QUICKER');
  const picture = withoutHours(shown.picture('A reading of 12.3 V, and what it would mean'));

  expectGolden('../../src/guide/screen.svg', picture);
  expect(xmlTrouble(picture)).toBeUndefined();
  shown.spell('\x7f'.repeat(pictured.length));
  await shown.until('Reading > _');
}

test('the first ten minutes go as README.md tells them, word for word, to a written account', async () => {
  const folder = scratch();
  const shown = runProgram(program, [], folder);
  await shown.until('From the complaint to a proven repair');
  const presses = pressesIn();

  expect(presses.length).toBeGreaterThan(30);
  for (const [at, { keys, says }] of presses.entries()) {
    // The same key again is taken once its page could have been read.
    if (presses[at - 1]?.keys === keys) await sleep(2100);
    if (keys === `${pictured}\r`) await expectPicture(shown);
    shown.spell(keys);
    await shown.until(says);
  }
  expect(await shown.exited).toBe(0);
  // The last line in the shell says where the account lies.
  expect(shown.screen()).toContain('account: ');
  const [account = ''] = readdirSync(join(folder, 'sessions')).filter((name) =>
    name.endsWith('.md'),
  );
  const text = readFileSync(join(folder, 'sessions', account), 'utf8');

  expect(text).toContain('gray film in the clamp');
  expect(text).toContain('brushed bright, tightened');
}, 300_000);
