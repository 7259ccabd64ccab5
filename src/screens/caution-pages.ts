import { cautionKey, deferWords, fullCaution } from '../app/walk/caution-words.ts';
import type { Leg } from '../core/session/story.ts';
import { endless } from './plain/no-window.ts';
import { folded, row, type Row, type Size } from './rows.ts';

/** Pages that may stand before a step; a window that is too small for so few takes more of them. */
const most = 3;

/** What stands on the pages beside the words of the cautions themselves. */
type Form = {
  readonly title: boolean;
  readonly defer: boolean;
  /** Laid by their length: within a page alone what kills comes first. */
  readonly packed: boolean;
};

/** From full to bare: who knows more, and what the step is, can be read with `i`. */
const forms: readonly Form[] = [
  { title: true, defer: true, packed: false },
  { title: true, defer: false, packed: false },
  { title: false, defer: false, packed: false },
  { title: false, defer: false, packed: true },
];

export type Cautioned = {
  /** Of the step they stand before. */
  readonly title: Row;
  /** Those still to be read. */
  readonly cautions: readonly string[];
  readonly leg: Leg;
  /** Those read already, page by page. */
  readonly seen: readonly (readonly string[])[];
};

/** A page of cautions as a claim that they were read: as many as fit, each of them whole. */
export function cautionPage(step: Cautioned, size: Size) {
  const { form, pages } = laidOut(step, size);
  const [now = []] = pages;
  return {
    ...(form.title && { title: step.title }),
    bodies: [[...now.map((id) => cautionRow(step.leg, id, form)), asks(step, now, pages.length)]],
    cautions: now,
  };
}

type Laid = { readonly form: Form; readonly pages: readonly string[][] };

/** The fewest pages; of two forms that need as many the fuller one, and no title only if it must go. */
function laidOut(step: Cautioned, size: Size): Laid {
  const left = Math.max(1, most - step.seen.length);
  const [full, ...others] = forms.map((form): Laid => ({ form, pages: pagesIn(step, form, size) }));
  if (full === undefined) throw new Error('there is always a form');
  return others.reduce(
    (best, one) =>
      one.pages.length < best.pages.length && (one.form.title || best.pages.length > left)
        ? one
        : best,
    full,
  );
}

function cautionRow(leg: Leg, id: string, { defer }: Form): Row {
  const words = fullCaution(leg, id);
  return row('!', defer ? `${words}${deferWords(leg, id)}` : words, 'caution');
}

function asks({ seen }: Cautioned, now: readonly string[], pages: number): Row {
  const key = cautionKey(seen.length);
  const of = seen.length + pages;
  const they = now.length === 1 ? 'it' : 'them';
  const page = of === 1 ? 'Press' : `Cautions, page ${seen.length + 1} of ${of}: press`;
  return row('>', `${page} ${key} when you have read ${they}.`, 'marked');
}

/**
 * The cautions laid on pages: each page begins with the first that is left, and takes as many of the
 * later ones as there is room for. One that is longer than a page has it for itself, and so has each
 * where there is no window.
 */
function pagesIn(step: Cautioned, form: Form, { rows, columns }: Size): readonly string[][] {
  const head = form.title ? folded(step.title, columns).length : 0;
  const below = folded(asks(step, step.cautions, 2), columns).length;
  const room = rows === endless ? 0 : rows - head - below;
  const pages: { readonly ids: string[]; left: number }[] = [];
  const rowsOf = (id: string) => folded(cautionRow(step.leg, id, form), columns).length;
  const order = form.packed
    ? step.cautions.toSorted((one, other) => rowsOf(other) - rowsOf(one))
    : step.cautions;
  for (const id of order) {
    const taken = rowsOf(id);
    const page = pages.find(({ left }) => left >= taken);
    if (page === undefined) pages.push({ ids: [id], left: room - taken });
    else {
      page.ids.push(id);
      page.left -= taken;
    }
  }
  return pages.map(({ ids }) => step.cautions.filter((id) => ids.includes(id)));
}
