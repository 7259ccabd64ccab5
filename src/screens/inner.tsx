import type { ComponentType } from 'react';
import type { OpenSession, State } from '../app/state.ts';
import { Body } from './body.tsx';
import { footLines } from './foot.ts';

type BodyProps = { readonly state: State; readonly rows: number; readonly columns: number };

/** What is inside the frame. Home needs none of it, so the first frame does not wait for it. */
export type Inner = {
  readonly Body: ComponentType<BodyProps>;
  readonly footLines: (session: OpenSession) => readonly string[];
};

export const inner: Inner = { Body, footLines };
