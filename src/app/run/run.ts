import { basename, join } from 'node:path';
import { firstOf, type Problem } from '../../core/problem.ts';
import type { Header } from '../../core/session/header/header.ts';
import type { Settings } from '../../core/settings.ts';
import { attempt, refusal, StoreError } from '../../store/files.ts';
import { loadLibrary } from '../../store/library.ts';
import { ownLibrary } from '../../store/own-jobs.ts';
import { secretOf } from '../../store/practice.ts';
import { createSession, openSession, type HeldSession } from '../../store/sessions.ts';
import type { Shelf } from '../../store/shelf.ts';
import { folderFor, wholePath } from '../../store/folder.ts';
import { writeSettings } from '../../store/settings.ts';
import { Advisor } from '../advisor.ts';
import type { Effect } from '../effect.ts';
import type { Message } from '../message.ts';
import { sendOn } from './send-on.ts';
import { onSessions } from './sessions.ts';
import type { Ports, Rescued } from './ports.ts';
import type { EffectRunner, Program } from '../program.ts';
import { Photos } from './photos.ts';
import { onVehicles, remember } from './vehicles.ts';

/** What is done about the session that is open. */
type SessionEffect = Extract<Effect, { kind: 'create-session' | 'open-session' | 'shut-session' }>;

/** Does what the program asks: the only part of the app that knows the disk. */
export class Runner implements EffectRunner {
  readonly #ports: Ports;
  readonly #advisor: Advisor;
  readonly #photos: Photos;
  #sessions: string;
  #open: HeldSession | undefined;
  /** The disk refused what is held, and the person has asked to leave once already. */
  #warnedOfLoss = false;

  constructor(ports: Ports) {
    this.#ports = ports;
    this.#sessions = ports.folders.sessions.path;
    this.#advisor = new Advisor(ports.startAdvice);
    this.#photos = new Photos(ports, () => this.#open?.path);
  }

  readonly shut = (): void => {
    this.#advisor.stop();
    this.#photos.stop();
    this.#open?.journal.settle();
    this.#open?.release();
    this.#open = undefined;
  };

  /** Lets go of the session on a disk that refuses: what is not kept is put elsewhere or handed over. */
  readonly abandon = (): void => {
    this.#photos.stop();
    const open = this.#open;
    if (open === undefined) return;
    this.#open = undefined;
    if (open.journal.unsaved().length > 0) this.#ports.handOver(this.#rescue(open));
    open.release();
  };

