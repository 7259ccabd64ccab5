import type { Message } from '../../app/message.ts';
import { Program, type Logic } from '../../app/program.ts';
import type { Ports, Rescued } from '../../app/run/ports.ts';
import { bad, good, type Parsed } from '../../core/problem.ts';
import { cleanRow, safeJson } from '../../core/text.ts';
import { listSessions, lookedFirst, sessionLines } from '../../store/find.ts';
import { readSettings, settingsTrouble } from '../../store/settings.ts';
import type { Begun } from '../../screens/stage.tsx';
import type { Ended, Io } from '../io.ts';
import { fileNamed, sessionsFolder, treesFolder, type Given } from '../options.ts';
import { screenUses } from '../uses.ts';

/** What the program begins with, drawn on screens or told line by line. */
export type First = 'home' | keyof typeof screenUses;

/** What only whoever shows the program can do. */
export type Shower = Pick<Ports, 'redraw' | 'ring' | 'leave' | 'handOver' | 'startAdvice'> & {
  /** The part that comes behind the first frame, as it is to be loaded; as it is where nothing is said. */
  readonly around?: (logic: Logic) => Logic;
  /** Hears where an account was written. */
  readonly written: (path: string) => void;
};

/** The program, and the loading of the part that comes after its first frame. */
export function begin(io: Io, given: Given, first: First, shower: Shower): Begun {
  const { around = (logic) => logic, written, ...hands } = shower;
  const treeFile = first === 'start' ? fileNamed(io, given.words[0] ?? '') : undefined;
  const sessions = sessionsFolder(io, given);
  const program = new Program({
    clock: io.clock,
    settings: readSettings(io.disk.files, io.folders.settings),
    sessions: sessionLines(io.disk.files, sessions, lookedFirst),
    trouble: settingsTrouble(io.disk.files, io.folders.settings),
  });
  const ports: Ports = {
    disk: io.disk,
    folders: {
      trees: treesFolder(io, given),
      treeFile,
      shipped: io.folders.shipped,
      sessions: {
        path: sessions,
        given: given.text('sessions') !== undefined,
        usual: io.folders.sessions,
      },
      settings: io.folders.settings,
      roots: io.folders,
    },
    writeAccount: async (session) => {
      const { writeAccount } = await import('../write.ts');
      const account = await writeAccount(io, session);
      if (account.kind === 'good') written(account.value.path);
      return account;
    },
    ...(io.phoneHost !== undefined && { phone: { host: io.phoneHost } }),
    ...hands,
  };
  const load = async () => {
    const { later } = await import('../../screens/contents.tsx');
    program.load(around({ update: later.update, runner: new later.Runner(ports) }));
    const { unsafeLeft } = await import('../../store/vehicles.ts');
    setImmediate(() =>
      program.dispatch({
        kind: 'unsafe-found',
        unsafe: unsafeLeft(io.disk.files, sessions),
      }),
    );
    return later.contents;
  };
  return { program, load };
}

/** Everything is kept first; only then the terminal is given back and told the way to the job. */
export const onHangUp = (io: Io, program: Program, giveBack: () => void): void =>
  io.onHangUp(() => {
    try {
      program.shut();
    } catch {
      program.abandon();
    }
    giveBack();
  }, 'keys');

/** What the disk would not keep goes to standard output, once the screens are gone. */
export function tellRescued(io: Io, rescued: Rescued): Ended {
  if (rescued.kind === 'lines') for (const line of rescued.lines) io.out(safeLine(line));
  else io.out(`${cleanRow(rescued.path)}\n`);
  return bad({
    code: 'EIO',
    message:
      rescued.kind === 'lines'
        ? 'The disk did not take the last answers: they are the lines above.'
        : 'The disk did not take the last answers: the whole record is in the file named above.',
    mend: 'Keep them; the session itself holds what was called kept.',
  });
}

/** A line of a record with the signs that drive a terminal written as escapes: the same values. */
const safeLine = (line: string): string => `${safeJson(JSON.parse(line))}\n`;

/** What happens before the first key: nothing, the Start screen, or a session picked up. */
export async function openingsFor(
  io: Io,
  given: Given,
  first: First,
): Promise<Parsed<readonly Message[]>> {
  const [named] = given.words;
  if (first === 'start') return startOf(io, given, named);
  if (first === 'home') return good([]);
  if (first === 'replay') return replayOf(io, given);
  const folder = sessionsFolder(io, given);
  const newest = listSessions(io.disk.files, folder)[0]?.path;
  if (named === undefined && newest !== undefined)
    return good([{ kind: 'session-chosen', path: newest }]);
  const { sessionNamed } = await import('../session.ts');
  const path = sessionNamed(io, given, named ?? '');
  return path.kind === 'bad' ? path : good([{ kind: 'session-chosen', path: path.value }]);
}

/** The Start screen, with its first question answered where a tree was named, by id or by its file. */
async function startOf(
  io: Io,
  given: Given,
  named: string | undefined,
): Promise<Parsed<readonly Message[]>> {
  const asked: Message = { kind: 'key', token: 's' };
  if (named === undefined) return good([asked]);
  if (fileNamed(io, named) === undefined)
    return good([asked, { kind: 'tree-chosen', tree: named }]);
  const { openTree } = await import('../library.ts');
  const opened = openTree(io, given, named);
  if (opened.kind === 'bad') return opened;
  return good([asked, { kind: 'tree-chosen', tree: opened.value.tree.id }]);
}

/** A session read only, to be shown again. */
async function replayOf(io: Io, given: Given): Promise<Parsed<readonly Message[]>> {
  const { namedSession } = await import('../session.ts');
  const path = namedSession(io, given, `droplight ${screenUses.replay.use}`);
  if (path.kind === 'bad') return path;
  const { loadSession } = await import('../../store/sessions.ts');
  const loaded = loadSession(io.disk.files, path.value);
  if (loaded.kind === 'bad') return loaded;
  const { header, events, damage } = loaded.value;
  return good([{ kind: 'replay-opened', path: path.value, header, events, damage }]);
}
