import type { Facts } from '../tree/facts.ts';
import type { Cause, Check, Standing, Tree } from '../tree/model.ts';
import type { Shop } from '../tree/shop.ts';
import type { Entry } from './correct.ts';
import type { PayloadOf } from './event.ts';
import type { Conditions, Stamp } from './kinds/shapes.ts';
import type { Stretch } from './time.ts';
import type { Header } from './header/header.ts';
import type { Sheet } from './vehicle/vehicle.ts';

type Noted = { readonly n: number; readonly stamp: Stamp };

/** The tree being walked from some event on, as this vehicle has it. */
export type Leg = {
  readonly tree: Tree;
  readonly shop: Shop;
  readonly since: number;
  readonly reason?: string;
  /** It is a complaint of its own, in the owner's words where they are noted. */
  readonly complaint?: { readonly words?: string | undefined };
};

/** A check's recorded result, corrections applied. A proof is a finding of the complaint's check. */
export type Finding = Noted &
  Omit<PayloadOf<'found'>, 'kind'> & {
    readonly leg: number;
    /** Repairs that had been made before it. */
    readonly repairs: number;
    readonly corrected: boolean;
    readonly proof: boolean;
    /** The passing state it needs was spent, and nobody had said that it was there again. */
    readonly unsaid?: true;
  };

/** What a check was expected to show. */
export type Expected = Noted & { readonly check: string; readonly result: string };
/** `found`: what exactly was found, in the person's own words; left out where nobody noted it. */
type Condemned = Noted & { readonly cause: string; readonly found?: string };
export type Repaired = Noted & Omit<PayloadOf<'repaired'>, 'kind'> & { readonly leg: number };
export type Proof = Finding & { readonly good: boolean };
/** What the mechanic said of two findings that contradict one another. */
type Settled = Noted & Omit<PayloadOf<'settled'>, 'kind'>;
/** A part that is off: its bag, where it lies now, what held it, how its hoses and wires ran. */
export type PartOff = Readonly<Omit<PayloadOf<'part-off'>, 'kind'>> & { readonly n: number };
/** Somebody who worked from some event on. */
type Worker = { readonly n: number; readonly who: string };
export type AidOn = { readonly n: number; readonly aid: string };
/** A part bought apart from a repair. */
type Bought = Noted & Omit<PayloadOf<'part-bought'>, 'kind'>;
/** A timer that was not stopped or put away; `began` is the seconds of the session at which it was set. */
export type Timer = Noted & Omit<PayloadOf<'timer'>, 'kind'> & { readonly began: number };
/** What time and money the job may take, as it was agreed last. */
type Limit = Noted & Omit<PayloadOf<'limit'>, 'kind'>;
type Photo = Noted & Omit<PayloadOf<'photographed'>, 'kind'>;
type Hint = Noted & Omit<PayloadOf<'hinted'>, 'kind'>;
type FollowUp = Noted & Omit<PayloadOf<'follow-up'>, 'kind'>;

/** What a safeguard may stand before. */
export type Guarded =
  | { readonly kind: 'check'; readonly check: string }
  | { readonly kind: 'repair'; readonly cause: string }
  | { readonly kind: 'standing'; readonly set: Standing };

/** A safeguard that is shut: the check that comes first, what is known of it, and why it comes first. */
export type Hold = {
  readonly check: string;
  readonly seen:
    | { readonly kind: 'nothing' | 'passed over' | 'stale' }
    | { readonly kind: 'shown'; readonly label: string };
  readonly otherwise: string;
};

/** Safeguards that somebody went past, and why in their own words. */
export type Passed = Noted & {
  readonly leg: number;
  readonly step: Guarded;
  readonly holds: readonly Hold[];
  readonly why: string;
};

/** A check or a cause that a person named, or took from a library's tree. */
type Named = {
  readonly n: number;
  readonly kind: 'check' | 'cause';
  readonly id: string;
  /** The tree that it was taken from. */
  readonly from?: string;
};

/** What is to be done now. */
export type Due =
  | {
      readonly kind: 'check';
      readonly check: string;
      readonly why: 'way' | 'chosen' | 'repeat' | 'advised';
    }
  /** The tree names a cause; the mechanic has not condemned it yet. */
  | { readonly kind: 'named'; readonly cause: string }
  | { readonly kind: 'repair'; readonly cause: string }
  | { readonly kind: 'proof'; readonly cause: string }
  | { readonly kind: 'leg'; readonly tree: string; readonly reason: string }
  | { readonly kind: 'stop'; readonly reason: string }
  /** The tree's own way gives out here; what follows is the advice. */
  | { readonly kind: 'exhausted'; readonly reason: string }
  /** No tree leads on: the person names what comes next, the complaint's own test first of all. */
  | { readonly kind: 'own'; readonly test: boolean }
  | { readonly kind: 'proven' }
  | { readonly kind: 'closed' };

