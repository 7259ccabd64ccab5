import { freshCase } from '../belief/evidence.ts';
import type { AccessMinutes, Case } from '../belief/evidence.ts';
import { beginEpisode, findIn, isProof, shownBy, workOn } from './episode.ts';
import type { Model } from '../belief/model.ts';
import { makeRandom } from './random.ts';
import { hideVehicle, NoSimulation } from './vehicle.ts';
import type { HiddenVehicle } from './vehicle.ts';
import type { Policy } from './policies.ts';

export type EpisodeCost = {
  readonly minutes: number;
  readonly checks: number;
  readonly repairs: number;
};

export type Simulated = {
  readonly policy: string;
  readonly mean: number;
  /** Standard error of the mean. */
  readonly error: number;
  /** Mean of this policy's minutes less those of the first one, vehicle by vehicle. */
  readonly more: number;
  readonly moreError: number;
};

export type Simulation = {
  readonly model: Model;
  readonly accesses: Readonly<Record<string, AccessMinutes>>;
  readonly count: number;
  readonly seed: number;
  /** The first is what the others are held against. */
  readonly policies: Readonly<Record<string, Policy>>;
};

/** Steps after which a policy is taken to be going round in circles. */
const mostSteps = 500;

/** Walks one vehicle to a proven repair; `given` is the case without findings. */
export function runEpisode(given: Case, vehicle: HiddenVehicle, policy: Policy): EpisodeCost {
  const { model } = given;
  let episode = beginEpisode(given);
  const mended: number[] = [];
  for (let step = 0; step < mostSteps; step += 1) {
    const move = policy(model, episode.state);
    if (move.do === 'repair') mended.push(move.index);
    const check = shownBy(model, move);
    const result = vehicle.show(check, mended);
    episode = findIn(workOn(episode, move, given), check, result, model);
    if (isProof(model, check, result))
      return { minutes: episode.minutes, checks: step + 1 - mended.length, repairs: mended.length };
  }
  throw new NoSimulation(`a policy took ${mostSteps} steps without a proven repair`);
}

function spread(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((all, value) => all + value, 0) / values.length;
  const squares = values.reduce((all, value) => all + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / Math.max(1, values.length - 1) / values.length) };
}

/** Sends every policy to the same hidden vehicles and compares their minutes in pairs. */
export function simulate(simulation: Simulation): readonly Simulated[] {
  const { model, accesses, count, seed, policies } = simulation;
  const given = freshCase(model, accesses);
  const random = makeRandom(seed);
  const vehicles = Array.from({ length: count }, () => hideVehicle(model, random));
  const minutes = Object.entries(policies).map(([name, policy]) => ({
    name,
    costs: vehicles.map((vehicle) => runEpisode(given, vehicle, policy).minutes),
  }));
  const first = minutes[0]?.costs ?? [];
  return minutes.map(({ name, costs }) => {
    const { mean, error } = spread(costs);
    const more = spread(costs.map((one, index) => one - (first[index] ?? 0)));
    return { policy: name, mean, error, more: more.mean, moreError: more.error };
  });
}
