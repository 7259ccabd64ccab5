import { everySet } from '../belief/fault-sets.ts';
import { afterCheck, split, startSearch } from '../advice/search-state.ts';
import type { SearchState } from '../advice/search-state.ts';
import type { SearchTables } from '../advice/search-tables.ts';
import { beginEpisode, findIn, forcedCheck, isProof, workOn } from './episode.ts';
import type { Environment, Episode } from './episode.ts';
import type { Policy } from './policies.ts';

/** Every set of more causes than this is too many to weigh at every step. */
const mostCauses = 10;
/** Ways less likely than this are dropped: far below the minutes shown. */
const negligible = 1e-10;

/** An episode on all vehicles that have shown the same so far. */
type Place = { readonly at: SearchState; readonly episode: Episode };

/** Follows a policy through every result of every step. Costs are the episode's; search states only weigh. */
class Enumeration {
  readonly #environment: Environment;
  readonly #tables: SearchTables;
  readonly #policy: Policy;
  #placesLeft: number;

  constructor(
    environment: Environment,
    tables: SearchTables,
    play: { policy: Policy; most: number },
  ) {
    this.#environment = environment;
    this.#tables = tables;
    this.#policy = play.policy;
    this.#placesLeft = play.most;
  }

  /** Expected minutes from here, times the mass; undefined once the places have run out. */
  minutes({ at, episode }: Place): number | undefined {
    this.#placesLeft -= 1;
    if (this.#placesLeft < 0) return undefined;
    const forced = forcedCheck(this.#environment, episode);
    const move =
      forced === undefined
        ? this.#policy(this.#environment.input.model, episode.state)
        : { do: 'check' as const, index: forced };
    const worked = workOn(episode, move, this.#environment);
    const spent = at.mass * (worked.minutes - episode.minutes);
    const left =
      move.do === 'repair'
        ? this.minutes({ at: withMended(at, move.index), episode: worked })
        : this.#branches({ at, episode: worked }, move.index);
    return left === undefined ? undefined : spent + left;
  }

  #branches({ at, episode }: Place, check: number): number | undefined {
    let minutes = 0;
    for (const [result, weights] of split(this.#tables, at, check).entries()) {
      const next = afterCheck(this.#tables, at, check, { result, weights });
      if (next.mass <= negligible) continue;
      const found = findIn(episode, { check, result }, this.#environment);
      const left = isProof(this.#environment.input.model, { check, result })
        ? next.mass * (found.minutes - episode.minutes)
        : this.minutes({ at: next, episode: found });
      if (left === undefined) return undefined;
      minutes += left;
    }
    return minutes;
  }
}

const withMended = (at: SearchState, cause: number): SearchState => ({
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
  environment: Environment,
  policy: Policy,
  mostPlaces: number,
): number | undefined {
  const { input } = environment;
  if (input.model.causes.length > mostCauses) return undefined;
  const every = input.model.causes.map((_, index) => index);
  const { tables, at } = startSearch(input, every, everySet(input));
  const play = { policy, most: mostPlaces };
  return new Enumeration(environment, tables, play).minutes({
    at,
    episode: beginEpisode(environment),
  });
}

/**
 * Makes the forced checks from here on; a policy that only mends does not look at what they show. The
 * complaint shows at its worst, what comes before its test is as it should be.
 */
function forcedOn(environment: Environment, from: Episode): Episode {
  const { complaint, checks } = environment.input.model;
  const worst = (checks[complaint]?.results.length ?? 2) - 1;
  let episode = from;
  for (
    let check = forcedCheck(environment, episode);
    check !== undefined;
    check = forcedCheck(environment, episode)
  ) {
    const worked = workOn(episode, { do: 'check', index: check }, environment);
    const result = check === complaint ? worst : 0;
    episode = findIn(worked, { check, result }, environment);
  }
  return episode;
}

/**
 * Exact expected minutes of a policy that only mends, whatever it finds, for any number of causes:
 * each repair is needed when one of the causes not mended before it shows the complaint. A safeguard
 * before the complaint's test counts as open: what it costs while it stays shut is not in it.
 * @throws RangeError for a policy that makes a check
 */
export function mendingMinutes(environment: Environment, policy: Policy): number {
  const { model } = environment.input;
  const test = model.checks[model.complaint];
  if (test === undefined) throw new RangeError('the model has no complaint of its own');
  const shows = model.causes.map(({ prior }, cause) => {
    const silent = test.links[cause]?.[0];
    return silent === undefined ? 0 : prior * (1 - silent);
  });
  const showsStill = (mended: readonly number[]): number =>
    1 - shows.reduce((none, one, cause) => (mended.includes(cause) ? none : none * (1 - one)), 1);
  let episode = forcedOn(environment, beginEpisode(environment));
  const mended: number[] = [];
  let minutes = episode.minutes + (environment.tree.complaint.tries - 1) * test.minutes;
  while (mended.length < model.causes.length) {
    const move = policy(model, episode.state);
    if (move.do === 'check') throw new RangeError('this policy makes checks');
    const next = forcedOn(environment, workOn(episode, move, environment));
    minutes += (next.minutes - episode.minutes) * (showsStill(mended) / showsStill([]));
    mended.push(move.index);
    episode = next;
  }
  return minutes;
}
