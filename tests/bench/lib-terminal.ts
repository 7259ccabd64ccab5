// Programs in a real pseudo-terminal, and the clock beside them.
import { spawn, type IPty } from '@lydell/node-pty';

const { CI: _ci, NO_COLOR: _no, FORCE_COLOR: _force, ...environment } = process.env;

export const spawnIn = (folder: string, args: readonly string[]): IPty =>
  spawn(process.execPath, [...args], {
    cols: 80,
    rows: 24,
    cwd: folder,
    env: {
      ...(environment as Record<string, string>),
      TERM: 'xterm-256color',
      HOME: folder,
      DROPLIGHT_SETTINGS: `${folder}/settings`,
    },
  });

/** The value below which a part of them lies; 0.5 is the median. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN;
}

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, milliseconds);
  });
