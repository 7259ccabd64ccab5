// npm run torture [WORD...] [--scale N]: every attack at length, with its counts and its seed.
import { deedsWhileOpen } from './deeds.ts';
import { bytes, clocks, failingCalls } from './disk.ts';
import { entered } from './entering.ts';
import { doors } from './inputs.ts';
import type { Attack } from './lib.ts';
import { spoiltLocks } from './locks.ts';
import { kills, openings, writers } from './processes.ts';
import { forged, longDay } from './sessions.ts';
import { shownOnScreens } from './shown.ts';
import { endingsOfScreens, stopsOfScreens } from './terminal.ts';
import { hostileTrees } from './trees.ts';

/** Each attack with its seed, and how often it is tried at length and in `npm test`. */
export const attacks: Readonly<
  Record<
    string,
    { readonly run: Attack; readonly seed: number; readonly long: number; readonly short: number }
  >
> = {
  bytes: { run: bytes, seed: 101, long: 400_000, short: 3000 },
  calls: { run: failingCalls, seed: 0, long: 5000, short: 150 },
  deeds: { run: deedsWhileOpen, seed: 103, long: 3000, short: 60 },
  clocks: { run: clocks, seed: 104, long: 20_000, short: 300 },
  doors: { run: doors, seed: 105, long: 1_000_000, short: 4000 },
  enter: { run: entered, seed: 106, long: 20_000, short: 120 },
  forged: { run: forged, seed: 107, long: 20_000, short: 250 },
  trees: { run: hostileTrees, seed: 113, long: 1000, short: 4 },
  locks: { run: spoiltLocks, seed: 114, long: 5000, short: 60 },
  openings: { run: openings, seed: 0, long: 1000, short: 15 },
  writers: { run: writers, seed: 108, long: 300, short: 2 },
  endings: { run: endingsOfScreens, seed: 110, long: 100, short: 1 },
  shown: { run: shownOnScreens, seed: 112, long: 6000, short: 30 },
  stops: { run: stopsOfScreens, seed: 111, long: 200, short: 3 },
  long: { run: longDay, seed: 0, long: 100_000, short: 300 },
  kills: { run: kills, seed: 109, long: 5000, short: 6 },
};

async function main(words: readonly string[]): Promise<number> {
  const scale = Number(words.find((word) => /^[\d.]+$/.test(word)) ?? '1');
  const wanted = Object.keys(attacks).filter((name) => words.includes(name));
  let all = 0;
  console.log('attack | tries | failures | seed | seen | seconds');
  for (const name of wanted.length > 0 ? wanted : Object.keys(attacks)) {
    const attack = attacks[name];
    if (attack === undefined) continue;
    const began = performance.now();
    const count = Math.ceil(attack.long * scale);
    const done = await attack.run({ seed: attack.seed, count });
    const seconds = ((performance.now() - began) / 1000).toFixed(0);
    const bad = [...done.failures, ...(done.slow ?? [])];
    const row = [done.attack, done.tries, bad.length, attack.seed, done.seen, seconds];
    console.log(row.join(' | '));
    for (const failure of bad.slice(0, 5)) console.log(`  ${JSON.stringify(failure)}`);
    all += bad.length;
  }
  return all === 0 ? 0 : 1;
}

if (process.argv[1] === import.meta.filename) process.exitCode = await main(process.argv.slice(2));
