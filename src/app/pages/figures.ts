import { firstOf } from '../../core/problem.ts';
import { takeAction } from '../take-action.ts';
import { moved, picked } from '../keys/cursor.ts';
import { edited, edits } from '../typing/edit.ts';
import { object, show, type Transition, transition } from '../effect.ts';
import {
  figureLines,
  fieldTrouble,
  figurePage,
  knownInputs,
  missingField,
  noteOf,
  resultLines,
  workOut,
  type FigureLine,
  type FigurePage,
} from './figure-page.ts';
import { searched } from '../keys/search.ts';
import { matching, nothingSought, type Search } from '../keys/sought.ts';
import type { KeyPress } from '../keys/command.ts';
import type { Page } from '../page.ts';
import { home, walk, type At } from '../screen.ts';
import type { State } from '../state.ts';

export const figuresPage: Page<'figures'> = {
  mode: () => 'search',
  update: updateFigures,
  open: openFigures,
};

export const oneFigurePage: Page<'figure'> = {
  mode: ({ page }) => (page.result.length > 0 ? 'worked' : 'form-text'),
  update: updateFigure,
  bindings: [
    {
      modes: ['worked'],
      keys: ['n'],
      command: 'keep',
      hint: 'note it',
      about: 'keep the result in the session',
    },
    {
      modes: ['worked'],
      keys: ['enter'],
      command: 'choose',
      hint: 'again',
      about: 'change the inputs',
    },
  ],
};

const leave = (state: State): Transition => show(state, state.session === undefined ? home : walk);

/** The list of figures. */
function updateFigures(state: State, screen: At<'figures'>, press: KeyPress): Transition {
  if (press.command === 'go-back') return screen.sought === '' ? leave(state) : openFigures(state);
  const lines = figuresShown(screen);
  const line = picked(screen.cursor, press, lines);
  if (line !== undefined)
    return show(state, { kind: 'figure', page: filledIn(state, line.id), at: 0 });
  return show(state, { ...screen, ...searched(screen, press, lines.length) });
}

/** The figures that have what is sought in their names or words. */
export const figuresShown = ({ sought }: Search): readonly FigureLine[] =>
  matching(figureLines, sought, ({ label }) => label);

/** A figure with what the open session knows in its fields already, to be kept or changed. */
function filledIn({ session, settings }: State, name: string): FigurePage {
  const units = session?.header.units ?? settings.units;
  return figurePage(name, units, session === undefined ? {} : knownInputs(name, session.story));
}

/** One figure: its inputs one after the other, then what it comes to. */
function updateFigure(state: State, screen: At<'figure'>, press: KeyPress): Transition {
  const { page, at } = screen;
  if (press.command === 'go-back' || press.command === 'leave-field') return openFigures(state);
  if (press.command === 'keep') return keep(state, page);
  if (page.result.length > 0)
    return press.command === 'choose'
      ? show(state, { ...screen, at: 0, page: { ...page, result: [] } })
      : show(state, { ...screen, at: moved(at, press.command, page.result.length) });
  if (edits(press.command)) return show(state, { ...screen, page: typeInto(page, at, press) });
  const wrong = fieldTrouble(page, at);
  if (wrong !== undefined) return object(state, wrong);
  const last = page.fields.length - 1;
  if (press.command === 'choose' && at >= last) return showResult(state, screen);
  const next = moved(at, press.command === 'choose' ? 'down' : press.command, page.fields.length);
  return show(state, { ...screen, at: next });
}

/** Opens the list of figures. */
export function openFigures(state: State): Transition {
  return show(state, { kind: 'figures', ...nothingSought });
}

const typeInto = (page: FigurePage, at: number, press: KeyPress): FigurePage => ({
  ...page,
  fields: page.fields.map((field, index) =>
    index === at ? { ...field, typed: edited(field.typed, press) } : field,
  ),
});

function showResult(state: State, screen: At<'figure'>): Transition {
  const run = workOut(screen.page);
  if (run.kind === 'bad') {
    const problem = firstOf(run.problems);
    const at = missingField(screen.page);
    return object({ ...state, screen: at < 0 ? screen : { ...screen, at } }, problem);
  }
  const page = { ...screen.page, result: resultLines(run.value, screen.page.units) };
  return show(state, { ...screen, page, at: 0 });
}

/** Keeps what came out in the session, as a note with its numbers. */
function keep(state: State, page: FigurePage): Transition {
  const run = workOut(page);
  if (run.kind === 'bad') return transition(state);
  const acted = takeAction(state, {
    do: 'note',
    text: noteOf(run.value, page.units),
    figure: run.value,
  });
  if (acted.outcome.kind === 'refused') return acted;
  const notice = { kind: 'info' as const, text: 'Kept in the session.' };
  return transition({ ...acted.state, screen: walk, notice }, ...acted.effects);
}
