import type { Damage } from '../core/session/record/damage.ts';
import type { Event, UnknownEvent } from '../core/session/event.ts';
import type { Vehicle } from '../core/session/vehicle/vehicle.ts';
import type { Header } from '../core/session/header/header.ts';
import type { BoardOrder } from './walk/board.ts';
import type { FigurePage } from './pages/figure-page.ts';
import type { Search } from './keys/sought.ts';
import type { NameForm } from './pages/own/form.ts';
import type { StartForm } from './pages/start-form.ts';
import type { Typing } from './typing/typing.ts';

/** What the mechanic is typing or pointing at on the walk. */
export type WalkInput =
  /** Pointing at a result, or at none (-1): Enter struck twice must not answer the next check. */
  | { readonly kind: 'ready'; readonly cursor: number }
  | { readonly kind: 'reading'; readonly typed: Typing }
  /** A reading outside the plausible range waits for a second word. */
  | { readonly kind: 'insist'; readonly typed: Typing; readonly why: string }
  | {
      readonly kind: 'text';
      readonly purpose: TextPurpose;
      readonly typed: Typing;
      /** What is asked next, whatever the answer. */
      readonly after?: TextPurpose;
    };

export type TextPurpose =
  | 'note'
  | 'skip'
  | 'follow-up'
  | 'altitude'
  | 'temperature'
  | 'despite'
  | 'worker'
  /** Why the proof goes on with what is not back. */
  | 'left-apart'
  /** One line after the other, each with its time. */
  | 'road'
  /** What exactly was found, once a cause is condemned. */
  | 'found'
  /** What exactly a check in own words showed, once it is answered. */
  | 'shown';

export type MendedField = 'did' | 'minutes' | 'parts' | 'cost';
export type PartField = 'part' | 'where' | 'fasteners' | 'routing' | 'bag';

export type PhotoField = 'path' | 'caption';

/** The page that a telephone opens: where it is, with its code as dots (true is dark), or why there is none. */
type PhoneDoor =
  | { readonly kind: 'opening' }
  | {
      readonly kind: 'open';
      readonly url: string;
      readonly code: readonly (readonly boolean[])[];
    }
  | { readonly kind: 'shut'; readonly why: string };

export type Speed = 1 | 2 | 4;

/** A session that is watched again: read only. */
export type Recording = {
  readonly path: string;
  readonly header: Header;
  readonly events: readonly (Event | UnknownEvent)[];
  /** Counts of events by each of which a decision had been taken. */
  readonly stops: readonly number[];
  /** Counts of events after which the leading suspect had changed. */
  readonly turning: readonly number[];
  readonly damage?: readonly Damage[];
};

/** Several fields on one page; `at` counts the one that has the cursor. */
type Form<Field extends string> = {
  readonly at: number;
  readonly fields: Readonly<Record<Field, Typing>>;
};
type List = { readonly cursor: number };
/** A page to read: the cursor is its first line shown; left, it gives way to where it was opened. */
type Reading = { readonly cursor: number; readonly from: Screen };

/** What each screen holds of its own, by its kind. */
type Screens = {
  readonly home: List;
  readonly sessions: Search;
  readonly start: { readonly form: StartForm };
  readonly walk: {
    readonly input: WalkInput;
    /** The finding that is being answered anew. */
    readonly correcting?: number;
    /** The cause that was picked to be repaired; it is condemned once its cautions are read. */
    readonly pickedCause?: string;
    /** The check that was picked and that a safeguard holds back: what comes first stands before it. */
    readonly pickedCheck?: string;
    /** The safeguard is gone past: the cautions of its step are read, then an own word is typed. */
    readonly past?: true;
    /** Cautions of this step that were read, page by page; what is done next begins anew. */
    readonly seen?: readonly (readonly string[])[];
    /** Which page of what is claimed is read now; left out for the first. */
    readonly page?: number;
  };
  /** Practice: what the hidden vehicle has just shown, to be read; it is recorded as event `n`. */
  readonly answered: Reading & { readonly n: number };
  readonly others: List;
  /** What a check is expected to show, before it is answered; no line is marked (-1) at first. */
  readonly expect: List & { readonly check: string };
  readonly suspects: List;
  readonly apart: List & { readonly order: BoardOrder };
  /** A part that came off: one field after the other. */
  readonly 'part-off': Form<PartField>;
  readonly history: List;
  /** Who works from here on; no line is marked (-1) at first. */
  readonly worker: List;
  /** What is left as it should not stay is read first, page by page; no line is marked (-1) at first. */
  readonly close: List & { readonly page?: number };
  /** A check shows worse than before: the mechanic says what that is. No line is marked (-1) at first. */
  readonly contradiction: List;
  readonly settings: List & { readonly typed?: Typing };
  readonly vehicles: Search;
  /** A vehicle as it is on the disk; without a path it is being named. */
  readonly vehicle: List & {
    readonly path: string | undefined;
    readonly vehicle: Vehicle;
    readonly typed?: Typing;
  };
  /** Timers: those of the step, those that run; one is typed in. */
  readonly timers: List & { readonly typed?: Typing };
  /** What the job takes: time, parts and money; one of its lines may be typed in. */
  /** What is taken down before anything is disturbed; one of its lines may be typed in. */
  readonly baseline: List & { readonly typed?: Typing };
  readonly costs: List & { readonly typed?: Typing };
  readonly figures: Search;
  /** `at` is the field that is typed in; of a result, its first line shown. */
  readonly figure: { readonly page: FigurePage; readonly at: number };
  /** What was done in the repair with the number `n`, one field after the other. */
  readonly mended: Form<MendedField> & { readonly n: number };
  /** A photo by its path, and the step it belongs to. */
  readonly photo: Form<PhotoField> & { readonly about: string | undefined };
  /** What is named in a job without a tree: a check, or a cause. */
  readonly 'own-check': { readonly form: NameForm };
  readonly 'own-cause': { readonly form: NameForm };
  /** Photos that come from a telephone, for the step behind the page. */
  readonly phone: {
    readonly door: PhoneDoor;
    readonly about: string | undefined;
    /** Photos that came in and whose captions are asked, the first of them now. */
    readonly asked: readonly { readonly n: number; readonly file: string }[];
    readonly typed: Typing;
    /** How many came in. */
    readonly taken: number;
    /** Dark and light of the code change places: where no color says which is which. */
    readonly turned: boolean;
  };
  readonly replay: {
    readonly recording: Recording;
    /** Events shown. */
    readonly at: number;
    readonly playing: boolean;
    /** The place that is being typed: the number of an event, or a time; empty for none. */
    readonly typed: string;
    readonly speed: Speed;
  };
  readonly keys: Reading & { readonly lines: readonly string[] };
  /** What past jobs turned out to be. */
  readonly jobs: Reading & { readonly lines: readonly string[] };
  readonly full: Reading;
  readonly why: Reading;
  readonly ladder: Reading;
};

export type Kind = keyof Screens;
/** The screens of some kinds. */
export type At<K extends Kind> = { [P in K]: { readonly kind: P } & Screens[P] }[K];
export type Screen = At<Kind>;

export const ready: WalkInput = { kind: 'ready', cursor: -1 };
export const walk: At<'walk'> = { kind: 'walk', input: ready };
export const home: At<'home'> = { kind: 'home', cursor: 0 };
