import { expect, test } from 'vitest';
import { cautionKey } from '../../src/app/walk/caution-words.ts';
import type { State } from '../../src/app/state.ts';
import { update } from '../../src/app/update.ts';
import { job } from '../helpers/job.ts';
import { drawnWhole, makeProgram, pagesRead, press, startKeys } from '../helpers/program.ts';

/** Every key a terminal can send that the program knows by name, and every printable ASCII one. */
const keys = [
  ...'enter esc up down left right pgup pgdn home end back delete tab backtab'.split(' '),
  ...'C-l C-a C-b C-d C-e C-f C-h C-k C-u C-w C-left C-right'.split(' '),
  ...Array.from({ length: 0x7f - 0x20 }, (_, index) => String.fromCharCode(0x20 + index)),
];

const claimed = new Set([
  'condemned',
  'not-this',
  'repaired',
  'closed',
  'reopened',
  'standing',
  'access',
  'part-on',
  'aid-on',
  'aid-off',
  'leg',
]);
const answered = new Set(['found', 'proved', 'unsure', 'skipped', 'settled', 'corrected']);

const events = ({ session }: State) => session?.events ?? [];
const said = (state: State, kinds: ReadonlySet<string>, before: State): readonly string[] =>
  events(state)
    .slice(events(before).length)
    .flatMap(({ kind }) => (kinds.has(kind) ? [kind] : []));

/** The state that keys lead to; each is struck a second after the other, once the page was drawn. */
function at(way: string): State {
  const { program } = makeProgram();
  press(program, way);
  const state = program.state();
  program.shut();
  return state;
}

/** A key held down: it comes again after two thirds of a second, and then thirty times a second. */
function held(start: State, token: string, times: number): State {
  let state = start;
  let mono = start.now.mono + 5000;
  for (let time = 0; time < times; time += 1) {
    state = update(state, { kind: 'drawn', drawn: drawnWhole(state) }, state.now).state;
    state = update(state, { kind: 'key', token }, { ...state.now, mono }).state;
    mono += time === 0 ? 660 : 33;
  }
  return state;
}

/** The keys by which a page takes a claim of its own, if it makes one. */
function claimKeys(state: State): readonly string[] {
  const { question } = state;
  if (question.mode.endsWith('caution')) return [cautionKey(pagesRead(state))];
  if (question.mode === 'named' || question.mode === 'repair') return ['y', 'x'];
  const claims = ['prepare', 'cause-prepare', 'leg', 'apart', 'close', 'reopen', 'history'];
  return claims.includes(question.mode) ? ['y'] : [];
}

/** Claims that one page makes: all that is to be set before a step is one of them. */
const pages = (kinds: readonly string[]): number =>
  kinds.filter((kind) => kind !== 'standing' && kind !== 'access').length +
  (kinds.some((kind) => kind === 'standing' || kind === 'access') ? 1 : 0);

test.each(Object.entries(job))('no key held down claims or answers twice: %s', (_, way) => {
  const start = at(way);
  const wrong = keys.flatMap((key) => {
    const end = held(start, key, 60);
    const claims = said(end, claimed, start);
    const answers = said(end, answered, start);
    return [
      ...(pages(claims) > (claimKeys(start).includes(key) ? 1 : 0)
        ? [`${key}: ${claims.join(' ')}`]
        : []),
      ...(answers.length > 1 ? [`${key}: ${answers.join(' ')}`] : []),
    ];
  });

  expect(wrong).toEqual([]);
});

test.each(Object.entries(job))('no key that came in one read with another claims: %s', (_, way) => {
  const start = at(way);

  const end = Array.from(`Z${'1y2y3y4y'.repeat(5)}`).reduce(
    (state, token) => update(state, { kind: 'key', token }, state.now).state,
    start,
  );

  expect(said(end, claimed, start)).toEqual([]);
});

test('the same key taken up again after a while counts again', () => {
  const start = at(`${startKeys()}y2r2Z1y<enter>`);
  const once = held(start, 'y', 2);

  expect(said(once, claimed, start)).not.toContain('repaired');
  expect(said(held(once, 'y', 1), claimed, start)).toContain('repaired');
});
