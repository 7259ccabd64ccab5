import { modeOf, type Mode } from './question.ts';
import { fields } from '../pages/start-form.ts';
import type { State } from '../state.ts';

function isTextField(state: State): boolean {
  if (state.screen.kind !== 'start' || state.library === undefined) return false;
  return fields(state.screen.form, state.library)[state.screen.form.at]?.kind === 'text';
}

/** Which keys count now. */
export const currentMode = (state: State): Mode => modeOf(state, isTextField(state));
