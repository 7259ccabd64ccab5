import { Program, type Ports } from '../app/run.ts';
import type { Message } from '../app/message.ts';
import { readSettings } from '../store/settings.ts';
import type { Doors } from '../screens/stage.tsx';
import { storeError } from '../store/files.ts';
import { fail, type ExitCode, type Io } from './io.ts';
import {
  sessionNamed,
  firstOf,
  readOptions,
  sessionsFolder,
  treesFolder,
  type Given,
} from './options.ts';
import { listSessions } from '../store/sessions.ts';
import { good, type Parsed } from '../core/problem.ts';

const noTerminal = {
  code: 'no-terminal',
  message: 'The screens need a terminal on both ends.',
  mend: 'Without one use "droplight open", "droplight enter" and "droplight write".',
};

/** `droplight`, `droplight start [TREE]`, `droplight resume [SESSION]`: the screens. */
export async function screens(
  io: Io,
  args: readonly string[],
  first: 'home' | 'start' | 'resume',
): Promise<ExitCode> {
  const given = readOptions(args);
  if (given.kind === 'bad') return fail(io, firstOf(given.problems));
  if (!io.isTerminal) return fail(io, noTerminal);
  const openings = openingsFor(io, given.value, first);
  if (openings.kind === 'bad') return fail(io, firstOf(openings.problems));
  const { stage } = await import('../screens/stage.tsx');
  try {
    await stage((doors) => program(io, given.value, doors), openings.value);
    return 0;
  } catch (error) {
    const { code, path, message, mend } = storeError(error, sessionsFolder(io, given.value));
    return fail(io, { code, file: path, message, mend });
  }
}

function program(io: Io, given: Given, { redraw, leave }: Doors): Program {
  const settings = readSettings(io.disk.files, io.folders.settings);
  const ports: Ports = {
    clock: io.clock,
    disk: io.disk,
    folders: {
      trees: treesFolder(io, given),
      shipped: io.folders.shipped,
      sessions: sessionsFolder(io, given),
      settings: io.folders.settings,
    },
    writeAccount: async (session) => {
      const { writeAccount } = await import('./write.ts');
      return writeAccount(io, session, {});
    },
    redraw,
    leave,
  };
  const made = new Program(ports, settings);
  io.onHangUp(() => made.shut());
  return made;
}

/** What happens before the first key: nothing, the Start screen, or a session picked up. */
function openingsFor(
  io: Io,
  given: Given,
  first: 'home' | 'start' | 'resume',
): Parsed<readonly Message[]> {
  const [named] = given.words;
  if (first === 'start')
    return good(
      named === undefined
        ? [{ kind: 'key', token: 's' }]
        : [
            { kind: 'key', token: 's' },
            { kind: 'tree-chosen', tree: named },
          ],
    );
  if (first === 'home') return good([]);
  const folder = sessionsFolder(io, given);
  const newest = listSessions(io.disk.files, folder)[0]?.path;
  const path =
    named === undefined && newest !== undefined
      ? good(newest)
      : sessionNamed(io, given, named ?? '');
  return path.kind === 'bad' ? path : good([{ kind: 'session-chosen', path: path.value }]);
}
