import type { Problem } from '../core/problem.ts';
import type { ActionOf } from '../core/session/action.ts';
import type { Event } from '../core/session/event.ts';
import type { Header } from '../core/session/header/header.ts';
import type { Vehicle } from '../core/session/vehicle/vehicle.ts';
import type { Settings } from '../core/settings.ts';
import type { Token } from './keys/tokens.ts';
import type { Screen } from './screen.ts';
import type { State } from './state.ts';

/** Everything the program does to the world, told in the imperative. */
export type Effect =
  | { readonly kind: 'append'; readonly event: Event }
  /** Work out what to do next, behind the keys. */
  | { readonly kind: 'advise' }
  | { readonly kind: 'retry' }
  /** Keys one by one, each after what the one before it brought. */
  | { readonly kind: 'strike'; readonly tokens: readonly Token[] }
  | { readonly kind: 'load-library' }
  | { readonly kind: 'list-sessions' }
  /** Reads what all sessions come to, for the page that is open. */
  | { readonly kind: 'read-jobs' }
  | { readonly kind: 'load-vehicles' }
  /** Writes a vehicle to its file, or to a new one where it has none yet. */
  | {
      readonly kind: 'keep-vehicle';
      readonly path: string | undefined;
      readonly vehicle: Vehicle;
    }
  /** Looks for the past jobs of a vehicle. */
  | { readonly kind: 'look-back'; readonly vehicle: Vehicle }
  /** Copies the photo of an action beside its session. */
  | { readonly kind: 'keep-photo'; readonly action: ActionOf<'photo'> }
  /** Opens a page to a telephone, and shuts it. */
  | { readonly kind: 'start-phone' }
  | { readonly kind: 'stop-phone' }
  | { readonly kind: 'create-session'; readonly header: Header }
  | { readonly kind: 'open-session'; readonly path: string }
  | { readonly kind: 'shut-session' }
  | { readonly kind: 'write-account'; readonly path: string }
  /** Asks the disk for a folder of sessions as it was typed. */
  | { readonly kind: 'choose-folder'; readonly typed: string }
  | { readonly kind: 'save-settings'; readonly settings: Settings }
  /** One event on in a replay, after so many milliseconds. */
  | { readonly kind: 'play-on'; readonly at: number; readonly after: number }
  /** Rings the bell of the terminal. */
  | { readonly kind: 'ring' }
  /** Looks at the clock again after so many milliseconds. */
  | { readonly kind: 'call'; readonly after: number }
  | { readonly kind: 'redraw' }
  | { readonly kind: 'leave' };

/** A new state with what is to be done about it. */
export type Transition = { readonly state: State; readonly effects: readonly Effect[] };

export const transition = (state: State, ...effects: readonly Effect[]): Transition => ({
  state,
  effects,
});

/** Another screen, or the same one with something changed. */
export const show = (state: State, screen: Screen, ...effects: readonly Effect[]): Transition =>
  transition({ ...state, screen }, ...effects);

/** A few words in the line over the keys. */
export const inform = (state: State, text: string): Transition =>
  transition({ ...state, notice: { kind: 'info', text } });

/** What is wrong, and how to mend it, in the line over the keys. */
export const object = (state: State, { message, mend }: Omit<Problem, 'code'>): Transition =>
  transition({ ...state, notice: { kind: 'problem', text: `${message} ${mend}` } });
