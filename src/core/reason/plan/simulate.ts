import { freshCase } from '../belief/evidence.ts';
import type { AccessMinutes, Case } from '../belief/evidence.ts';
import { beginJob, findIn, isProof, shownBy, workOn } from './episode.ts';
import type { Model } from '../belief/model.ts';
import { makeRandom } from './random.ts';
import { hideVehicle } from './vehicle.ts';
import type { HiddenVehicle } from './vehicle.ts';
import type { Walker } from './policies.ts';

export type Walk = { readonly minutes: number; readonly checks: number; readonly repairs: number };

export type Simulated = {
  readonly walker: string;
  readonly mean: number;
  /** Standard error of the mean. */
  readonly error: number;
  /** Mean of this walker's minutes less those of the first one, vehicle by vehicle. */
  readonly more: number;
  readonly moreError: number;
};

export type Simulation = {
  readonly model: Model;
  readonly accesses: Readonly<Record<string, AccessMinutes>>;
  readonly count: number;
  readonly seed: number;
  /** The first is what the others are held against. */
  readonly walkers: Readonly<Record<string, Walker>>;
};

/** Steps after which a walker is taken to be going round in circles. */
const mostSteps = 500;

/** Walks one vehicle to a proven repair; `given` is the case without findings. */
export function walk(given: Case, vehicle: HiddenVehicle, walker: Walker): Walk {
  const { model } = given;
  let job = beginJob(given);
  const mended: number[] = [];
  for (let step = 0; step < mostSteps; step += 1) {
    const move = walker(model, job.state);
    if (move.do === 'repair') mended.push(move.index);
    const check = shownBy(model, move);
    const result = vehicle.show(check, mended);
    job = findIn(workOn(job, move, given), check, result, model);
    if (isProof(model, check, result))
      return { minutes: job.minutes, checks: step + 1 - mended.length, repairs: mended.length };
  }
  throw new RangeError(`a walker took ${mostSteps} steps without a proven repair`);
}

function spread(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((all, value) => all + value, 0) / values.length;
  const squares = values.reduce((all, value) => all + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / Math.max(1, values.length - 1) / values.length) };
}

/** Sends every walker to the same hidden vehicles and compares their minutes in pairs. */
export function simulate(simulation: Simulation): readonly Simulated[] {
  const { model, accesses, count, seed, walkers } = simulation;
  const given = freshCase(model, accesses);
  const random = makeRandom(seed);
  const vehicles = Array.from({ length: count }, () => hideVehicle(model, random));
  const minutes = Object.entries(walkers).map(([name, walker]) => ({
    name,
    walks: vehicles.map((vehicle) => walk(given, vehicle, walker).minutes),
  }));
  const first = minutes[0]?.walks ?? [];
  return minutes.map(({ name, walks }) => {
    const { mean, error } = spread(walks);
    const more = spread(walks.map((one, index) => one - (first[index] ?? 0)));
    return { walker: name, mean, error, more: more.mean, moreError: more.error };
  });
}
