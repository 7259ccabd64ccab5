import type { Advice } from '../core/reason/advice/advice.ts';
import type { Problem } from '../core/problem.ts';
import type { Action, ActionOf } from '../core/session/action.ts';
import type { Damage } from '../core/session/record/damage.ts';
import type { Event, UnknownEvent } from '../core/session/event.ts';
import type { Header } from '../core/session/header/header.ts';
import type { Secret } from '../core/session/practice/secret.ts';
import type { KeptPhoto } from '../core/session/record/photo.ts';
import type { PastJob } from '../core/session/vehicle/past.ts';
import type { KeptVehicle } from '../core/session/vehicle/vehicle.ts';
import type { Library } from '../core/tree/shop.ts';
import type { SessionLine } from '../core/session/name.ts';
import type { Token } from './keys/tokens.ts';
import type { Drawn } from './state.ts';

/** Everything that can happen to the program, told in the past tense. */
export type Message =
  | { readonly kind: 'key'; readonly token: Token }
  /** A line was typed whole, with its Enter: what comes of it goes on with no key before it. */
  | { readonly kind: 'line-begun' }
  /** Several keys that came in one read. */
  | { readonly kind: 'struck-together'; readonly tokens: readonly Token[] }
  | { readonly kind: 'pasted'; readonly text: string }
  /** It has been put on the screen: only what was seen can be said to be so. */
  | { readonly kind: 'drawn'; readonly drawn: Drawn }
  /** An action that did not come from a key: the `enter` command. */
  | { readonly kind: 'acted'; readonly action: Action }
  /** From the command line: begin with this tree, or pick this session up. */
  | { readonly kind: 'tree-chosen'; readonly tree: string }
  | { readonly kind: 'session-chosen'; readonly path: string }
  | { readonly kind: 'library-loaded'; readonly library: Library }
  | {
      readonly kind: 'vehicles-loaded';
      readonly vehicles: readonly KeptVehicle[];
      /** The first of what is wrong with their files. */
      readonly trouble?: Problem | undefined;
    }
  /** What jobs left that must be done before a vehicle is driven. */
  | { readonly kind: 'unsafe-found'; readonly unsafe: readonly string[] }
  | { readonly kind: 'looked-back'; readonly vehicle: string; readonly jobs: readonly PastJob[] }
  | { readonly kind: 'sessions-listed'; readonly sessions: readonly SessionLine[] }
  /** What all sessions come to, or how far the reading is. */
  | { readonly kind: 'jobs-read'; readonly lines: readonly string[] }
  | {
      readonly kind: 'session-opened';
      readonly path: string;
      readonly header: Header;
      readonly events: readonly (Event | UnknownEvent)[];
      /** Bytes of a torn last line that were passed over. */
      readonly torn: number;
      readonly damage?: readonly Damage[];
      /** What a practice hides, where it is still known here. */
      readonly secret?: Secret | undefined;
    }
  | {
      readonly kind: 'replay-opened';
      readonly path: string;
      readonly header: Header;
      readonly events: readonly (Event | UnknownEvent)[];
      readonly damage?: readonly Damage[];
    }
  | { readonly kind: 'played-on'; readonly at: number }
  | { readonly kind: 'session-refused'; readonly problem: Problem }
  | { readonly kind: 'kept'; readonly n: number }
  | { readonly kind: 'not-kept'; readonly problem: Problem }
  /** The photo of an action lies beside the session. */
  | {
      readonly kind: 'photo-kept';
      readonly action: ActionOf<'photo'>;
      readonly photo: KeptPhoto;
    }
  | {
      readonly kind: 'phone-ready';
      readonly url: string;
      readonly code: readonly (readonly boolean[])[];
    }
  /** A photo came from the telephone, and lies beside the session. */
  | { readonly kind: 'photo-arrived'; readonly photo: KeptPhoto }
  /** There is no page for the telephone, or none any more. */
  | { readonly kind: 'phone-refused'; readonly problem: Problem }
  | {
      readonly kind: 'account-written';
      readonly path: string;
      /** Parts that somebody edited, and that stay so. */
      readonly kept: readonly string[];
    }
  /** A folder of sessions that can be used, whole from the root; empty for the usual one. */
  | { readonly kind: 'folder-chosen'; readonly path: string }
  | { readonly kind: 'settings-saved' }
  | { readonly kind: 'failed'; readonly problem: Problem }
  /** Advice on the story as it stood after so many events. */
  | { readonly kind: 'not-advised'; readonly events: number; readonly why: string }
  | { readonly kind: 'advised'; readonly events: number; readonly advice: Advice }
  | { readonly kind: 'ticked' };
