import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Message } from '../../src/app/message.ts';
import type { Program } from '../../src/app/program.ts';
import { makeProgram, press, startKeys } from '../helpers/program.ts';
import { showIn } from '../helpers/terminal.tsx';

const seed = 20_260_411;

/** Keys as the bytes a terminal sends for them. Escape alone is left out: it waits for a timer. */
const named = {
  up: '\x1b[A',
  down: '\x1b[B',
  left: '\x1b[D',
  enter: '\r',
  tab: '\t',
  back: '\x7f',
};
const bytesOfKey = new Map([
  ...Object.entries(named),
  // No list in the order of the advice, which comes in its own time.
  ...Array.from('123uxnbca? ').map((key) => [key, key] as const),
]);

/** What the keys come to: the record without its times, and where the screen stands. */
function endOf(program: Program) {
  const { screen, session } = program.state();
  const record = session?.events.map(
    ({ at: _at, mono: _mono, up: _up, run: _run, ...said }) => said,
  );
  program.shut();
  return { screen, record };
}

function atFirstStep(): Program {
  const { program } = makeProgram();
  press(program, startKeys());
  return program;
}

/**
 * By way of a terminal: the bytes in pieces, each as one read. What is claimed hangs on what was
 * drawn before its key, and so on the cutting; here nothing counts as drawn, so nothing is claimed.
 */
async function typed(pieces: readonly Uint8Array[]) {
  const program = atFirstStep();
  const { state, subscribe } = program;
  const dispatch = (message: Message): void => {
    if (message.kind !== 'drawn') program.dispatch(message);
  };
  const terminal = await showIn({ state, subscribe, dispatch });
  await terminal.send(...pieces);
  await terminal.stop();
  return endOf(program);
}

/** Without a terminal: each key by its name, one at a time. */
function pressed(keys: readonly string[]) {
  const program = atFirstStep();
  for (const token of keys) program.dispatch({ kind: 'key', token });
  return endOf(program);
}

const bytesOf = (keys: readonly string[]): Uint8Array =>
  new TextEncoder().encode(keys.map((key) => bytesOfKey.get(key)).join(''));

/** Cuts bytes at the places given, inside an escape sequence too. */
function cut(bytes: Uint8Array, places: readonly number[]): readonly Uint8Array[] {
  const at = [...new Set(places.map((place) => place % (bytes.length + 1)))].toSorted(
    (a, b) => a - b,
  );
  return [...at, bytes.length]
    .map((end, index) => bytes.subarray(index === 0 ? 0 : at[index - 1], end))
    .filter((piece) => piece.length > 0);
}

test('any cutting of the bytes of some keys comes to what the keys come to one by one', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.constantFrom(...bytesOfKey.keys()), { minLength: 1, maxLength: 25 }),
      fc.array(fc.nat(200), { maxLength: 12 }),
      async (keys, places) => {
        const expected = pressed(keys);

        expect(await typed([bytesOf(keys)])).toEqual(expected);
        expect(await typed(cut(bytesOf(keys), places))).toEqual(expected);
      },
    ),
    { seed, numRuns: 15 },
  );
}, 300_000);

test('the item recorded is the one that was marked on the screen', async () => {
  const { program } = makeProgram();
  press(program, `${startKeys()}y`);
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
