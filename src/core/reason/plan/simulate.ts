import { at } from '../../at.ts';
import { sum } from '../../sum.ts';
import { beginEpisode, findIn, forcedCheck, isProof, workOn } from './episode.ts';
import type { Environment } from './episode.ts';
import { provableBy } from './provable.ts';
import { makeRandom } from './random.ts';
import type { Random } from './random.ts';
import { hideVehicle, NoSimulation } from './vehicle.ts';
import type { HiddenVehicle } from './vehicle.ts';
import type { Policy } from './policies.ts';

export type EpisodeCost = {
  readonly minutes: number;
  readonly checks: number;
  readonly repairs: number;
  /** Repairs of causes that were not there; looking further for nothing is one. */
  readonly needless: number;
};

export type Simulated = {
  readonly policy: string;
  readonly mean: number;
  /** Standard error of the mean. */
  readonly error: number;
  /** Mean of this policy's minutes less those of the first one, vehicle by vehicle. */
  readonly more: number;
  readonly moreError: number;
  /** Needless repairs a job, on average. */
  readonly needless: number;
};

export type Simulation = {
  readonly environment: Environment;
  readonly count: number;
  readonly seed: number;
  /** The first is what the others are held against. */
  readonly policies: Readonly<Record<string, Policy>>;
  /** Told after each job that was lived, of all there are. */
  readonly tell?: (progress: { readonly done: number; readonly of: number }) => void;
};

/** Steps after which a policy is taken to be going round in circles. */
const mostSteps = 500;

/** Lives one job to a proven repair: what is forced is done, what is free the policy chooses. */
export function runEpisode(
  environment: Environment,
  vehicle: HiddenVehicle,
  policy: Policy,
): EpisodeCost {
  const { model } = environment.input;
  let episode = beginEpisode(environment);
  const mended: number[] = [];
  for (let checks = 0; checks < mostSteps;) {
    const forced = forcedCheck(environment, episode);
    const move =
      forced === undefined ? policy(model, episode.state) : { do: 'check' as const, index: forced };
    episode = workOn(episode, move, environment);
    if (move.do === 'repair') {
      mended.push(move.index);
      continue;
    }
    checks += 1;
    const shown = { check: move.index, result: vehicle.show(move.index, mended) };
    episode = findIn(episode, shown, environment);
    if (isProof(model, shown)) {
      const needless = mended.filter((cause) => !vehicle.causes.includes(cause)).length;
      return { minutes: episode.minutes, checks, repairs: mended.length, needless };
    }
  }
  throw new NoSimulation(`a policy took ${mostSteps} steps without a proven repair`);
}

function spread(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((all, value) => all + value, 0) / values.length;
  const squares = values.reduce((all, value) => all + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / Math.max(1, values.length - 1) / values.length) };
}

/** Draws before a tree is given up whose safeguards stay shut on every vehicle. */
const mostDraws = 1000;

/** A hidden vehicle that can be proven in the end. */
function hideProvable({ tree, input: { model } }: Environment, random: Random): HiddenVehicle {
  const isProvable = provableBy(tree, model);
  for (let attempt = 0; attempt < mostDraws; attempt += 1) {
    const vehicle = hideVehicle(model, random);
    if (isProvable(vehicle)) return vehicle;
  }
  throw new NoSimulation(`no vehicle in ${mostDraws} may be run with everything mended`);
}

/** Sends every policy to the same hidden vehicles and compares their minutes in pairs. */
export function simulate(simulation: Simulation): readonly Simulated[] {
  const { environment, count, seed, policies, tell } = simulation;
  const random = makeRandom(seed);
  const vehicles = Array.from({ length: count }, () => hideProvable(environment, random));
  const of = count * Object.keys(policies).length;
  const lived = Object.entries(policies).map(([name, policy], part) => ({
    name,
    episodes: vehicles.map((vehicle, index) => {
      const episode = runEpisode(environment, vehicle, policy);
      tell?.({ done: part * count + index + 1, of });
      return episode;
    }),
  }));
  const [first] = lived;
  if (first === undefined) return [];
  return lived.map(({ name, episodes }) => {
    const { mean, error } = spread(episodes.map(({ minutes }) => minutes));
    const more = spread(
      episodes.map(({ minutes }, index) => minutes - at(first.episodes, index).minutes),
    );
    const needless = sum(episodes.map((episode) => episode.needless)) / count;
    return { policy: name, mean, error, more: more.mean, moreError: more.error, needless };
  });
}
