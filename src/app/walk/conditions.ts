import { show, type Transition } from '../effect.ts';
import type { State } from '../state.ts';
import { typing } from '../typing/typing.ts';

/** Asks for altitude and temperature, one after the other. */
export const bothConditions = (state: State): Transition =>
  show(state, {
    kind: 'walk',
    input: { kind: 'text', purpose: 'altitude', typed: typing(), after: 'temperature' },
  });