/** What the event list of one session comes to: nothing in here is kept anywhere else. */
export type Story = {
  readonly header: Header;
  readonly entries: readonly Entry[];
  readonly facts: Facts;
  /** Figures of the vehicle's own book. */
  readonly sheet: Sheet;
  /** Who worked, each from some event on; nobody where that was never said. */
  readonly workers: readonly Worker[];
  readonly legs: readonly Leg[];
  readonly conditions: Conditions;
  /** Conditions that were asked for and nobody knows. */
  readonly notKnown: readonly string[];
  readonly standing: Standing;
  /** Accesses open now, in the order of opening. */
  readonly open: readonly string[];
  readonly partsOff: readonly PartOff[];
  /** Bridges, jumpers, clamps and plugs that are on and must come off again. */
  readonly aidsOn: readonly AidOn[];
  /** What was left as it was before a proof, and why. */
  readonly leftApart: readonly (Noted & Omit<PayloadOf<'left-apart'>, 'kind'>)[];
  /** Passing states of the tree that an earlier step has spent. */
  readonly over: readonly string[];
  /** What somebody expected of a check before it was answered. It moves no suspect. */
  readonly expected: readonly Expected[];
  readonly findings: readonly Finding[];
  /** Checks passed over, with the reason; a later finding takes the check off this list. */
  readonly skipped: readonly (Noted & { readonly check: string; readonly reason: string })[];
  readonly unsure: readonly (Noted & { readonly check: string })[];
  readonly begun: { readonly n: number; readonly check: string } | undefined;
  /** Checks and causes that were named in own words, or taken into a job without a tree. */
  readonly named: readonly Named[];
  /** Cautions said to be read, and the step they were read for: `check:fuse`, `cause:stud`. */
  readonly acknowledged: readonly {
    readonly n: number;
    readonly step: string;
    readonly cautions: readonly string[];
  }[];
  readonly condemned: readonly Condemned[];
  readonly repairs: readonly Repaired[];
  readonly proofs: readonly Proof[];
  /** Contradictions that were asked about, and what the mechanic said. */
  readonly settled: readonly Settled[];
  readonly timers: readonly Timer[];
  readonly bought: readonly Bought[];
  readonly limit: Limit | undefined;
  /** What was taken down of the shop's baseline: of each thing the last word. */
  readonly baseline: readonly (Noted & Omit<PayloadOf<'baseline'>, 'kind'>)[];
  readonly followUps: readonly FollowUp[];
  readonly photos: readonly Photo[];
  readonly passed: readonly Passed[];
  /** Hints that were taken in practice. */
  readonly hints: readonly Hint[];
  /** The hidden fault of a practice that has come to its end. */
  readonly revealed: (Noted & Omit<PayloadOf<'revealed'>, 'kind'>) | undefined;
  readonly closed: (Noted & Omit<PayloadOf<'closed'>, 'kind'>) | undefined;
  /** All the time from the first event to the last, in seconds, by what it was. */
  readonly time: Stretch;
  /** Minutes worked, by the machine's uptime. */
  readonly minutes: number;
  /** What is to be done now. */
  readonly due: Due;
};

/** Everything of a story but what is due, which is worked out from it. */
export type Standpoint = Omit<Story, 'due'>;

const someLeg = (leg: Leg | undefined): Leg => {
  if (leg === undefined) throw new Error('a story has at least one leg');
  return leg;
};

export const currentLeg = ({ legs }: Pick<Story, 'legs'>): Leg => someLeg(legs.at(-1));

/** The leg that the session began with: its tree is the complaint that was brought. */
export const firstLeg = ({ legs }: Pick<Story, 'legs'>): Leg => someLeg(legs[0]);

/** The last finding of a check, if what it showed is something the check can show in this tree. */
export function lastFinding(
  story: Pick<Story, 'findings' | 'legs'>,
  check: string,
): Finding | undefined {
  const results = currentLeg(story).tree.checks[check]?.results;
  return story.findings.findLast(
    (finding) => finding.check === check && results?.some((result) => result.id === finding.result),
  );
}

/** The number the next event will have. */
export const nextNumber = (story: Pick<Story, 'entries'>): number =>
  (story.entries.at(-1)?.event.n ?? 0) + 1;

/** Who works, or worked when an event was written; undefined where nobody said. */
export const workerAt = (
  { workers }: Pick<Story, 'workers'>,
  n: number = Infinity,
): string | undefined => workers.findLast((one) => one.n <= n)?.who;

/** What the first leg that knows it says of something: names are good from leg to leg. */
export const fromLegs = <T>(
  { legs }: Pick<Story, 'legs'>,
  of: (leg: Leg) => T | undefined,
): T | undefined => legs.map(of).find((one) => one !== undefined);

/**
 * The cause of that id whose words tell it: that of the leg it is told in, else of the last leg that has
 * words for a sentence, else of any that knows it.
 */
export function tellingCause(
  { legs }: Pick<Story, 'legs'>,
  id: string,
  leg?: number,
): Cause | undefined {
  const own = legs[leg ?? legs.length - 1]?.tree.causes[id];
  if (own?.short !== undefined) return own;
  const known = legs.map(({ tree }) => tree.causes[id]).filter((cause) => cause !== undefined);
  return known.findLast(({ short }) => short !== undefined) ?? own ?? known.at(-1);
}

/** An access by its name, from whichever shop of the session holds it: it stays open from leg to leg. */
export const accessName = (story: Pick<Story, 'legs'>, id: string): string =>
  fromLegs(story, ({ shop }) => shop.accesses[id]?.name) ?? 'a part of the vehicle';

/** A check by its id, from the leg it was asked in. */
export const checkIn = (
  { legs }: Pick<Story, 'legs'>,
  id: string,
  leg: number,
): Check | undefined => legs[leg]?.tree.checks[id];

/** Whether a finding is what a healthy vehicle shows. */
export const isHealthy = (
  story: Pick<Story, 'legs'>,
  { check, leg, result, orResult }: Pick<Finding, 'check' | 'leg' | 'result' | 'orResult'>,
): boolean => orResult === undefined && checkIn(story, check, leg)?.results[0]?.id === result;
