import type { Advice } from '../core/reason/advice/advice.ts';
import type { Problem } from '../core/problem.ts';
import type { Damage } from '../core/session/record/damage.ts';
import type { Event, UnknownEvent } from '../core/session/event.ts';
import type { Stamp } from '../core/session/kinds/shapes.ts';
import type { Header } from '../core/session/header/header.ts';
import type { SessionLine } from '../core/session/name.ts';
import type { Due, Story } from '../core/session/story.ts';
import type { PastJob } from '../core/session/vehicle/past.ts';
import type { Secret } from '../core/session/practice/secret.ts';
import type { KeptVehicle } from '../core/session/vehicle/vehicle.ts';
import type { Settings } from '../core/settings.ts';
import type { Library } from '../core/tree/shop.ts';
import type { KeyPress } from './keys/command.ts';
import type { Token } from './keys/tokens.ts';
import { home, type Screen } from './screen.ts';
import type { Question } from './walk/question.ts';

/** The session that is open for writing, as the screens know it. */
export type OpenSession = {
  readonly path: string;
  readonly header: Header;
  readonly events: readonly (Event | UnknownEvent)[];
  /** What was done to the record before it was opened. */
  readonly damage?: readonly Damage[];
  /** What a practice hides; undefined in a job, and where it is lost. */
  readonly secret?: Secret | undefined;
  /** With the step that leads now: the tree's own, or the quicker one, as the settings say. */
  readonly story: Story;
  /** What the tree itself would do next. */
  readonly own: Due;
  /** What the advice says of this story, once it has been worked out. */
  readonly advice: Advice | undefined;
  /** Why there is no advice and none is on its way; counts only where there is none. */
  readonly unadvised?: string | undefined;
  /** Number of the last event that is on the disk. */
  readonly kept: number;
  /** When the last one was kept, `10:42`. */
  readonly keptAt: string;
  /** Why the disk does not take what is held, if so. */
  readonly trouble: Problem | undefined;
};

type Notice = { readonly kind: 'info' | 'problem'; readonly text: string };

/** One key struck again and again, or held down: how a hand leans on a keyboard. */
export type Run = {
  readonly token: Token;
  /** When it was last struck, in milliseconds since the program began. */
  readonly mono: number;
  /** It has answered, claimed or opened something: what comes up then is not for the same run. */
  readonly spent: boolean;
  /** Letters struck before and with it, each soon after the other, with no field open. */
  readonly letters: number;
};

/** What was last put on the screen. */
export type Drawn =
  | { readonly kind: 'too-small' }
  /** `whole`: the last line of what is asked was among it. */
  | {
      readonly kind: 'page';
      readonly question: Question;
      readonly whole: boolean;
      /** The cautions of the page, all of their words among what was drawn of it. */
      readonly cautions: readonly string[];
      /** Of the window, `80x24`: in another one the pages are others. */
      readonly size: string;
    };

/** Everything the program knows; screens are functions of it. */
export type State = {
  readonly screen: Screen;
  /** What the screen asks; it follows from the rest, and `update` works it out once a message. */
  readonly question: Question;
  readonly now: Stamp;
  readonly settings: Settings;
  /** Loaded when first needed: Home does without. */
  readonly library: Library | undefined;
  readonly sessions: readonly SessionLine[];
  /** Loaded when a job is begun or the vehicles are looked at. */
  readonly vehicles: readonly KeptVehicle[];
  /** What jobs left that must be done before a vehicle is driven, with its name. */
  readonly unsafe: readonly string[];
  /** The past jobs of the vehicle that was asked about last. */
  readonly past: { readonly vehicle: string; readonly jobs: readonly PastJob[] } | undefined;
  readonly session: OpenSession | undefined;
  readonly notice: Notice | undefined;
  readonly run: Run | undefined;
  readonly drawn: Drawn | undefined;
  /** The press that is asked about first: one that writes by a letter, or leaves a field with words in it. */
  readonly asked: KeyPress | undefined;
  /** Fields that were left with words in them, as they stood: `typing/drafts.ts`. */
  readonly drafts: Readonly<Record<string, Screen>>;
  readonly leaving: boolean;
};

/** Nothing open, Home on screen. */
export const emptyState = (now: Stamp, settings: Settings): State => ({
  screen: home,
  question: { mode: 'home', due: undefined },
  now,
  settings,
  library: undefined,
  sessions: [],
  vehicles: [],
  past: undefined,
  unsafe: [],
  session: undefined,
  notice: undefined,
  run: undefined,
  drawn: undefined,
  asked: undefined,
  drafts: {},
  leaving: false,
});
