import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildProgram } from '../../.scripts/build.mjs';
import { folderFor } from './lib.ts';

/** A process that has started and waits to be told what to do. */
export type Child = ReturnType<typeof start>;

function start(program: string) {
  const one = spawn(process.execPath, ['--disable-warning=ExperimentalWarning', program], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  let said = '';
  one.stdout.on('data', (data: Buffer) => (said += data.toString()));
  // It is killed while it is told something: that is no failure of the one who tells.
  one.stdin.on('error', () => {});
  const ended = once(one, 'close');
  const lines = (): readonly string[] => said.split('\n').slice(0, -1);
  return {
    ended,
    lines,
    kept: (): readonly string[] =>
      lines().flatMap((line) => (line.startsWith('kept ') ? [line.slice(5)] : [])),
    tell: (words: string): void => void one.stdin.write(`${words}\n`),
    leave: (): void => void one.stdin.end(),
    kill: (signal: NodeJS.Signals): void => void one.kill(signal),
    isGone: (): boolean => one.exitCode !== null || one.signalCode !== null,
  };
}

export const sleep = (after: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, after);
  });

/** Waits until it has said so many lines that begin so, or is gone. */
export async function untilSaid(one: Child, word: string, least = 1): Promise<void> {
  const count = () => one.lines().filter((line) => line.startsWith(word)).length;
  while (count() < least && !one.isGone()) await sleep(1);
}

/** How many wait, started, while one is at work. */
const ahead = 2;

/** Children out of one bundle, started before they are needed: a kill costs no start of Node. */
export async function pool() {
  const folder = folderFor('child');
  await buildProgram({
    outdir: folder,
    entry: 'tests/torture/child.ts',
    name: 'child',
    isLean: false,
  });
  const program = join(folder, 'child.js');
  const waiting: Child[] = [];
  const fill = (): void => {
    while (waiting.length < ahead) waiting.push(start(program));
  };
  fill();
  return {
    next: async (): Promise<Child> => {
      const one = waiting.shift() ?? start(program);
      fill();
      await untilSaid(one, 'ready');
      return one;
    },
    close: async (): Promise<void> => {
      for (const one of waiting) one.kill('SIGKILL');
      await Promise.all(waiting.map(({ ended }) => ended));
      rmSync(folder, { recursive: true });
    },
  };
}
