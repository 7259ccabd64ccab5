import { emptyState, type Drawn, type State } from '../../src/app/state.ts';
import { update } from '../../src/app/update.ts';
import { cautionKey } from '../../src/app/walk/caution-words.ts';
import { newHeader } from '../../src/core/session/header/new-header.ts';
import { defaultSettings } from '../../src/core/settings.ts';
import type { Library } from '../../src/core/tree/shop.ts';
import { loadLibrary } from '../../src/store/library.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { cautionsOn, claimPages } from '../../src/screens/claim-rows.ts';
import { pagesRead } from './program.ts';

/** A window, with the rows that the frame needs of it. */
export type Window = { readonly columns: number; readonly rows: number };
const inside = ({ columns, rows }: Window) => ({ columns, rows: rows - 6 });

let read: Library | undefined;
export const library = (): Library =>
  (read ??= loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' }));

/** A job on a shipped tree that was just begun, without a disk and without a screen. */
export function jobOn(id: string, facts: Readonly<Record<string, string>> = {}): State {
  const { trees, shop } = library();
  const tree = trees.find((one) => one.id === id);
  if (tree === undefined) throw new Error(`there is no tree ${id}`);
  const begun = { at: '2026-04-11T10:00:00.000+00:00', run: 'run-1', mono: 0, up: 5000 };
  const header = newHeader(
    {
      tree,
      shop,
      vehicle: { name: 'Orchard van', facts },
      who: 'JB',
      conditions: {},
      units: 'us',
    },
    begun.at,
  );
  const home = { ...emptyState(begun, defaultSettings), library: library() };
  const opened = { kind: 'session-opened', path: 'a.jsonl', header, events: [], torn: 0 } as const;
  return update(home, opened, begun).state;
}

/** What a window shows of the state: the page that is read now, and whether it is the last one. */
export function drawnIn({ screen, question }: State, window: Window): Drawn {
  const { due } = question;
  const on = screen.kind === 'walk' && due !== undefined ? { due, screen } : undefined;
  const pages = on && claimPages(on.due, on.screen, inside(window));
  const page = screen.kind === 'walk' ? (screen.page ?? 0) : 0;
  return {
    kind: 'page',
    question,
    whole: pages === undefined || page >= pages.length - 1,
    cautions: on === undefined ? [] : cautionsOn(on.due, on.screen, inside(window)),
    size: `${window.columns}x${window.rows}`,
  };
}

/** The state after a key struck three seconds later, once the page was drawn. */
export function strike(before: State, token: string, window: Window): State {
  const { now } = before;
  const at = new Date(Date.parse(now.at) + 3000).toISOString().replace('Z', '+00:00');
  const later = { ...now, at, mono: now.mono + 3000, up: now.up + 3 };
  const { state } = update(before, { kind: 'drawn', drawn: drawnIn(before, window) }, now);
  return update(state, { kind: 'key', token }, later).state;
}

const isMarked = ({ screen }: State): boolean =>
  screen.kind === 'walk' && screen.input.kind === 'ready' && screen.input.cursor >= 0;

/** The key that says yes to the page on screen, once its last line was drawn; nothing where none is asked. */
export function yesKey(state: State, window: Window): string | undefined {
  const { mode } = state.question;
  const drawn = drawnIn(state, window);
  if (drawn.kind === 'page' && !drawn.whole) return ' ';
  if (mode.endsWith('caution')) return cautionKey(pagesRead(state));
  // The first line is marked, then it is back.
  if (mode === 'before-proof') return isMarked(state) ? 'y' : '1';
  return ['prepare', 'cause-prepare', 'named', 'repair', 'leg', 'safeguard'].includes(mode)
    ? 'y'
    : undefined;
}
