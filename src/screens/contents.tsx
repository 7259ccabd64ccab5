import type { ComponentType } from 'react';
import type { Binding } from '../app/keys/command.ts';
import { bindings } from '../app/pages/table.ts';
import { Runner } from '../app/run/run.ts';
import type { OpenSession, State } from '../app/state.ts';
import { update } from '../app/update.ts';
import { footLines, type FootRoom } from './foot.ts';
import { cautionsOn, claimPages, type Page } from './claim-rows.ts';
import { contradictionNeeds } from './lists.tsx';
import { figureNeeds } from './figure.tsx';
import { checkNeeds, textNeeds, type Needs, rowsOf } from './room.ts';
import { boardPages } from './apart/board-rows.ts';
import { historyPages } from './history-rows.ts';
import { closePages } from './close-rows.ts';
import { Body } from './views.tsx';

type Size = { readonly rows: number; readonly columns: number };
type BodyProps = Size & { readonly state: State };

/** What is inside the frame. Home needs none of it, so the first frame does not wait for it. */
export type Contents = {
  readonly Body: ComponentType<BodyProps>;
  /** The pages of what the screen asks to be claimed, if it asks that. */
  readonly pages: (state: State, size: Size) => readonly Page[] | undefined;
  /** The cautions that stand on the page of the screen, whole. */
  readonly cautions: (state: State, size: Size) => readonly string[];
  /** Rows that the screen asks for between head and foot. */
  readonly needs: (state: State, columns: number) => Needs;
  /** Rows that a text takes in a column of some width. */
  readonly rowsOf: (text: string, width: number) => number;
  /** The lines of the foot, at most so many. */
  readonly footLines: (state: State, session: OpenSession, room: FootRoom) => readonly string[];
  readonly bindings: readonly Binding[];
};

function pagesOn({ screen, session, question: { due } }: State, size: Size) {
  if (screen.kind === 'close' && session !== undefined)
    return closePages(session.story, screen.cursor, size);
  if (screen.kind === 'apart' && session !== undefined)
    return boardPages(session.story, screen, size);
  if (screen.kind === 'history' && session !== undefined)
    return historyPages(session.story, screen.cursor, size);
  return screen.kind === 'walk' && due !== undefined ? claimPages(due, screen, size) : undefined;
}

/** A page asks for any number of rows: it is read on. */
const any: Needs = { least: 1, wanted: 1 };

function needsOf(state: State, columns: number): Needs {
  const { screen, session, question } = state;
  const { due } = question;
  if (screen.kind === 'contradiction' && session !== undefined)
    return contradictionNeeds(session.story, columns);
  if (screen.kind === 'figure') return figureNeeds(screen.page, columns);
  if (screen.kind !== 'walk' || due === undefined) return any;
  const { input } = screen;
  if (input.kind === 'text') return textNeeds(due, input, columns);
  const { asked } = due;
  const claims = claimPages(due, screen, { rows: 1, columns }) !== undefined;
  return asked === undefined || claims ? any : checkNeeds({ due, asked, input }, columns);
}

const cautionsNow = ({ screen, question: { due } }: State, size: Size): readonly string[] =>
  screen.kind === 'walk' && due !== undefined ? cautionsOn(due, screen, size) : [];

export const contents: Contents = {
  Body,
  needs: needsOf,
  pages: pagesOn,
  cautions: cautionsNow,
  rowsOf,
  footLines,
  bindings,
};

/** What the program begins without: loaded in one piece behind the first frame. */
export const later = { Runner, update, contents };
