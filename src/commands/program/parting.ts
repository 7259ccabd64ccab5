import { dirname } from 'node:path';
import type { Program } from '../../app/program.ts';
import { cleanRow } from '../../core/text.ts';
import { sessionName } from '../../store/find.ts';
import type { Io } from '../io.ts';
import { sessionsFolder, type Given } from '../options.ts';
import { newPlace } from './new-place.ts';

/** What the shell is told once the program is left. */
export type Parting = {
  /** An account was written there. */
  readonly written: (path: string) => void;
  /** Looks on, which job was open last. */
  readonly follow: (program: Program) => void;
  /** The accounts, the way back to a job that is open, and where jobs are kept if that is new: a line each. */
  readonly words: () => string;
};

/** Asked before a job may begin; told after it. */
export function parting(io: Io, given: Given): Parting {
  const placeTold = newPlace(io, given);
  const accounts = new Set<string>();
  let open: string | undefined;
  return {
    written: (path) => void accounts.add(path),
    follow: (program) => {
      program.subscribe(() => {
        const { session, screen } = program.state();
        if (screen.kind === 'replay') open = undefined;
        else if (session !== undefined)
          open = session.story.closed === undefined ? session.path : undefined;
      });
    },
    words: () =>
      [
        ...[...accounts].map((path) => `account: ${cleanRow(path)}\n`),
        ...(open === undefined ? [] : [wayBackTo(io, given, open)]),
        placeTold(),
      ].join(''),
  };
}

/** How the shell takes up a job, in one line. */
function wayBackTo(io: Io, given: Given, path: string): string {
  const folder = given.text('sessions');
  const where = folder === undefined ? '' : ` --sessions ${inShell(folder)}`;
  const inFolder = dirname(path) === sessionsFolder(io, given);
  const named = inFolder ? `${sessionName(path)}${where}` : inShell(path);
  return `resume with: droplight resume ${cleanRow(named)}\n`;
}

/** A path as a shell takes it for one word. */
const inShell = (path: string): string =>
  /^[\w./~@:+-]+$/.test(path) ? path : `'${path.replaceAll("'", `'\\''`)}'`;
