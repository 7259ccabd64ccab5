import { at } from '../../at.ts';
import { exactMovement, heldBy } from './condemning.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import { Continuation, type Step } from './continuation.ts';
import { LookAhead } from './look-ahead.ts';
import type { Beam } from './look-ahead.ts';
import { moveNamed } from './minutes.ts';
import type { Move, StepName } from './minutes.ts';
import { canTell, isOpen, mayMend } from './search-state.ts';
import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';
import { whyCheck, whyRepair } from './explain.ts';
import type { Why } from './explain.ts';

/** One round of the search: how far ahead, and how many steps it follows at every place. */
export type Round = { readonly depth: number; readonly beam: Beam };

/** Two rounds of looking ahead after the first answer; measured against exact optima. */
export const rounds: readonly Round[] = [
  { depth: 2, beam: { checks: 6, repairs: 3 } },
  { depth: 3, beam: { checks: 4, repairs: 2 } },
];

/** The rounds that are quick enough for a step to be led by. */
export const atOnce = rounds.slice(0, 1);

export type RankedMove = {
  readonly move: Move;
  /** Expected minutes, parts at their price, to a proven repair when this is done first: ranks the steps. */
  readonly cost: number;
  /** Expected minutes of work alone when this is done first and the advice is followed; undefined until reckoned. */
  readonly expectedLeft: number | undefined;
  readonly why: Why;
};

/** A repair that waits for evidence: a short check would still tell. */
type HeldRepair = { readonly cause: number; readonly check: number };

/** The steps from a place, least cost first, and what is not among them. */
export type Ranking = {
  readonly ranked: readonly RankedMove[];
  readonly held: readonly HeldRepair[];
  /** The tree's own step, wherever it stands. */
  readonly own: RankedMove | undefined;
};

export type SearchOptions = {
  readonly own: Move | undefined;
  /** Steps not to advise. */
  readonly leaveOut: readonly StepName[];
  /** Chance of every cause of the model. */
  readonly chances: readonly number[];
};

type Entry = RankedMove & { readonly id: string; readonly step: Step };

/** Costs closer than this are a tie, broken by kind and id. */
const sameCost = 1e-6;
function byCost(one: Entry, other: Entry): number {
  const rounded = (entry: Entry) => Math.round(entry.cost / sameCost);
  if (rounded(one) !== rounded(other)) return rounded(one) - rounded(other);
  if (one.move.do !== other.move.do) return one.move.do === 'check' ? -1 : 1;
  return one.id < other.id ? -1 : Number(one.id > other.id);
}

/** The search from one state: every possible next step with its expected cost. */
export class Search {
  readonly #tables: SearchTables;
  readonly #at: SearchState;
  readonly #ahead: LookAhead;
  readonly #leftOut: ReadonlySet<number>;
  /** Causes not to be mended now. */
  readonly #unmended: ReadonlySet<number>;
  readonly #options: SearchOptions;
  readonly #moved = new Map<string, number>();

  constructor(tables: SearchTables, at: SearchState, options: SearchOptions) {
    this.#tables = tables;
    this.#at = at;
    this.#ahead = new LookAhead(tables);
    const leftOut = options.leaveOut.flatMap((name) => moveNamed(tables.input.model, name) ?? []);
    const indexes = (kind: Move['do']) =>
      new Set(leftOut.flatMap((move) => (move.do === kind ? [move.index] : [])));
    this.#leftOut = indexes('check');
    this.#unmended = indexes('repair');
    this.#options = options;
  }

