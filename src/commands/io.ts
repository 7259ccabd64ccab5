import type { Stamp } from '../core/session/kinds/shapes.ts';
import { firstOf, good, showProblem, type Parsed, type Problem } from '../core/problem.ts';
import { cleanLine, safeJson } from '../core/text.ts';
import type { Disk } from '../store/sessions.ts';

/** What a command may touch: handed in by main, so that commands run in tests as they do in a shell. */
export type Io = {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Lines of standard input, without their newline; one that is no text is told in its place. */
  readonly lines: () => AsyncIterable<Parsed<string>>;
  readonly clock: () => Stamp;
  readonly disk: Disk;
  readonly folders: {
    readonly current: string;
    readonly home: string;
    readonly shipped: string;
    readonly settings: string;
    /** Where sessions are kept when nobody says another folder. */
    readonly sessions: string;
  };
  /** The address that a telephone reaches this machine by, where somebody says it. */
  readonly phoneHost?: string | undefined;
  /**
   * Takes what must still be done when the terminal goes away or the system says stop. That keys come
   * to an end is the terminal going away; lines end by themselves, and are for nobody once none are read.
   */
  readonly onHangUp: (save: () => void, input: 'keys' | 'lines') => void;
  /** Stops the program as the shell's Ctrl+Z does; done when the shell lets it go on. */
  readonly halt: () => Promise<void>;
  /** Takes what is done when another process says stop, and when it goes on behind a stop it could not see. */
  readonly onStop: (stop: () => void, goOn: () => void) => void;
  /** Both ends are a terminal that screens can be drawn on. */
  readonly isTerminal: boolean;
  /** Somebody types on standard input; else it is a file or another program. */
  readonly isTyped: boolean;
  /** Standard error is a terminal on which a line may be drawn over the one before. */
  readonly drawsOver?: boolean;
  /** Columns that lines are folded to. */
  readonly columns: () => number;
};

/** 0 done, 1 found what was looked for, 2 wrong use or bad input, 3 disk or system. */
export type ExitCode = 0 | 1 | 2 | 3;

/** How a command ends: with an exit code, or with what is wrong with its use, its input or the disk. */
export type Ended = Parsed<ExitCode>;

/** A command did what it was called for. */
export const done: Ended = good(0);

export type Command = (io: Io, args: readonly string[]) => Promise<Ended>;

/** Whether a command was asked how it is used. */
export const asksHelp = (args: readonly string[]): boolean =>
  args.slice(0, ends(args)).some((arg) => arg === '--help' || arg === '-h');

/** Whether the program is asked for line by line, instead of on screens. */
export const asksLines = (args: readonly string[]): boolean =>
  args.slice(0, ends(args)).includes('--plain');

/** Where the options end: behind a bare `--` all are words. */
const ends = (args: readonly string[]): number =>
  args.includes('--') ? args.indexOf('--') : args.length;

/** The options that every command takes with a value. */
const valued: ReadonlySet<string> = new Set(['--trees', '--sessions']);

/** The arguments with the command's word first, whatever options stand before it. */
export function commandFirst(args: readonly string[]): readonly string[] {
  const before = (at: number): number => {
    const arg = args[at];
    if (arg?.startsWith('-') !== true) return at;
    return before(at + (valued.has(arg) ? 2 : 1));
  };
  const at = before(0);
  return at < args.length
    ? [...args.slice(at, at + 1), ...args.slice(0, at), ...args.slice(at + 1)]
    : args;
}

/**
 * Runs a command to its exit code; the first of its problems goes to standard error, and where JSON
 * was asked for all of them to standard output: one document, whatever happens.
 * @throws what the command throws, a fault of the program, once its document is printed
 */
export async function runCommand(
  io: Io,
  command: Command,
  args: readonly string[],
): Promise<ExitCode> {
  let printed = false;
  const out = (text: string) => {
    printed = true;
    io.out(text);
  };
  const tell = (problems: readonly Problem[]) => {
    if (args.includes('--json') && !printed) printJson(io, { problems });
  };
  try {
    const ended = await command({ ...io, out }, args);
    if (ended.kind === 'good') return ended.value;
    tell(ended.problems);
    return fail(io, firstOf(ended.problems));
  } catch (error) {
    tell([faultOf(error)]);
    throw error;
  }
}

/** A fault of the program itself, told as what is bad in data is told. */
export const faultOf = (error: unknown): Problem => ({
  code: 'fault',
  message: `This is a fault of the program itself, not of yours. ${String(error)}`,
  mend: 'What was called kept is kept. DROPLIGHT_DEBUG=1 before the command tells where it happened.',
});

/** Wrong use or bad input, or what the disk refused: one clear line on standard error. */
export function fail(io: Io, problem: Problem): ExitCode {
  io.err(`droplight: ${cleanLine(showProblem(problem))}\n`);
  return exitCodeOf(problem);
}

/** 3 for what the system refused, 2 for anything else. */
export const exitCodeOf = ({ code }: Problem): ExitCode => (systemCodes.test(code) ? 3 : 2);

/** Codes that the system gave: the disk's own (ENOSPC, EACCES ...), and the lock it holds. */
const systemCodes = /^(E[A-Z]+|locked|no-lock|perhaps-kept)$/;

/** Prints one JSON document and nothing else. */
export const printJson = (io: Io, value: unknown): void => io.out(`${safeJson(value, 2)}\n`);
