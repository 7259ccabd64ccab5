import { act, problemNotice } from '../act.ts';
import { moved, picked, typedOn } from '../keys/cursor.ts';
import { doing, still, type Step } from '../effect.ts';
import {
  figureLines,
  figurePage,
  noteOf,
  resultLines,
  workOut,
  type FigurePage,
} from './figure-page.ts';
import type { Press } from '../keys/press.ts';
import { home, walk, type Screen } from '../screen.ts';
import type { State } from '../state.ts';

type At<K extends Screen['kind']> = Extract<Screen, { kind: K }>;

const leave = (state: State): Step<State> =>
  still({ ...state, screen: state.live === undefined ? home : walk });

/** The list of figures. */
export function updateFigures(state: State, screen: At<'figures'>, press: Press): Step<State> {
  if (press.command === 'go-back') return leave(state);
  const index = picked(screen.cursor, press, screen.lines.length);
  const line = index === undefined ? undefined : screen.lines[index];
  if (line !== undefined)
    return still({ ...state, screen: { kind: 'figure', page: figurePage(line.id), at: 0 } });
  const cursor = moved(screen.cursor, press.command, screen.lines.length);
  return still({ ...state, screen: { ...screen, cursor } });
}

/** One figure: its inputs one after the other, then what it comes to. */
export function updateFigure(state: State, screen: At<'figure'>, press: Press): Step<State> {
  const { page, at } = screen;
  if (press.command === 'go-back' || press.command === 'leave-field') return toFigures(state);
  if (press.command === 'keep') return keep(state, page);
  if (page.result.length > 0)
    return still({ ...state, screen: { ...screen, at: 0, page: { ...page, result: [] } } });
  if (press.command === 'type' || press.command === 'erase')
    return still({ ...state, screen: { ...screen, page: typeInto(page, at, press) } });
  const last = page.fields.length - 1;
  if (press.command === 'choose' && at >= last) return show(state, screen);
  const next = moved(at, press.command === 'choose' ? 'down' : press.command, page.fields.length);
  return still({ ...state, screen: { ...screen, at: next } });
}

/** Opens the list of figures. */
export const toFigures = (state: State): Step<State> =>
  still({ ...state, screen: { kind: 'figures', lines: figureLines, cursor: 0 } });

const typeInto = (page: FigurePage, at: number, press: Press): FigurePage => ({
  ...page,
  fields: page.fields.map((field, index) =>
    index === at ? { ...field, typed: typedOn(field.typed, press) } : field,
  ),
});

function show(state: State, screen: At<'figure'>): Step<State> {
  const run = workOut(screen.page);
  if (run.kind === 'bad') {
    const [problem] = run.problems;
    return still({ ...state, notice: problem && problemNotice(problem) });
  }
  const page = { ...screen.page, result: resultLines(run.value) };
  return still({ ...state, screen: { ...screen, page } });
}

/** Keeps what came out in the session, as a note with its numbers. */
function keep(state: State, page: FigurePage): Step<State> {
  const run = workOut(page);
  if (run.kind === 'bad') return still(state);
  const acted = act(state, { do: 'note', text: noteOf(run.value), figure: run.value });
  if (acted.outcome.kind === 'refused') return acted;
  const notice = { kind: 'told' as const, text: 'Kept in the session.' };
  return doing({ ...acted.state, screen: walk, notice }, ...acted.effects);
}
