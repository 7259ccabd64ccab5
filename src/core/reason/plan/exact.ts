import { freshCase } from '../belief/evidence.ts';
import type { AccessMinutes } from '../belief/evidence.ts';
import { beginJob, findIn, isProof, shownBy, workOn } from './episode.ts';
import type { Job } from './episode.ts';
import type { Model } from '../belief/model.ts';
import { afterCheck, split, startOn } from '../advice/search-state.ts';
import type { Position } from '../advice/search-state.ts';
import { everySet } from '../belief/fault-sets.ts';
import type { Space } from '../advice/search-tables.ts';
import type { Walker } from './policies.ts';

type Accesses = Readonly<Record<string, AccessMinutes>>;

/** Every set of more causes than this is too many to weigh at every step. */
const mostCauses = 10;
/** Ways less likely than this are dropped: far below the minutes shown. */
const negligible = 1e-10;

/** A job on all vehicles that have shown the same so far. */
type Place = { readonly at: Position; readonly job: Job };

/** Follows a walker through every result of every step. Costs are the job's; positions only weigh. */
class Enumeration {
  readonly #space: Space;
  readonly #walker: Walker;
  #placesLeft: number;

  constructor(space: Space, walker: Walker, mostPlaces: number) {
    this.#space = space;
    this.#walker = walker;
    this.#placesLeft = mostPlaces;
  }

  /** Expected minutes from here, times the mass; not a number once the places have run out. */
  minutes({ at, job }: Place): number {
    this.#placesLeft -= 1;
    if (this.#placesLeft < 0) return Number.NaN;
    const { model } = this.#space.given;
    const move = this.#walker(model, job.state);
    const worked = workOn(job, move, this.#space.given);
    const check = shownBy(model, move);
    const mended = move.do === 'repair' ? withMended(at, move.index) : at;
    let minutes = at.mass * (worked.minutes - job.minutes);
    for (const [result, weights] of split(this.#space, mended, check).entries()) {
      const next = afterCheck(this.#space, mended, check, { result, weights });
      if (next.mass <= negligible || isProof(model, check, result)) continue;
      minutes += this.minutes({ at: next, job: findIn(worked, check, result, model) });
      if (Number.isNaN(minutes)) return minutes;
    }
    return minutes;
  }
}

const withMended = (at: Position, cause: number): Position => ({
  ...at,
  left: at.left.map((set) => set & ~(1 << cause)),
  repaired: at.repaired | (1 << cause),
});

/**
 * Exact expected minutes of a walker to a proven repair: every result of every step is followed,
 * on all sets of faults at once.
 * @returns undefined for a model of more than 10 causes, or where following takes too many places
 */
export function exactMinutes(
  model: Model,
  accesses: Accesses,
  walker: Walker,
  mostPlaces: number,
): number | undefined {
  if (model.causes.length > mostCauses) return undefined;
  const given = freshCase(model, accesses);
  const every = model.causes.map((_, index) => index);
  const { space, at } = startOn(given, every, everySet(given));
  const job = beginJob(given);
  const minutes = new Enumeration(space, walker, mostPlaces).minutes({ at, job });
  return Number.isNaN(minutes) ? undefined : minutes;
}

/**
 * Exact expected minutes of a walker that only mends, whatever it finds, for any number of causes:
 * each repair is needed when one of the causes not mended before it shows the complaint.
 * @throws RangeError for a walker that makes a check
 */
export function mendingMinutes(model: Model, accesses: Accesses, walker: Walker): number {
  const shows = model.causes.map(
    ({ prior }, cause) => prior * (1 - (model.checks[model.complaint]?.links[cause]?.[0] ?? 1)),
  );
  const showsStill = (mended: readonly number[]): number =>
    1 - shows.reduce((none, one, cause) => (mended.includes(cause) ? none : none * (1 - one)), 1);
  const given = freshCase(model, accesses);
  let job = beginJob(given);
  const mended: number[] = [];
  let minutes = 0;
  while (mended.length < model.causes.length) {
    const move = walker(model, job.state);
    if (move.do === 'check') throw new RangeError('this walker makes checks');
    const worked = workOn(job, move, given);
    minutes += (worked.minutes - job.minutes) * (showsStill(mended) / showsStill([]));
    mended.push(move.index);
    job = findIn(worked, model.complaint, 1, model);
  }
  return minutes;
}
