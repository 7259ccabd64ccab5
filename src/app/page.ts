import type { Transition } from './effect.ts';
import type { Binding, KeyPress, Mode } from './keys/command.ts';
import type { At, Kind } from './screen.ts';
import type { State } from './state.ts';
import type { DueOnScreen } from './walk/question.ts';

/** What the program knows of a kind of screen; how it looks is told in `screens/views.tsx`. */
export type Page<K extends Kind> = {
  /** Which keys count on it. */
  readonly mode: (screen: At<K>, state: State, due: DueOnScreen | undefined) => Mode;
  readonly update: (state: State, screen: At<K>, press: KeyPress) => Transition;
  /** What opens it, where a key can: the command of that key is the kind of the screen. */
  readonly open?: (state: State) => Transition;
  /** Keys of its own, the one that opens it among them. */
  readonly bindings?: readonly Binding[];
};
