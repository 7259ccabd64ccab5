import type { ComponentType } from 'react';
import type { Binding } from '../app/keys/command.ts';
import { bindings } from '../app/pages/table.ts';
import { Runner } from '../app/run.ts';
import type { OpenSession, State } from '../app/state.ts';
import { update } from '../app/update.ts';
import { footLines } from './foot.ts';
import { Body } from './views.tsx';

type BodyProps = { readonly state: State; readonly rows: number; readonly columns: number };

/** What is inside the frame. Home needs none of it, so the first frame does not wait for it. */
export type Contents = {
  readonly Body: ComponentType<BodyProps>;
  readonly footLines: (session: OpenSession) => readonly string[];
  readonly bindings: readonly Binding[];
};

export const contents: Contents = { Body, footLines, bindings };

/** What the program begins without: loaded in one piece behind the first frame. */
export const later = { Runner, update, contents };
