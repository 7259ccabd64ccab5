import { freshCase } from '../belief/evidence.ts';
import type { AccessMinutes } from '../belief/evidence.ts';
import { beginEpisode, findIn, isProof, shownBy, workOn } from './episode.ts';
import type { Episode } from './episode.ts';
import type { Model } from '../belief/model.ts';
import { afterCheck, split, startOn } from '../advice/search-state.ts';
import type { Position } from '../advice/search-state.ts';
import { everySet } from '../belief/fault-sets.ts';
import type { Space } from '../advice/search-tables.ts';
import type { Policy } from './policies.ts';

type Accesses = Readonly<Record<string, AccessMinutes>>;

/** Every set of more causes than this is too many to weigh at every step. */
const mostCauses = 10;
/** Ways less likely than this are dropped: far below the minutes shown. */
const negligible = 1e-10;

/** An episode on all vehicles that have shown the same so far. */
type Place = { readonly at: Position; readonly episode: Episode };

/** Follows a policy through every result of every step. Costs are the episode's; positions only weigh. */
class Enumeration {
  readonly #space: Space;
  readonly #policy: Policy;
  #placesLeft: number;

  constructor(space: Space, policy: Policy, mostPlaces: number) {
    this.#space = space;
    this.#policy = policy;
    this.#placesLeft = mostPlaces;
  }

  /** Expected minutes from here, times the mass; undefined once the places have run out. */
  minutes({ at, episode }: Place): number | undefined {
    this.#placesLeft -= 1;
    if (this.#placesLeft < 0) return undefined;
    const { model } = this.#space.given;
    const move = this.#policy(model, episode.state);
    const worked = workOn(episode, move, this.#space.given);
    const check = shownBy(model, move);
    const mended = move.do === 'repair' ? withMended(at, move.index) : at;
    let minutes = at.mass * (worked.minutes - episode.minutes);
    for (const [result, weights] of split(this.#space, mended, check).entries()) {
      const next = afterCheck(this.#space, mended, check, { result, weights });
      if (next.mass <= negligible || isProof(model, check, result)) continue;
      const left = this.minutes({ at: next, episode: findIn(worked, check, result, model) });
      if (left === undefined) return undefined;
      minutes += left;
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
 * Exact expected minutes of a policy to a proven repair: every result of every step is followed,
 * on all sets of faults at once.
 * @returns undefined for a model of more than 10 causes, or where following takes too many places
 */
export function exactMinutes(
  model: Model,
  accesses: Accesses,
  policy: Policy,
  mostPlaces: number,
): number | undefined {
  if (model.causes.length > mostCauses) return undefined;
  const given = freshCase(model, accesses);
  const every = model.causes.map((_, index) => index);
  const { space, at } = startOn(given, every, everySet(given));
  const episode = beginEpisode(given);
  return new Enumeration(space, policy, mostPlaces).minutes({ at, episode });
}

const notMending = "this policy does more than the complaint's own test and repairs";

/**
 * Exact expected minutes of a policy that only mends after the complaint's own test, whatever it
 * finds, for any number of causes: each repair is needed when one of the causes not mended before
 * it shows the complaint.
 * @throws RangeError for a policy that makes another check
 */
export function mendingMinutes(model: Model, accesses: Accesses, policy: Policy): number {
  const shows = model.causes.map(
    ({ prior }, cause) => prior * (1 - (model.checks[model.complaint]?.links[cause]?.[0] ?? 1)),
  );
  const showsStill = (mended: readonly number[]): number =>
    1 - shows.reduce((none, one, cause) => (mended.includes(cause) ? none : none * (1 - one)), 1);
  const given = freshCase(model, accesses);
  let episode = beginEpisode(given);
  const mended: number[] = [];
  const test = policy(model, episode.state);
  if (test.do !== 'check' || test.index !== model.complaint) throw new RangeError(notMending);
  episode = findIn(workOn(episode, test, given), model.complaint, 1, model);
  let { minutes } = episode;
  while (mended.length < model.causes.length) {
    const move = policy(model, episode.state);
    if (move.do === 'check') throw new RangeError(notMending);
    const worked = workOn(episode, move, given);
    minutes += (worked.minutes - episode.minutes) * (showsStill(mended) / showsStill([]));
    mended.push(move.index);
    episode = findIn(worked, model.complaint, 1, model);
  }
  return minutes;
}
