// How long a key takes to the first byte of the frame that answers it, and what the program holds at the end.
import { execFileSync } from 'node:child_process';
import { pause, spawnIn } from './lib-terminal.ts';

/** No more output for so long: what a key began is over, and what was thought behind it as well. */
const quiet = 150;

/** A key that shows nothing within this shows nothing. */
const patience = 700;

export type Hand = {
  /** Milliseconds to the answer of a key; nothing where it shows none. */
  readonly press: (key: string) => Promise<number | undefined>;
  readonly screenSaid: (text: string) => boolean;
  /** Memory of the process as the system counts it, in MB. */
  readonly megabytes: () => number;
  readonly leave: () => void;
};

export async function atHand(folder: string, args: readonly string[]): Promise<Hand> {
  const pty = spawnIn(folder, args);
  let last = performance.now();
  let first: number | undefined;
  let seen = '';
  pty.onData((data) => {
    last = performance.now();
    first ??= last;
    seen += data;
  });
  const settle = async () => {
    while (performance.now() - last < quiet) await pause(10);
  };
  await pause(1500);
  await settle();
  return {
    press: async (key) => {
      first = undefined;
      const began = performance.now();
      pty.write(key);
      // Looked at seldom: the clock stands in the handler of the data, and is not hurried by this.
      while (first === undefined && performance.now() - began < patience) await pause(5);
      const answered: number | undefined = first;
      await settle();
      return answered === undefined ? undefined : answered - began;
    },
    screenSaid: (text) => seen.includes(text),
    megabytes: () =>
      Number(execFileSync('ps', ['-o', 'rss=', '-p', String(pty.pid)], { encoding: 'utf8' })) /
      1024,
    leave: () => pty.kill('SIGKILL'),
  };
}
