import { expect, test } from 'vitest';
import type { State } from '../../src/app/state.ts';
import { currentLeg } from '../../src/core/session/story.ts';
import type { Check } from '../../src/core/tree/model.ts';
import { drawnIn, jobOn, strike, yesKey } from '../helpers/by-keys.ts';

const window = { columns: 80, rows: 24 };

/** What a walk took: its checks and its keys, and the cautions that no page had shown before a step. */
type Count = { readonly checks: number; readonly keys: number; readonly lost: readonly string[] };

/** The complaint shows itself, everything else is healthy: keys until so many checks are answered. */
function counted(id: string, most: number): Count {
  const seen = new Set<string>();
  const lost: string[] = [];
  let state = jobOn(id);
  let keys = 0;
  const done = () => state.session?.story.findings.length ?? 0;
  while (
    done() < most &&
    keys < 300 &&
    !['stop', 'named', 'proven'].includes(state.question.mode)
  ) {
    const drawn = drawnIn(state, window);
    if (drawn.kind === 'page') for (const one of drawn.cautions) seen.add(one);
    const { asked } = state.question.due ?? {};
    const yes = yesKey(state, window);
    const tokens = yes === undefined ? answer(state) : [yes];
    if (yes === undefined)
      lost.push(...(asked?.check.cautions ?? []).filter((one) => !seen.has(one)));
    for (const token of tokens) state = strike(state, token, window);
    keys += tokens.length;
  }
  return { checks: done(), keys, lost };
}

/** The keys of an answer: a digit, or a reading as it is typed with Enter. */
function answer(state: State): readonly string[] {
  const { asked, story } = state.question.due ?? {};
  if (state.question.mode === 'condition') return ['u', 'y'];
  if (asked === undefined || story === undefined) return ['esc'];
  const { complaint } = currentLeg(story).tree;
  const place = asked.id === complaint.confirm ? 1 : 0;
  if (asked.check.reading === undefined) return [String(place + 1)];
  return [...typed(asked.id, asked.check, place).split(''), 'enter'];
}

/** What a sound vehicle shows where one is asked for several readings, or for one of its book's. */
const sound: Readonly<Record<string, string>> = {
  'stud-volts': '12.6 12.5',
  'vac-level': '18',
};

/** A reading in the band of a result, in as few digits as tell it from the limits. */
const typed = (id: string, check: Check, place: number): string =>
  sound[id] ?? inBand(check, place);

function inBand({ results, reading }: Check, place: number): string {
  const [low = 0, high = 0] = reading?.plausible ?? [];
  const band = { from: low, below: high, ...results[place] };
  const [from, below] = [Number(band.from), Number(band.below)];
  for (const digits of [0, 1, 2, 3]) {
    const text = ((from + below) / 2).toFixed(digits);
    if (Number(text) > from && Number(text) < below) return text.replace(/^0\./, '.');
  }
  return String((from + below) / 2);
}

// What they take today. The twelfth check of no-supply is a second pair of volts: ten keys more.
test.each([
  ['no-supply', 11, 41],
  ['rough-idle', 12, 28],
])('%s: %i checks take no more than %i keys, and no caution is lost', (id, checks, most) => {
  const count = counted(id, checks);

  expect(count.lost).toEqual([]);
  expect(count.checks).toBe(checks);
  expect(count.keys).toBeLessThanOrEqual(most);
});
