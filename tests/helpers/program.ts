import { good } from '../../src/core/problem.ts';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Program } from '../../src/app/program.ts';
import type { Ports, Rescued } from '../../src/app/run/ports.ts';
import { Runner } from '../../src/app/run/run.ts';
import type { Drawn, State } from '../../src/app/state.ts';
import { cautionsOn } from '../../src/screens/claim-rows.ts';
import { byGroup } from '../../src/core/tree/groups.ts';
import type { Library } from '../../src/core/tree/shop.ts';
import { update } from '../../src/app/update.ts';
import { cautionKey } from '../../src/app/walk/caution-words.ts';
import { sessionLines } from '../../src/store/find.ts';
import { loadLibrary } from '../../src/store/library.ts';
import { booksAsked } from '../../src/core/session/book.ts';
import { factsToAsk } from '../../src/core/tree/fit.ts';
import { defaultSettings, type Settings } from '../../src/core/settings.ts';
import type { Files } from '../../src/store/files.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { keptAdvice } from './kept-advice.ts';
import { stampAt } from './story.ts';

export type Made = {
  readonly rescued: () => Rescued | undefined;
  readonly program: Program;
  readonly folder: string;
  readonly left: () => boolean;
  /** How often the screen was drawn anew from nothing. */
  readonly redrawn: () => number;
  /** How often the bell rang. */
  readonly rung: () => number;
};

type Options = {
  readonly files?: Files;
  readonly settings?: Partial<Settings>;
  readonly trees?: string;
  readonly folder?: string;
  readonly writeAccount?: Ports['writeAccount'];
  /** Opens a page to a telephone; left out, it never comes to that. */
  readonly phone?: Ports['phone'];
};

/** The same before its larger part has loaded: it draws, and keys wait. */
export const makeUnloaded = (options: Options = {}) => assemble(options);

/** The whole program on a real folder, with a clock that goes on a second a message. */
export function makeProgram(options: Options = {}): Made {
  const { load, ...made } = assemble(options);
  load();
  // The shipped trees are read once for all programs of a test file: they are never changed.
  if (options.trees === undefined && options.files === undefined)
    made.program.dispatch({ kind: 'library-loaded', library: shipped() });
  return made;
}

