import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeProgram, startKeys } from '../helpers/program.ts';
import { press } from '../helpers/program.ts';
import { showIn } from '../helpers/terminal.tsx';

const seed = 20_260_411;

/** Keys as the bytes a terminal sends for them. Escape alone is left out: it waits for a timer. */
const keyBytes = [
  '\x1b[A',
  '\x1b[B',
  '\x1b[D',
  '\r',
  '\t',
  '\x7f',
  '1',
  '2',
  '3',
  'u',
  'x',
  'n',
  'b',
  'o',
  'r',
  'a',
  '?',
  'y',
  ' ',
] as const;

/** What the keys come to: the record without its times, and where the screen stands. */
async function ending(pieces: readonly Uint8Array[]) {
  const { program } = makeProgram();
  press(program, startKeys());
  const terminal = await showIn(program);
  await terminal.send(...pieces);
  const { screen, session } = program.state();
  const record = session?.events.map(
    ({ at: _at, mono: _mono, up: _up, run: _run, ...said }) => said,
  );
  await terminal.stop();
  program.shut();
  return { screen, record };
}

const bytesOf = (keys: readonly string[]): Uint8Array => new TextEncoder().encode(keys.join(''));

/** Cuts bytes at the places given, inside an escape sequence too. */
function cut(bytes: Uint8Array, places: readonly number[]): readonly Uint8Array[] {
  const at = [...new Set(places.map((place) => place % (bytes.length + 1)))].toSorted(
    (a, b) => a - b,
  );
  return [...at, bytes.length]
    .map((end, index) => bytes.subarray(index === 0 ? 0 : at[index - 1], end))
    .filter((piece) => piece.length > 0);
}

test('any cutting of the same key bytes ends in the same state and the same record', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.constantFrom(...keyBytes), { minLength: 1, maxLength: 25 }),
      fc.array(fc.nat(200), { maxLength: 12 }),
      async (keys, places) => {
        const oneByOne = await ending(keys.map((key) => bytesOf([key])));
        const atOnce = await ending([bytesOf(keys)]);
        const anyhow = await ending(cut(bytesOf(keys), places));

        expect(atOnce).toEqual(oneByOne);
        expect(anyhow).toEqual(oneByOne);
      },
    ),
    { seed, numRuns: 15 },
  );
}, 300_000);

test('the item recorded is the one that was marked on the screen', async () => {
  const { program } = makeProgram();
  press(program, `${startKeys()}<enter><enter><enter>`);
  const terminal = await showIn(program);

  await terminal.send('\x1b[B\x1b[B');
  const marked = terminal
    .screen()
    .find((row) => row.startsWith(' > '))
    ?.slice(6);
  await terminal.send('\r');

  const { session } = program.state();
  const result = session?.story.legs[0]?.tree.checks['idle-check']?.results.find(
    ({ id }) => id === session.story.findings[0]?.result,
  );
  expect(marked).toBe(result?.label);
  await terminal.stop();
});
