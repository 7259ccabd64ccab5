import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { runCommand as run, type Command, type ExitCode, type Io } from '../../src/commands/io.ts';
import { good } from '../../src/core/problem.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import type { Files } from '../../src/store/files.ts';

export type Ran = { readonly code: ExitCode; readonly out: string; readonly err: string };

export const scratch = (): string => mkdtempSync(join(tmpdir(), 'droplight-'));

/** Runs a command as main would, in a folder of its own, with lines on its standard input. */
export async function runCommand(
  command: Command,
  args: readonly string[],
  options: {
    readonly folder?: string;
    readonly lines?: readonly string[];
    readonly files?: Files;
    /** Where our own trees are. */
    readonly shipped?: string;
    /** Hears what is printed, for a command that does not end. */
    readonly heard?: (text: string) => void;
    /** Columns that lines are folded to. */
    readonly columns?: number;
  } = {},
): Promise<Ran> {
  const folder = options.folder ?? scratch();
  let [out, err, second] = ['', '', 0];
  const io: Io = {
    out: (text) => {
      out += text;
      options.heard?.(text);
    },
    err: (text) => {
      err += text;
    },
    lines: async function* lines() {
      for (const line of options.lines ?? []) yield good(line);
    },
    clock: () => {
      second += 1;
      const at = new Date(Date.UTC(2026, 3, 11, 10, 42, second))
        .toISOString()
        .replace('Z', '+00:00');
      return { at, run: 'run-1', mono: second * 1000, up: 9000 + second };
    },
    disk: {
      files: options.files ?? nodeFiles,
      holder: 'a test',
    },
    folders: {
      current: folder,
      home: folder,
      shipped: options.shipped ?? resolve('trees'),
      settings: join(folder, 'settings'),
      sessions: join(folder, 'sessions'),
    },
    isTerminal: false,
    isTyped: false,
    columns: () => options.columns ?? 80,
    onHangUp: () => {},
    halt: () => Promise.resolve(),
    onStop: () => {},
  };
  const code = await run(io, command, args);
  return { code, out, err };
}