let read: Library | undefined;
const shipped = (): Library =>
  (read ??= loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' }));

function assemble(options: Options) {
  const folder = options.folder ?? mkdtempSync(join(tmpdir(), 'droplight-'));
  let second = 0;
  let left = false;
  let rescued: Rescued | undefined;
  let redrawn = 0;
  let rung = 0;
  const clock = () => {
    second += 1;
    const { run } = stampAt(0);
    const at = new Date(Date.UTC(2026, 3, 11, 10, 0, second)).toISOString().replace('Z', '+00:00');
    return { at, run, mono: second * 1000, up: 5000 + second };
  };
  const ports: Ports = {
    disk: {
      files: options.files ?? nodeFiles,
      holder: 'a test',
    },
    folders: {
      trees: options.trees ?? 'trees',
      shipped: 'trees',
      sessions: { path: join(folder, 'sessions'), given: false, usual: join(folder, 'sessions') },
      settings: join(folder, 'settings'),
      roots: { current: folder, home: join(folder, 'home') },
    },
    writeAccount:
      options.writeAccount ??
      ((session) => Promise.resolve(good({ path: `${session}.md`, kept: [] }))),
    startAdvice: keptAdvice,
    phone: options.phone ?? { host: '127.0.0.1', open: () => new Promise(() => {}) },
    redraw: () => {
      redrawn += 1;
    },
    ring: () => {
      rung += 1;
    },
    leave: () => {
      left = true;
    },
    handOver: (one) => {
      rescued = one;
    },
  };
  const program = new Program({
    clock,
    settings: { ...defaultSettings, ...options.settings },
    sessions: sessionLines(ports.disk.files, ports.folders.sessions.path),
  });
  const load = () => program.load({ update, runner: new Runner(ports) });
  return {
    program,
    folder,
    left: () => left,
    rescued: () => rescued,
    redrawn: () => redrawn,
    rung: () => rung,
    load,
  };
}

/**
 * Presses keys by name, one after the other, each after what the one before it brought was seen:
 * words are typed letter by letter, `<enter>` is a key.
 */
export function press(program: Program, keys: string): void {
  for (const token of named(keys)) {
    program.dispatch({ kind: 'drawn', drawn: drawnWhole(program.state()) });
    program.dispatch({ kind: 'key', token });
  }
}

/** What a window of 80 by 24 shows of the page on screen, read down to its last line. */
export function drawnWhole({ screen, question }: State): Drawn {
  const { due } = question;
  const size = { rows: 18, columns: 80 };
  const cautions = screen.kind === 'walk' && due !== undefined ? cautionsOn(due, screen, size) : [];
  return { kind: 'page', question, whole: true, cautions, size: '80x24' };
}

/** How many pages of cautions were read for the step on screen. */
export const pagesRead = ({ screen }: State): number =>
  screen.kind === 'walk' ? (screen.seen ?? []).length : 0;

/**
 * Reads the cautions and says that the vehicle is set, as each page asks for it, until something
 * else is asked. A key that means nothing parts one claim from the next.
 */
export function passPages(program: Program): void {
  for (let guard = 0; guard < 30; guard += 1) {
    const { mode } = program.state().question;
    if (mode === 'caution' || mode === 'cause-caution')
      press(program, `Z${cautionKey(pagesRead(program.state()))}`);
    else if (mode === 'prepare' || mode === 'cause-prepare') press(program, 'Zy');
    else if (mode === 'before-proof') press(program, 'Z1y');
    else return;
  }
}

/** One step on: cautions and what is to be set, this is it, repaired; a check is passed by. */
export function goOn(program: Program): void {
  const { mode } = program.state().question;
  // What exactly was found, and what was done, is left empty.
  if (mode === 'text') press(program, '<enter>');
  else if (mode === 'form-text') press(program, '<esc>');
  else if (mode === 'named' || mode === 'repair') press(program, 'Zy');
  else if (mode === 'before-proof' || mode.endsWith('caution') || mode.endsWith('prepare'))
    passPages(program);
  else press(program, 'Zuy');
}

const named = (keys: string): readonly string[] =>
  [...keys.matchAll(/<([\w-]+)>|([\s\S])/gu)].map(([, name, letter = '']) => name ?? letter);

/** Keys from Home that choose a tree on the Start screen and say nothing more of the complaint: the list is in the order of the groups. */
export function chooseTree(id: string): string {
  const index = byGroup(shipped().trees).findIndex((one) => one.id === id);
  return `s${'<down>'.repeat(index + 1)}<enter><enter>`;
}

/** Keys from Home to the first check of the rough-idle tree; its cautions read; facts and book figures of the vehicle unknown. */
export const startKeys = (id = 'rough-idle'): string => {
  const unknown = `${'<down>'.repeat(9)}<enter>`;
  const tree = shipped().trees.find((one) => one.id === id);
  if (tree === undefined) throw new Error(`no tree ${id}`);
  const facts = unknown.repeat(factsToAsk(tree).length);
  const book = '<enter>'.repeat(booksAsked(tree).length);
  return `${chooseTree(id)}Orchard van<enter>JB<enter><enter><enter>${facts}${book}Z1`;
};

/** Waits until the advice is worked out and all is on the disk, as it is while nobody presses a key. */
export async function thoughtOut({ state }: Program): Promise<void> {
  for (let turn = 0; turn < 20_000 && isBusy(state()); turn += 1)
    await new Promise((done) => setImmediate(done));
}

const isBusy = ({ session }: State): boolean =>
  session !== undefined &&
  (session.kept < (session.events.at(-1)?.n ?? 0) ||
    (session.story.closed === undefined && session.advice?.final !== true));