  #rescue({ journal, path, recovered }: HeldSession): Rescued {
    const { roots } = this.#ports.folders;
    const name = `${basename(path, '.jsonl')}-${recovered.events.length}-rescued.jsonl`;
    const elsewhere = join(roots.home, 'droplight-rescued', name);
    const saved = attempt(elsewhere, () => journal.saveElsewhere(elsewhere));
    return saved.kind === 'good'
      ? { kind: 'elsewhere', path: elsewhere }
      : { kind: 'lines', lines: journal.unsaved() };
  }

  readonly perform = (effect: Effect, program: Program): void => {
    switch (effect.kind) {
      case 'append':
        this.#attempt(program, () => this.#open?.journal.append(effect.event));
        return;
      case 'advise':
        this.#advisor.begin(program);
        return;
      case 'strike':
      case 'play-on':
      case 'call':
        sendOn(effect, program);
        return;
      case 'retry':
        this.#open?.journal.retry();
        return;
      case 'load-library':
        this.#loadLibrary(program);
        return;
      case 'list-sessions':
      case 'read-jobs':
        onSessions(effect, { files: this.#ports.disk.files, folder: this.#sessions }, program);
        return;
      case 'load-vehicles':
      case 'look-back':
      case 'keep-vehicle':
        onVehicles(effect, this.#garage(), program);
        return;
      case 'keep-photo':
      case 'start-phone':
      case 'stop-phone':
        this.#photos.perform(effect, program);
        return;
      case 'create-session':
      case 'open-session':
      case 'shut-session':
        this.#onSession(effect, program);
        return;
      case 'write-account':
        this.#writeAccount(effect.path, program);
        return;
      case 'choose-folder':
        this.#chooseFolder(effect.typed, program);
        return;
      case 'save-settings':
        this.#saveSettings(effect.settings, program);
        return;
      case 'ring':
      case 'redraw':
        this.#ports[effect.kind]();
        return;
      case 'leave':
        this.#leave(program);
        return;
    }
  };

  #onSession(effect: SessionEffect, program: Program): void {
    if (effect.kind === 'open-session') this.#openSession(effect.path, program);
    else if (effect.kind === 'create-session')
      this.#attempt(program, () => this.#begin(effect.header, program));
    else this.#attempt(program, () => this.shut());
  }

  #begin(header: Header, program: Program): void {
    const shelf: Shelf = new Map();
    const path = createSession(this.#ports.disk, this.#sessions, header, shelf);
    remember(this.#garage(), header, program);
    this.#openSession(path, program, shelf);
  }

  readonly #garage = () => ({ files: this.#ports.disk.files, sessions: this.#sessions });

  /** Live at once, unless the command line says another folder for this run. */
  #chooseFolder(typed: string, { dispatch }: Program): void {
    const { disk, folders } = this.#ports;
    const folder = typed === '' ? folders.sessions.usual : wholePath(typed, folders.roots);
    const found = folderFor(disk.files, folder);
    if (found.kind === 'bad') {
      dispatch({ kind: 'failed', problem: firstOf(found.problems) });
      return;
    }
    if (!folders.sessions.given) this.#sessions = folder;
    dispatch({ kind: 'folder-chosen', path: typed === '' ? '' : folder });
  }

  #saveSettings(settings: Settings, program: Program): void {
    const { disk, folders } = this.#ports;
    const saved = writeSettings(disk.files, folders.settings, settings);
    this.#later(program, saved, () => ({ kind: 'settings-saved' }));
  }

  #writeAccount(path: string, program: Program): void {
    this.#attempt(program, () => this.#open?.journal.settle());
    this.#later(program, this.#ports.writeAccount(path), (written) =>
      written.kind === 'good'
        ? { kind: 'account-written', ...written.value }
        : { kind: 'failed', problem: firstOf(written.problems) },
    );
  }

  #loadLibrary({ state, dispatch }: Program): void {
    const { folders, disk } = this.#ports;
    if (state().library !== undefined) return;
    const library = loadLibrary(disk.files, {
      folder: folders.trees,
      shipped: folders.shipped,
      file: folders.treeFile,
    });
    const folder = this.#sessions;
    const own = ownLibrary(disk.files, library, { folder, ownJobs: state().settings.ownJobs });
    dispatch({ kind: 'library-loaded', library: own.library });
    if (own.trouble !== undefined) dispatch({ kind: 'failed', problem: own.trouble });
  }

  #openSession(path: string, { dispatch }: Program, shelf?: Shelf): void {
    const listener = {
      kept: (n: number) => dispatch({ kind: 'kept', n }),
      trouble: (error: StoreError) => dispatch({ kind: 'not-kept', problem: this.#notKept(error) }),
      mended: (error: StoreError) => dispatch({ kind: 'failed', problem: problemOf(error) }),
    };
    const opened = openSession(this.#ports.disk, path, listener, shelf);
    if (opened.kind === 'bad') {
      const [problem] = opened.problems;
      if (problem !== undefined) dispatch({ kind: 'session-refused', problem });
      return;
    }
    this.#open = opened.value;
    const { recovered, torn } = opened.value;
    const { disk, folders } = this.#ports;
    const secret = secretOf(disk.files, folders.settings, recovered.header);
    dispatch({ kind: 'session-opened', path, ...recovered, torn, secret });
  }

  #leave({ dispatch }: Program): void {
    try {
      this.shut();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      if (!this.#warnedOfLoss) {
        this.#warnedOfLoss = true;
        dispatch({ kind: 'not-kept', problem: this.#notKept(error) });
        return;
      }
      this.abandon();
    }
    this.#ports.leave();
  }

  /** Any key makes the disk try again; who leaves once more takes what is not kept along. */
  #notKept(error: StoreError): Problem {
    const { mend: usual, ...problem } = problemOf(error);
    const again = usual.replace('try again', 'press any key to try again');
    return { ...problem, mend: this.#warnedOfLoss ? 'Leave again to have it elsewhere.' : again };
  }

  /** Runs something that the disk may refuse; a refusal becomes a notice. */
  #attempt({ dispatch }: Program, job: () => void): void {
    try {
      job();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      dispatch({ kind: 'failed', problem: problemOf(error) });
    }
  }

  #later<T>({ dispatch }: Program, job: Promise<T>, message: (result: T) => Message): void {
    job.then(
      (result) => dispatch(message(result)),
      (error: unknown) => dispatch({ kind: 'failed', problem: problemOf(error) }),
    );
  }
}

/** Anything a job may reject with, as one line for the screen. */
function problemOf(error: unknown): Problem {
  if (error instanceof StoreError) return refusal(error);
  const message = error instanceof Error ? error.message : String(error);
  return { code: 'failed', message, mend: 'Nothing was lost; try again.' };
}
