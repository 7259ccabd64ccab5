import { mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import xterm from '@xterm/headless';
import { spawn, type IPty } from '@lydell/node-pty';
import { screenSvg } from './screen-svg.ts';
import { buildProgram } from '../../.scripts/build.mjs';

export type Shown = {
  readonly screen: () => string;
  /** The same as a picture. */
  readonly picture: (title: string) => string;
  readonly type: (keys: string) => void;
  /** Letter by letter, as fast as two fingers write. */
  readonly spell: (letters: string) => void;
  /** All bytes that came out of it, as text. */
  readonly raw: () => string;
  /** Bytes at once, however quick a hand would be. */
  readonly strike: (bytes: string) => void;
  readonly pid: number;
  /** Waits until the screen holds some text, and fails with the screen after ten seconds. */
  readonly until: (text: string | RegExp) => Promise<void>;
  readonly kill: (signal: string) => void;
  readonly exited: Promise<number>;
};

/** Builds the program in a folder of its own: two runs in one checkout never meet. Returns its path. */
export async function buildApart(): Promise<string> {
  const root = mkdtempSync(join(tmpdir(), 'droplight-built-'));
  const outdir = join(root, '.build');
  await buildProgram({ outdir });
  symlinkSync(resolve('trees'), join(root, 'trees'), 'junction');
  writeFileSync(join(root, 'package.json'), '{"type":"module"}');
  return join(outdir, 'droplight.js');
}

/** The environment of a person's shell: what CI adds would switch screens and colours off. */
function environment(extra: Readonly<Record<string, string>>): Record<string, string> {
  const { CI: _ci, NO_COLOR: _no, FORCE_COLOR: _force, ...rest } = process.env;
  return { ...(rest as Record<string, string>), TERM: 'xterm-256color', ...extra };
}

const size = { columns: 80, rows: 24 };

/** Milliseconds between one key and the next: letters struck faster are words, not commands. */
const beat = 400;

/** Milliseconds from letter to letter of somebody who writes with two fingers. */
const letter = 120;

const pause = (milliseconds: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, milliseconds);
  });

/** Runs a built program in a real pseudo-terminal, as a person would. */
export const runProgram = (program: string, args: readonly string[], folder: string): Shown =>
  runInTerminal([process.execPath, program, ...args], folder);

/** Runs any command in one: a shell, that stops and goes on with jobs. */
export function runInTerminal(command: readonly [string, ...string[]], folder: string): Shown {
  const [file, ...args] = command;
  let raw = '';
  const emulator = new xterm.Terminal({
    cols: size.columns,
    rows: size.rows,
    allowProposedApi: true,
    // What the system echoes into a sequence of ours is no news.
    logLevel: 'off',
  });
  const pty: IPty = spawn(file, args, {
    cols: size.columns,
    rows: size.rows,
    cwd: folder,
    env: environment({ DROPLIGHT_SETTINGS: `${folder}/settings` }),
  });
  pty.onData((data) => {
    raw += data;
    emulator.write(data);
  });
  const screen = () =>
    Array.from({ length: size.rows }, (_, row) =>
      (
        emulator.buffer.active
          .getLine(emulator.buffer.active.viewportY + row)
          ?.translateToString(true) ?? ''
      ).trimEnd(),
    ).join('\n');
  const holds = (text: string | RegExp): boolean =>
    typeof text === 'string' ? screen().includes(text) : text.test(screen());
  let hand: Promise<void> = Promise.resolve();
  return {
    screen,
    picture: (title) => screenSvg(emulator, title),
    raw: () => raw,
    strike: (bytes) => pty.write(bytes),
    pid: pty.pid,
    type: (keys) => {
      hand = hand.then(() => pause(beat)).then(() => pty.write(keys));
    },
    spell: (letters) => {
      hand = hand.then(() => pause(beat));
      for (const one of letters) hand = hand.then(() => pause(letter)).then(() => pty.write(one));
    },
    until: async (text) => {
      for (let tries = 0; tries < 400 && !holds(text); tries += 1) await pause(25);
      if (!holds(text)) throw new Error(`never saw ${String(text)} on:\n${screen()}`);
    },
    kill: (signal) => pty.kill(signal),
    exited: new Promise((done) => pty.onExit(({ exitCode }) => done(exitCode))),
  };
}
