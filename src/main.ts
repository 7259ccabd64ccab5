#!/usr/bin/env node
import { fstatSync } from 'node:fs';
import { homedir, hostname, platform, uptime } from 'node:os';
import { join, resolve } from 'node:path';
import { isatty } from 'node:tty';
import {
  asksHelp,
  asksLines,
  commandFirst,
  fail,
  faultOf,
  runCommand,
  type ExitCode,
  type Io,
} from './commands/io.ts';
import { inConsoleFont } from './core/console-signs.ts';
import { version } from './core/version.ts';
import { nodeFiles } from './store/node-files.ts';
import { settingsFolder, usualSessions } from './store/places.ts';

// Asked of the system: to make the streams only to look at them takes longer than a short command.
const isTyped = isatty(0);
const isTerminal = isTyped && isatty(1) && process.env['TERM'] !== 'dumb';

/** Who types has no terminal for the screens, or has them read aloud: then lines come by themselves. */
const wantsLines = isTyped && (!isTerminal || hears(process.env['INK_SCREEN_READER']));

function hears(reader: string | undefined): boolean {
  return reader !== undefined && !['', '0', 'false'].includes(reader);
}

/** Local wall time with its offset, in ISO 8601. */
function wallTime(now: Date): string {
  const offset = -now.getTimezoneOffset();
  const two = (value: number) => String(Math.trunc(Math.abs(value))).padStart(2, '0');
  const local = new Date(now.getTime() + offset * 60_000).toISOString().slice(0, -1);
  return `${local}${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
}

const root = resolve(import.meta.dirname, '..');
const host = { env: process.env, system: platform(), home: homedir() };

const run = `${Date.now().toString(36)}-${process.pid}`;
const began = performance.now();

const io: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  lines: async function* lines() {
    const { linesOf } = await import('./store/lines.ts');
    yield* linesOf(standardInput(), 'standard input');
  },
  clock: () => ({
    at: wallTime(new Date()),
    run,
    mono: Math.round(performance.now() - began),
    up: Math.round(uptime() * 100) / 100,
  }),
  disk: {
    files: nodeFiles,
    holder: `process ${process.pid} on ${hostname()} since ${wallTime(new Date()).slice(0, 16)}`,
  },
  folders: {
    current: process.cwd(),
    home: homedir(),
    shipped: join(root, 'trees'),
    settings: settingsFolder(host),
    sessions: usualSessions(host, root, process.cwd()),
  },
  phoneHost: process.env['DROPLIGHT_PHONE'] || undefined,
  isTerminal,
  isTyped,
  drawsOver: isatty(2) && process.env['TERM'] !== 'dumb',
  columns: () => process.stdout.columns || Number(process.env['COLUMNS']) || 80,
  halt: () => halt(),
  onStop: (stop, goOn) => {
    stopAsked = stop;
    process.on('SIGTSTP', stop);
    // A stop that nobody can take hold of left the terminal to the shell as it was.
    process.on('SIGCONT', () => {
      if (!isHalting) goOn();
    });
  },
  onHangUp: (save, input) => {
    const stop = (code: number) => () => {
      try {
        save();
      } finally {
        process.exit(code);
      }
    };
    process.on('SIGHUP', stop(129));
    process.on('SIGINT', stop(130));
    process.on('SIGTERM', stop(143));
    if (input === 'lines') process.stdout.on('error', stop(129));
    else {
      process.stdin.on('error', stop(129));
      process.stdin.on('end', stop(129));
    }
  },
};

/** Node takes a folder for a stream that has ended already: nothing would be said of it. */
async function* standardInput(): AsyncGenerator<Uint8Array> {
  if (fstatSync(0).isDirectory()) throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
  yield* process.stdin;
}

/** How long a stop may take to arrive, in milliseconds; it never does where no shell waits for it. */
const stopping = 200;

let stopAsked = (): void => {};
let isHalting = false;

/** The whole group stops, as by the terminal's own key: `npm start` stands between us and the shell. */
async function halt(): Promise<void> {
  isHalting = true;
  // Taken by nobody the signal stops us.
  process.off('SIGTSTP', stopAsked);
  await new Promise((goesOn) => {
    setTimeout(goesOn, stopping);
    if (platform() !== 'win32') process.kill(0, 'SIGTSTP');
  });
  process.on('SIGTSTP', stopAsked);
  isHalting = false;
}

/** A bare console shows a blot for a sign that its font lacks. */
function drawSimply(): void {
  const write = process.stdout.write.bind(process.stdout);
  const simply = (text: unknown, ...rest: readonly unknown[]) =>
    Reflect.apply(write, process.stdout, [
      typeof text === 'string' ? inConsoleFont(text) : text,
      ...rest,
    ]) as boolean;
  process.stdout.write = simply;
}

if (isTerminal && process.env['TERM'] === 'linux') drawSimply();

/** The terminal is taken before anything heavy loads, so that keys typed meanwhile are not echoed. */
function takeTerminal(): void {
  if (process.env['NO_COLOR']) process.env['FORCE_COLOR'] = '0';
  process.stdin.setRawMode(true);
  process.stdout.write('\r');
}

async function main(typed: readonly string[]): Promise<ExitCode> {
  const args = commandFirst(typed);
  const [name, ...rest] = args;
  if (name === '--version' || name === '-v') io.out(`${version}\n`);
  else if (name === '--help' || name === '-h') return help([]);
  else if (name !== undefined && name !== 'trees' && asksHelp(rest)) return help([name]);
  else return command(name, rest, args);
  return 0;
}

async function help(words: readonly string[]): Promise<ExitCode> {
  const { help: told } = await import('./commands/help.ts');
  return runCommand(io, told, words);
}

/** The program drawn on the terminal, or told line by line. */
async function shower(inLines: boolean) {
  if (inLines) return (await import('./commands/plain/plain.ts')).plain;
  if (isTerminal) takeTerminal();
  return (await import('./commands/screens.ts')).screens;
}

const isScreen = (name: string | undefined): name is 'start' | 'resume' | 'replay' =>
  name === 'start' || name === 'resume' || name === 'replay';

async function command(
  name: string | undefined,
  rest: readonly string[],
  args: readonly string[],
): Promise<ExitCode> {
  // A replay that is written needs no terminal.
  if (name === 'replay' && rest.some((arg) => arg === '--as' || arg.startsWith('--as='))) {
    const { replay } = await import('./commands/replay.ts');
    return runCommand(io, replay, rest);
  }
  const onScreens = name === undefined || name.startsWith('-') || isScreen(name);
  if (onScreens) {
    const first = isScreen(name) ? name : 'home';
    const shown = await shower(wantsLines || asksLines(args));
    return runCommand(
      io,
      (ports, given) => shown(ports, given, first),
      isScreen(name) ? rest : args,
    );
  }
  // Loaded only now, and only the one: the screens need none of it, and printing JSON needs no screens.
  const { commandNamed } = await import('./commands/table.ts');
  return runCommand(io, await commandNamed(name), rest);
}

// The other end of a pipe may leave early (head, less): the exit code still says what was found.
process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
  if (code !== 'EPIPE' && code !== 'ERR_STREAM_DESTROYED') process.exit(3);
});

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  fail(io, faultOf(error));
  process.exitCode = 3;
  if (process.env['DROPLIGHT_DEBUG'] && error instanceof Error) io.err(`${error.stack ?? ''}\n`);
}
if (isTerminal) process.stdin.unref();
