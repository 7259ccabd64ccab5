import type { Problem } from '../core/problem.ts';
import type { Stamp } from '../core/session/event.ts';
import type { Settings } from '../core/settings.ts';
import { StoreError, type Files } from '../store/files.ts';
import { loadLibrary } from '../store/library.ts';
import {
  createSession,
  listSessions,
  openSession,
  type Disk,
  type OpenSession,
} from '../store/sessions.ts';
import { writeSettings } from '../store/settings.ts';
import type { Effect } from './effect.ts';
import type { Message } from './message.ts';
import { emptyState, type SessionLine, type State } from './state.ts';
import { update } from './update.ts';

/** What the program needs of the world. Tests pass their own. */
export type Ports = {
  readonly clock: () => Stamp;
  readonly disk: Disk;
  readonly folders: {
    readonly trees: string;
    /** Our own trees: their shop serves a folder that has none. */
    readonly shipped: string;
    readonly sessions: string;
    readonly settings: string;
  };
  /** Writes the account of a session; returns the path of what was written. */
  readonly writeAccount: (session: string) => Promise<string>;
  readonly redraw: () => void;
  readonly leave: () => void;
};

/** The program without a screen: messages in, states out, effects done on the way. */
export class Program {
  readonly #ports: Ports;
  readonly #listeners = new Set<() => void>();
  readonly #queue: Message[] = [];
  #state: State;
  #open: OpenSession | undefined;
  #busy = false;
  /** The disk refused what is held, and the person has asked to leave once already. */
  #warnedOfLoss = false;

  constructor(ports: Ports, settings: Settings) {
    this.#ports = ports;
    this.#state = {
      ...emptyState(ports.clock(), settings),
      sessions: sessionLines(ports.disk.files, ports.folders.sessions),
    };
  }

  readonly state = (): State => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Takes a message at once; one that comes up while another is being taken waits its turn. */
  readonly dispatch = (message: Message): void => {
    this.#queue.push(message);
    if (this.#busy) return;
    this.#busy = true;
    try {
      for (let next = this.#queue.shift(); next !== undefined; next = this.#queue.shift())
        this.#take(next);
    } finally {
      this.#busy = false;
    }
    for (const listener of this.#listeners) listener();
  };

  /** Resolves when everything is on the disk; rejects with a StoreError otherwise. */
  async settled(): Promise<void> {
    await this.#open?.journal.settled();
  }

  /** Puts everything on the disk now and lets go of the session; for leaving in a hurry. */
  shut(): void {
    this.#open?.journal.settle();
    this.#open?.release();
    this.#open = undefined;
  }

  #take(message: Message): void {
    const { state, effects } = update(this.#state, message, this.#ports.clock());
    this.#state = state;
    for (const effect of effects) this.#run(effect);
  }

  #run(effect: Effect): void {
    const { folders, disk } = this.#ports;
    switch (effect.kind) {
      case 'append':
        this.#open?.journal.append(effect.event);
        return;
      case 'retry':
        this.#open?.journal.retry();
        return;
      case 'load-library':
        if (this.#state.library === undefined)
          this.dispatch({
            kind: 'library-loaded',
            library: loadLibrary(disk.files, folders.trees, folders.shipped),
          });
        return;
      case 'list-sessions':
        this.dispatch({
          kind: 'sessions-listed',
          sessions: sessionLines(disk.files, folders.sessions),
        });
        return;
      case 'create-session':
        this.#attempt(() => {
          const path = createSession(disk, folders.sessions, effect.header);
          this.#openSession(path);
        });
        return;
      case 'open-session':
        this.#openSession(effect.path);
        return;
      case 'shut-session':
        this.#attempt(() => this.shut());
        return;
      case 'write-account':
        this.#attempt(() => this.#open?.journal.settle());
        this.#later(this.#ports.writeAccount(effect.path), (path) => ({
          kind: 'account-written',
          path,
        }));
        return;
      case 'save-settings':
        this.#later(writeSettings(folders.settings, effect.settings), () => ({
          kind: 'told',
          text: 'Settings kept.',
        }));
        return;
      case 'redraw':
        this.#ports.redraw();
        return;
      case 'leave':
        this.#leave();
        return;
    }
  }

  #openSession(path: string): void {
    const opened = openSession(this.#ports.disk, path, {
      kept: (n) => this.dispatch({ kind: 'kept', n }),
      trouble: (error) => this.dispatch({ kind: 'not-kept', problem: problemOf(error) }),
    });
    if (opened.kind === 'bad') {
      const [problem] = opened.problems;
      if (problem !== undefined) this.dispatch({ kind: 'session-refused', problem });
      return;
    }
    this.#open = opened.value;
    const { reading, torn } = opened.value;
    this.dispatch({ kind: 'session-opened', path, ...reading, torn });
  }

  #leave(): void {
    try {
      this.shut();
    } catch (error) {
      if (!(error instanceof StoreError) || this.#warnedOfLoss) throw error;
      this.#warnedOfLoss = true;
      this.dispatch({ kind: 'not-kept', problem: problemOf(error) });
      return;
    }
    this.#ports.leave();
  }

  /** Runs something that the disk may refuse; a refusal becomes a notice. */
  #attempt(job: () => void): void {
    try {
      job();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.dispatch({ kind: 'failed', problem: problemOf(error) });
    }
  }

  #later<T>(job: Promise<T>, message: (result: T) => Message): void {
    job.then(
      (result) => this.dispatch(message(result)),
      (error: unknown) => this.dispatch({ kind: 'failed', problem: problemOf(error) }),
    );
  }
}

/** Anything a job may reject with, as one line for the screen. */
function problemOf(error: unknown): Problem {
  if (error instanceof StoreError)
    return { code: error.code, file: error.path, message: error.message, mend: error.mend };
  const message = error instanceof Error ? error.message : String(error);
  return { code: 'failed', message, mend: 'Nothing was lost; try again.' };
}

/** The sessions of a folder for Home's list; whether one is closed stands in its last lines. */
function sessionLines(files: Files, folder: string): readonly SessionLine[] {
  return listSessions(files, folder).map(({ path, name }, index) => ({
    path,
    name,
    // Older ones are not opened for the list: the first frame must not wait for them.
    closed: index >= looked || isClosed(files, path),
  }));
}

const looked = 6;

function isClosed(files: Files, path: string): boolean {
  try {
    return new TextDecoder().decode(files.read(path)).includes('"kind":"closed"');
  } catch {
    // A file that cannot be read is nothing to pick up.
    return true;
  }
}
