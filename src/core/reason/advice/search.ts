import { at } from '../../at.ts';
import { LookAhead } from './look-ahead.ts';
import type { Beam, ScoredCheck } from './look-ahead.ts';
import type { Move } from './minutes.ts';
import { canTell } from './search-state.ts';
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

export type RankedMove = {
  readonly move: Move;
  /** Expected minutes from now to a proven repair when this is done first. */
  readonly expectedLeft: number;
  /** Steps looked ahead for that figure. */
  readonly depth: number;
  readonly why: Why;
};

type Entry = RankedMove & {
  readonly id: string;
  readonly step: { readonly check: ScoredCheck } | { readonly place: number };
};

/** Minutes closer than this are a tie, broken by kind and id. */
const sameMinutes = 1e-6;

function byMinutes(one: Entry, other: Entry): number {
  const rounded = (entry: Entry) => Math.round(entry.expectedLeft / sameMinutes);
  if (rounded(one) !== rounded(other)) return rounded(one) - rounded(other);
  if (one.move.do !== other.move.do) return one.move.do === 'check' ? -1 : 1;
  return one.id < other.id ? -1 : Number(one.id > other.id);
}

/** The search from one state: every possible next step with its expected minutes. */
export class Search {
  readonly #tables: SearchTables;
  readonly #at: SearchState;
  readonly #ahead: LookAhead;
  readonly #leftOut: ReadonlySet<string>;

  constructor(tables: SearchTables, at: SearchState, leftOut: readonly string[]) {
    this.#tables = tables;
    this.#at = at;
    this.#ahead = new LookAhead(tables);
    this.#leftOut = new Set(leftOut);
  }

  /** Better and better rankings; `undefined` in between only to give way. */
  *run(
    own: Move | undefined,
    further: readonly Round[],
  ): Generator<readonly RankedMove[] | undefined> {
    let entries = [...this.#checks(own), ...(yield* this.#repairs())].toSorted(byMinutes);
    yield entries;
    for (const round of further) {
      entries = (yield* this.#deeper(entries, own, round)).toSorted(byMinutes);
      yield entries;
    }
  }

  #checks(own: Move | undefined): Entry[] {
    return this.#tables.input.model.checks.flatMap(({ id }, check) => {
      const isOwn = own?.do === 'check' && own.index === check;
      const open = canTell(this.#tables, this.#at, check) && !this.#leftOut.has(id);
      if (!open && !isOwn) return [];
      const scored = this.#ahead.scoreCheck(this.#at, check);
      if (scored.certain && !isOwn && !this.#ahead.opens(check)) return [];
      const why = whyCheck(this.#tables, this.#at, scored);
      const move: Move = { do: 'check', index: check };
      return [{ move, id, expectedLeft: scored.minutes, depth: 1, why, step: { check: scored } }];
    });
  }

  *#repairs(): Generator<undefined, Entry[]> {
    const entries: Entry[] = [];
    for (const [place, cause] of this.#tables.causes.entries()) {
      if ((this.#at.repaired & (1 << place)) !== 0) continue;
      const { id } = at(this.#tables.input.model.causes, cause);
      const expectedLeft = yield* this.#ahead.repair(this.#at, place, 1, { checks: 0, repairs: 0 });
      const why = whyRepair(this.#tables, this.#at, place);
      const move: Move = { do: 'repair', index: cause };
      entries.push({ move, id, expectedLeft, depth: 1, why, step: { place } });
    }
    return entries;
  }

  *#deeper(
    entries: readonly Entry[],
    own: Move | undefined,
    round: Round,
  ): Generator<undefined, Entry[]> {
    const followed = this.#followed(entries, own, round.beam);
    const deeper: Entry[] = [];
    for (const entry of entries) {
      if (!followed.has(entry)) {
        deeper.push(entry);
        continue;
      }
      const how = { beam: round.beam, bound: Infinity };
      const minutes =
        'check' in entry.step
          ? yield* this.#ahead.check(this.#at, entry.step.check, round.depth, how)
          : yield* this.#ahead.repair(this.#at, entry.step.place, round.depth, round.beam);
      deeper.push({
        ...entry,
        expectedLeft: Math.min(minutes, entry.expectedLeft),
        depth: round.depth,
      });
    }
    return deeper;
  }

  #followed(entries: readonly Entry[], own: Move | undefined, beam: Beam): Set<Entry> {
    const checks = entries.filter(({ move }) => move.do === 'check');
    const openers = checks.filter(({ move }) => this.#ahead.opens(move.index)).slice(0, 2);
    const places = this.#ahead.repairs(
      this.#at,
      beam.repairs,
      this.#ahead.mendOnly(this.#at).first,
    );
    const repairs = entries.filter(({ step }) => 'place' in step && places.includes(step.place));
    const best = entries.filter(({ move }) => move.do === 'repair').slice(0, 1);
    const isOwn = ({ move }: Entry) => move.do === own?.do && move.index === own.index;
    return new Set([
      ...checks.slice(0, beam.checks),
      ...openers,
      ...repairs,
      ...best,
      ...entries.filter(isOwn),
    ]);
  }
}
