import type { FigureLine, FigurePage } from './pages/figure-page.ts';
import type { Replay, Speed } from './walk/recording.ts';
import type { StartForm } from './pages/start-form.ts';

/** What the mechanic is typing or pointing at on the walk. */
export type WalkInput =
  /** Pointing at a result, or at none (-1): Enter struck twice must not answer the next check. */
  | { readonly kind: 'ready'; readonly cursor: number }
  | { readonly kind: 'reading'; readonly typed: string }
  /** A reading outside the plausible range waits for a second word. */
  | { readonly kind: 'insist'; readonly typed: string; readonly why: string }
  | {
      readonly kind: 'text';
      readonly purpose: TextPurpose;
      readonly typed: string;
      /** What is asked next, whatever the answer. */
      readonly after?: TextPurpose;
    };

export type TextPurpose = 'note' | 'skip' | 'part-off' | 'follow-up' | 'altitude' | 'temperature';

export type Screen =
  | { readonly kind: 'home'; readonly cursor: number }
  | { readonly kind: 'sessions'; readonly cursor: number }
  | { readonly kind: 'start'; readonly form: StartForm }
  | {
      readonly kind: 'walk';
      readonly input: WalkInput;
      /** The finding that is being answered anew. */
      readonly correcting?: number;
      /** The cause that was picked to be repaired; it is condemned once its cautions are read. */
      readonly pickedCause?: string;
      /** Cautions of this step that were read, a page each; what is done next begins anew. */
      readonly seen?: number;
    }
  | { readonly kind: 'others'; readonly cursor: number }
  | { readonly kind: 'suspects'; readonly cursor: number }
  | { readonly kind: 'apart'; readonly cursor: number }
  | { readonly kind: 'close'; readonly cursor: number }
  /** A check shows worse than before with nothing changed: the mechanic says what that is. */
  | { readonly kind: 'contradiction'; readonly cursor: number }
  | { readonly kind: 'settings'; readonly cursor: number; readonly typed?: string }
  | { readonly kind: 'figures'; readonly lines: readonly FigureLine[]; readonly cursor: number }
  | { readonly kind: 'figure'; readonly page: FigurePage; readonly at: number }
  | {
      readonly kind: 'replay';
      readonly replay: Replay;
      /** Events shown. */
      readonly at: number;
      readonly playing: boolean;
      readonly speed: Speed;
    }
  /** Pages to read: the cursor is the first line shown. */
  | { readonly kind: 'keys'; readonly from: Screen; readonly cursor: number }
  | { readonly kind: 'full'; readonly cursor: number }
  | { readonly kind: 'why'; readonly cursor: number }
  | { readonly kind: 'ladder'; readonly cursor: number };

export const ready: WalkInput = { kind: 'ready', cursor: -1 };
export const walk: Screen = { kind: 'walk', input: ready };
export const home: Screen = { kind: 'home', cursor: 0 };