  /** Better and better rankings; `undefined` in between only to give way. */
  *run(further: readonly Round[]): Generator<Ranking | undefined> {
    let entries = [...this.#checks(), ...(yield* this.#repairs())].toSorted(byCost);
    let ranking = this.#ranking(entries);
    yield ranking;
    for (const round of further) {
      entries = (yield* this.#deeper(entries, ranking, round)).toSorted(byCost);
      ranking = this.#ranking(entries);
      yield ranking;
    }
  }

  /** A ranking with the minutes of its first step and of the tree's own, walked out. */
  *reckon({ ranked, held, own }: Ranking): Generator<undefined, Ranking> {
    const continuation = new Continuation(this.#tables, this.#leftOut);
    const minutes = new Map<string, number>();
    for (const { move } of [...ranked.slice(0, 1), ...(own === undefined ? [] : [own])]) {
      const name = nameOf(move);
      if (minutes.has(name)) continue;
      minutes.set(name, yield* continuation.after(this.#at, this.#stepOf(move)));
    }
    const withMinutes = (one: RankedMove): RankedMove => ({
      ...one,
      expectedLeft: minutes.get(nameOf(one.move)),
    });
    return { ranked: ranked.map(withMinutes), held, own: own && withMinutes(own) };
  }

  #stepOf({ do: kind, index }: Move): Step {
    return kind === 'check'
      ? { check: this.#ahead.scoreCheck(this.#at, index) }
      : { place: this.#tables.causes.indexOf(index) };
  }

  #isOwn({ do: kind, index }: Move): boolean {
    const { own } = this.#options;
    return kind === own?.do && index === own.index;
  }

  /** The exact movement, kept: every round asks for it again. */
  readonly #exact = (input: ReasoningInput, check: number, cause: number): number => {
    const key = `${check} ${cause}`;
    const moved = this.#moved.get(key) ?? exactMovement(input, check, cause);
    this.#moved.set(key, moved);
    return moved;
  };

  /** Repairs that nothing holds back and that no safeguard forbids, among the checks that tell. */
  #ranking(entries: readonly Entry[]): Ranking {
    const scored = entries.flatMap(({ step }) =>
      'check' in step && !this.#leftOut.has(step.check.check) ? [step.check] : [],
    );
    const held: HeldRepair[] = [];
    const firstCheck = entries.findIndex(({ step }) => 'check' in step);
    const ranked = entries.filter(({ move, step }, place) => {
      if ('check' in step) return true;
      if (this.#unmended.has(move.index) || !mayMend(this.#tables, this.#at, step.place))
        return false;
      const chance = at(this.#options.chances, move.index);
      const check = heldBy(
        this.#tables,
        this.#at,
        { place: step.place, chance },
        // Only a repair that would lead is worth the exact sum.
        { scored, ...(place < firstCheck && { exact: this.#exact }) },
      );
      if (check !== undefined) held.push({ cause: move.index, check });
      return check === undefined;
    });
    const own = entries.find(({ move }) => this.#isOwn(move));
    return { ranked: ranked.length > 0 ? ranked : this.#again(), held, own };
  }

  /** Where all that is left is forbidden by what was shown: the checks that forbid it, once more. */
  #again(): RankedMove[] {
    const { costs, causes, input } = this.#tables;
    const left = causes.filter((_, place) => (this.#at.repaired & (1 << place)) === 0);
    const shut = left.flatMap((cause) =>
      at(input.model.causes, cause).gates.filter((gate) => !isOpen(this.#tables, this.#at, gate)),
    );
    return [...new Set(shut.map(({ check }) => check))].map((check) => ({
      move: { do: 'check', index: check },
      cost: costs.cost(check, this.#at.opened, this.#at.standing),
      expectedLeft: undefined,
      why: { kind: 'again' },
    }));
  }

  #checks(): Entry[] {
    return this.#tables.input.model.checks.flatMap(({ id }, check) => {
      const move: Move = { do: 'check', index: check };
      const isOwn = this.#isOwn(move);
      const open = canTell(this.#tables, this.#at, check) && !this.#leftOut.has(check);
      if (!open && !isOwn) return [];
      const scored = this.#ahead.scoreCheck(this.#at, check);
      if (scored.certain && !isOwn && !this.#ahead.opens(check)) return [];
      const why = whyCheck(this.#tables, this.#at, scored);
      const { cost } = scored;
      return [{ move, id, cost, expectedLeft: undefined, why, step: { check: scored } }];
    });
  }

  *#repairs(): Generator<undefined, Entry[]> {
    yield undefined;
    return this.#ahead.scoreRepairs(this.#at).map(({ place, cost }) => {
      const cause = at(this.#tables.causes, place);
      const { id } = at(this.#tables.input.model.causes, cause);
      const why = whyRepair(this.#tables, this.#at, place);
      const move: Move = { do: 'repair', index: cause };
      return { move, id, cost, expectedLeft: undefined, why, step: { place } };
    });
  }

  *#deeper(
    entries: readonly Entry[],
    { ranked }: Ranking,
    round: Round,
  ): Generator<undefined, Entry[]> {
    const followed = this.#followed(entries, round.beam);
    const open = new Set(ranked);
    const deeper: Entry[] = [];
    let bound = Infinity;
    for (const entry of entries) {
      const cost = followed.has(entry) ? yield* this.#costAhead(entry, round, bound) : Infinity;
      if (open.has(entry)) bound = Math.min(bound, cost);
      // One that cannot beat the best so far keeps what is known of it, which is more.
      deeper.push({ ...entry, cost: Math.min(cost, entry.cost) });
    }
    return deeper;
  }

  *#costAhead(
    { step }: Entry,
    { depth, beam }: Round,
    bound: number,
  ): Generator<undefined, number> {
    return 'check' in step
      ? yield* this.#ahead.check(this.#at, step.check, depth, { beam, bound })
      : yield* this.#ahead.repair(this.#at, step.place, depth, { beam, bound: Infinity });
  }

  #followed(entries: readonly Entry[], beam: Beam): Set<Entry> {
    const checks = entries.filter(({ move }) => move.do === 'check');
    const openers = checks.filter(({ move }) => this.#ahead.opens(move.index)).slice(0, 2);
    const places = this.#ahead.repairs(
      this.#at,
      beam.repairs,
      this.#ahead.mendOnly(this.#at).first,
    );
    const repairs = entries.filter(({ step }) => 'place' in step && places.includes(step.place));
    const best = entries.filter(({ move }) => move.do === 'repair').slice(0, 1);
    return new Set([
      ...checks.slice(0, beam.checks),
      ...openers,
      ...repairs,
      ...best,
      ...entries.filter(({ move }) => this.#isOwn(move)),
    ]);
  }
}

const nameOf = ({ do: kind, index }: Move): string => `${kind} ${index}`;
