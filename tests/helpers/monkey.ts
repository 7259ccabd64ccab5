import type { State } from '../../src/app/state.ts';
import { update } from '../../src/app/update.ts';
import { fold } from '../../src/core/session/fold.ts';
import { drawnIn, jobOn, library, yesKey, type Window } from './by-keys.ts';

/** A row of numbers from 0 to 1 that the seed alone decides (mulberry32, from memory). */
function random(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const windows: readonly Window[] = [
  { columns: 40, rows: 10 },
  { columns: 60, rows: 20 },
  { columns: 80, rows: 16 },
  { columns: 80, rows: 24 },
  { columns: 120, rows: 40 },
];
const named = 'enter esc up down left right pgup pgdn home end back delete tab C-l C-a C-e C-u C-w';
const keys = [...named.split(' '), ...'1234567890.-!? abcdefghijklmnopqrstuvwxyz'.split('')];
/** Keys that answer, choose and type: struck more often than the others. */
const common = ['enter', 'down', ...'1234y2Z.o'.split('')];

/** What is claimed by an event, and so wants its page drawn to its last line before the key. */
const claims = new Set(['condemned', 'repaired', 'closed', 'standing', 'access', 'part-on', 'leg']);

/** What a run of keys came to: what must not be, each with the key at which it was. */
export type MonkeyRun = {
  readonly wrong: readonly string[];
  /** Events by their kind: a monkey that records nothing shows nothing. */
  readonly kinds: Readonly<Record<string, number>>;
};

/** Strikes so many keys at jobs on the shipped trees, in bursts and in windows that change. */
export function monkey(seed: number, times: number): MonkeyRun {
  const draw = random(seed);
  const one = <T>(of: readonly T[]): T => {
    const picked = of[Math.floor(draw() * of.length)];
    if (picked === undefined) throw new Error('nothing to pick from');
    return picked;
  };
  const kinds: Record<string, number> = {};
  const wrong: string[] = [];
  const begin = () => jobOn(one(library().trees).id);
  let state = begin();
  let window = one(windows);
  for (let time = 0; time < times; time += 1) {
    if (state.session === undefined || state.leaving || draw() < 0.002) state = begin();
    if (draw() < 0.01) window = one(windows);
    const burst = draw() < 0.1;
    state = update(state, { kind: 'drawn', drawn: drawnIn(state, window) }, state.now).state;
    const choosing = { draw, one, window };
    const tokens = Array.from({ length: burst ? 2 + Math.floor(draw() * 4) : 1 }, () =>
      nextKey(state, choosing),
    );
    const before = state;
    state = struck(before, tokens, 200 + Math.floor(draw() * 4000));
    const added = addedTo(before, state);
    for (const { kind } of added) kinds[kind] = (kinds[kind] ?? 0) + 1;
    wrong.push(
      ...wrongIn(before, state).map((what) => `${seed}/${time} ${tokens.join(' ')}: ${what}`),
    );
  }
  return { wrong, kinds };
}

type Choosing = {
  readonly draw: () => number;
  readonly one: <T>(of: readonly T[]) => T;
  readonly window: Window;
};

function nextKey(state: State, { draw, one, window }: Choosing): string {
  const way = draw();
  if (way < 0.35) return yesKey(state, window) ?? one(common);
  return way < 0.7 ? one(common) : one(keys);
}

/** One key, or several that came in one read. */
function struck(before: State, tokens: readonly string[], after: number): State {
  const { now } = before;
  const at = new Date(Date.parse(now.at) + after).toISOString().replace('Z', '+00:00');
  const later = { ...now, at, mono: now.mono + after, up: now.up + after / 1000 };
  const [token = ''] = tokens;
  const message =
    tokens.length === 1
      ? ({ kind: 'key', token } as const)
      : ({ kind: 'struck-together', tokens } as const);
  return update(before, message, later).state;
}

const eventsOf = ({ session }: State) => session?.events ?? [];
const addedTo = (before: State, after: State) =>
  after.session === undefined || before.session?.header !== after.session.header
    ? []
    : eventsOf(after).slice(eventsOf(before).length);

/** What is not as it must be after a key. */
function wrongIn(before: State, after: State): readonly string[] {
  const added = addedTo(before, after);
  const { drawn, question } = before;
  const whole = drawn?.kind === 'page' && drawn.question === question && drawn.whole;
  const onPage = drawn?.kind === 'page' ? drawn.cautions : [];
  const seen = before.screen.kind === 'walk' ? (before.screen.seen ?? []).flat() : [];
  const read = added.flatMap((event) =>
    event.kind === 'check-begun' || event.kind === 'condemned'
      ? ((event.acknowledged ?? []) as readonly string[])
      : [],
  );
  return [
    ...added.filter(({ kind }) => claims.has(kind) && !whole).map(({ kind }) => `${kind} unseen`),
    ...read.filter((id) => !onPage.includes(id) && !seen.includes(id)).map((id) => `${id} unread`),
    ...unlikely(after),
  ];
}

/** States that cannot be. */
function unlikely({ session, question, screen }: State): readonly string[] {
  if (session === undefined) return [];
  const { header, events } = session;
  const numbers = events.map(({ n }) => n);
  const folded = fold(header, events);
  return [
    ...(numbers.some((n, index) => n !== index + 1) ? ['numbers'] : []),
    ...(folded.findings.length === session.story.findings.length ? [] : ['another story']),
    ...(screen.kind === 'walk' && question.due === undefined ? ['nothing asked'] : []),
  ];
}
