import { expect, test } from 'vitest';
import type { State } from '../../src/app/state.ts';
import { fullCaution } from '../../src/app/walk/caution-words.ts';
import { byDanger } from '../../src/core/session/rules/cautions.ts';
import { currentLeg, type Leg } from '../../src/core/session/story.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import { cautionPage } from '../../src/screens/caution-pages.ts';
import { row } from '../../src/screens/rows.ts';
import { claimPages } from '../../src/screens/claim-rows.ts';
import { drawnIn, jobOn, library, strike, yesKey, type Window } from '../helpers/by-keys.ts';
import { pagesRead } from '../helpers/program.ts';

const windows: readonly (readonly [string, Window, readonly number[]])[] = [
  ['80 by 24', { columns: 80, rows: 24 }, [1, 2]],
  ['60 by 20', { columns: 60, rows: 20 }, [3, 4]],
];
const ids = library().trees.map(({ id }) => id);

/** A pick that the seed alone decides: the healthy answer in three of four. */
const pick = (seed: number, step: number): number => {
  const drawn = Math.imul(seed * 7919 + step * 104_729, 2_654_435_761) >>> 16;
  return drawn % 4 === 0 ? 1 + (drawn % 3) : 0;
};

/** What a walk along a tree's own way did with its cautions. */
type Walked = {
  /** Pages of cautions before the step, of the step that had most. */
  most: number;
  /** Steps reached with a caution that no page of the job had shown whole. */
  readonly unseen: string[];
  /** Cautions whose words were not whole on the page that said so. */
  readonly cut: string[];
  steps: number;
};

const flat = (text: string): string => text.replace(/\s+/g, ' ');

/** Answers whatever is asked, healthy or not as the seed says, and looks at each page on the way. */
function walked(id: string, window: Window, seed: number): Walked {
  const result: Walked = { most: 0, unseen: [], cut: [], steps: 0 };
  const seen = new Set<string>();
  let state = jobOn(id);
  for (let step = 0; step < 260 && !isOver(state); step += 1) {
    looked(state, window, { result, seen });
    const yes = yesKey(state, window);
    state =
      yes === undefined
        ? answered(state, window, isComplaint(state) ? 5 : pick(seed, step))
        : strike(state, yes, window);
  }
  return result;
}

const isOver = ({ question: { due, mode } }: State): boolean =>
  due === undefined || ['stop', 'closed', 'proven'].includes(mode);

type Looking = { readonly result: Walked; readonly seen: Set<string> };

/** Which cautions the page shows whole, and whether those of a step were shown before it. */
function looked(state: State, window: Window, { result, seen }: Looking): void {
  const { due, mode } = state.question;
  const drawn = drawnIn(state, window);
  if (mode.endsWith('caution') && drawn.kind === 'page') {
    result.cut.push(...drawn.cautions.filter((one) => !shows(state, window, one)));
    for (const one of drawn.cautions) seen.add(one);
    result.most = Math.max(result.most, pagesRead(state) + 1);
  }
  if (!['look', 'measure', 'named', 'repair'].includes(mode)) return;
  const cautions = (due?.asked?.check ?? due?.cause?.cause.repair)?.cautions ?? [];
  result.unseen.push(...cautions.filter((one) => !seen.has(one)));
  result.steps += 1;
}

/** Whether the complaint is asked about before anything was mended: it is there. */
const isComplaint = ({ question: { due }, session }: State): boolean =>
  session?.story.repairs.length === 0 &&
  due?.asked !== undefined &&
  due.asked.id === currentLeg(due.story).tree.complaint.confirm;

/** Whether a caution's words stand whole on the page that is drawn. */
function shows(state: State, window: Window, id: string): boolean {
  const { screen, question } = state;
  if (screen.kind !== 'walk' || question.due === undefined) return false;
  const pages = claimPages(question.due, screen, { ...window, rows: window.rows - 6 }) ?? [];
  const words = pages.flat().map(({ text }) => text);
  return flat(words.join(' ')).includes(flat(fullCaution(currentLeg(question.due.story), id)));
}

/** A result marked by the arrows, or that it is not known. */
function answered(before: State, window: Window, index: number): State {
  if (before.question.mode === 'condition') return strike(strike(before, 'u', window), 'y', window);
  if (before.screen.kind === 'contradiction') return strike(before, '1', window);
  let state = before;
  for (let down = 0; down <= index; down += 1) state = strike(state, 'down', window);
  return strike(state, 'enter', window);
}

test.each(windows)(
  'at %s no step of any way has more than three pages of cautions, and each is read whole before it',
  (_, window, seeds) => {
    const told = ids.flatMap((id) =>
      seeds.flatMap((seed) => {
        const { most, unseen, cut, steps } = walked(id, window, seed);
        const wrong = [
          ...(most > 3 ? [`${most} pages`] : []),
          ...(steps < 1 ? ['no steps'] : []),
          ...unseen.map((one) => `${one} unseen`),
          ...cut.map((one) => `${one} cut`),
        ];
        return wrong.map((one) => `${id} ${seed}: ${one}`);
      }),
    );

    expect(told).toEqual([]);
  },
);

test.each(windows)('at %s three pages hold all cautions of any step, all new', (_, window) => {
  const { trees, shop } = library();
  const over = trees.flatMap((tree) =>
    Object.entries({ ...tree.checks, ...repairsOf(tree) }).flatMap(([id, { cautions }]) => {
      const leg = { tree, shop, since: 0 };
      return pagesOf(byDanger(shop, cautions), leg, window) > 3 ? [`${tree.id} ${id}`] : [];
    }),
  );

  expect(over).toEqual([]);
});

const repairsOf = ({ causes }: Tree) =>
  Object.fromEntries(Object.entries(causes).map(([id, { repair }]) => [`repair ${id}`, repair]));

/** Pages on which cautions are read, one after the other. */
function pagesOf(cautions: readonly string[], leg: Leg, { columns, rows }: Window): number {
  const seen: (readonly string[])[] = [];
  let left = cautions;
  while (left.length > 0) {
    const title = row('', 'What a step is called, in some forty letters', 'title');
    const page = cautionPage({ title, cautions: left, leg, seen }, { columns, rows: rows - 6 });
    seen.push(page.cautions);
    left = left.filter((id) => !page.cautions.includes(id));
  }
  return seen.length;
}

test('what kills is read first, and of two that kill the one that must be', () => {
  const { shop } = library();

  expect(byDanger(shop, ['starter-heat', 'eyes', 'co', 'crank'])).toEqual([
    'crank',
    'co',
    'eyes',
    'starter-heat',
  ]);
});
