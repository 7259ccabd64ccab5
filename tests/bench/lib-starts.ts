// How long programs take to their first frame or to their end, in turn, so that a busy moment meets them all.
import { spawnIn } from './lib-terminal.ts';

export type Start = {
  readonly name: string;
  readonly args: readonly string[];
  /** What its first frame shows; a program without one is timed to its end. */
  readonly shows?: string;
};

/** Milliseconds of each start, one list a program; the first round warms up and is not counted. */
export async function timeStarts(
  starts: readonly Start[],
  { rounds, folder }: { readonly rounds: number; readonly folder: string },
): Promise<readonly (readonly number[])[]> {
  const times = starts.map((): number[] => []);
  for (let round = 0; round <= rounds; round += 1)
    for (const [index, start] of starts.entries()) {
      const took = await timeOne(start, folder);
      if (round > 0) times[index]?.push(took);
    }
  return times;
}

function timeOne({ args, shows }: Start, folder: string): Promise<number> {
  return new Promise((done) => {
    const began = performance.now();
    const pty = spawnIn(folder, args);
    let seen = '';
    let took: number | undefined;
    pty.onData((data) => {
      seen += data;
      if (took !== undefined || shows === undefined || !seen.includes(shows)) return;
      took = performance.now() - began;
      pty.kill('SIGKILL');
    });
    pty.onExit(() => done(took ?? performance.now() - began));
  });
}
