import type { Due } from '../../../src/core/session/story.ts';
import type { Recorded } from '../../../src/core/session/fold.ts';
import type { Tree } from '../../../src/core/tree/model.ts';

/** One thing that was done to the vehicle, in words an author can follow. */
export type Step = {
  readonly do: 'check' | 'repair' | 'proof';
  readonly id: string;
  /** Place of the tree that asked for it among those that were walked. */
  readonly leg: number;
  /** What was typed, and the results it counts for. */
  readonly shown: string;
  readonly minutes: number;
  /** Whether the advice asked for it. */
  readonly advised: boolean;
};

export type Drive = {
  /** The session that came of it. */
  readonly recorded: Recorded;
  readonly steps: readonly Step[];
  /** Causes that were repaired, in order. */
  readonly mended: readonly string[];
  /** Causes that were named as found. */
  readonly condemned: readonly string[];
  /** What was due when it ended: proven, a stop, another tree, or nothing left. */
  readonly end: Due;
  /** The trees that were walked, as the vehicle has them. */
  readonly trees: readonly Tree[];
  /** Whether the session may be closed as fixed now. */
  readonly closesFixed: boolean;
  /** Checks that showed worse after a repair, which was then said to be new since. */
  readonly settled: readonly string[];
  /** What may not happen on the way: a refusal, a warning, a contradiction, no belief. */
  readonly troubles: readonly string[];
};
