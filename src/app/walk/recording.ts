import type { Event, UnknownEvent } from '../../core/session/event.ts';
import type { Header } from '../../core/session/header.ts';

/** A session shown again: read only, from any point of it. */
export type Replay = {
  readonly path: string;
  readonly header: Header;
  readonly events: readonly (Event | UnknownEvent)[];
  /** Counts of events after which the leading suspect was another one. */
  readonly turning: readonly number[];
};

export type Speed = 1 | 2 | 4;
