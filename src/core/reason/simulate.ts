import type { AccessMinutes, CaseState } from './case.ts';
import { caseOf } from './case.ts';
import { Costs } from './costs.ts';
import { changed, parked } from './minutes.ts';
import type { Move } from './minutes.ts';
import type { Model } from './model.ts';
import { makeRandom } from './random.ts';
import { hideVehicle } from './vehicle.ts';
import type { HiddenVehicle } from './vehicle.ts';
import type { Walker } from './walkers.ts';

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

class Job {
  readonly #model: Model;
  readonly #costs: Costs;
  readonly #vehicle: HiddenVehicle;
  readonly #mended: number[] = [];
  #opened = 0;
  #standing: number;
  #state: CaseState;
  minutes = 0;
  checks = 0;
  proved = false;

  constructor(
    model: Model,
    accesses: Simulation['accesses'],
    costs: Costs,
    vehicle: HiddenVehicle,
  ) {
    this.#model = model;
    this.#costs = costs;
    this.#vehicle = vehicle;
    this.#standing = costs.standing;
    this.#state = { findings: [], repairs: [], openAccess: [], standing: parked, accesses };
  }

  get state(): CaseState {
    return this.#state;
  }

  get repairs(): number {
    return this.#mended.length;
  }

  step(move: Move): void {
    const { causes, checks, complaint } = this.#model;
    const cause = move.do === 'repair' ? causes[move.index] : undefined;
    const index = cause === undefined ? move.index : this.#costs.repair(move.index);
    this.minutes += this.#costs.minutes(index, this.#opened, this.#standing);
    this.#opened |= this.#costs.masks[index] ?? 0;
    this.#standing = this.#costs.standingAfter(index, this.#standing);
    if (cause === undefined) this.checks += 1;
    else {
      this.#state = {
        ...this.#state,
        repairs: [...this.#state.repairs, { cause: cause.id, at: this.repairs }],
      };
      this.#mended.push(move.index);
      this.#goThrough(cause);
    }
    const shown = checks[cause === undefined ? move.index : complaint];
    if (shown !== undefined) this.#find(cause === undefined ? move.index : complaint);
  }

  #find(check: number): void {
    const tested = this.#model.checks[check];
    if (tested === undefined) return;
    this.#goThrough(tested);
    const result = this.#vehicle.show(check, this.#mended);
    const finding = { check: tested.id, lo: result, hi: result, at: this.repairs };
    this.#state = { ...this.#state, findings: [...this.#state.findings, finding] };
    this.proved = check === this.#model.complaint && result === 0;
  }

  #goThrough(work: {
    readonly access: readonly string[];
    readonly standing: CaseState['standing'];
  }): void {
    const open = new Set([...(this.#state.openAccess ?? []), ...work.access]);
    const standing = changed(changed(parked, this.#state.standing ?? {}), work.standing ?? {});
    this.#state = { ...this.#state, openAccess: [...open], standing };
  }
}

/** Walks one vehicle to a proven repair. */
export function walk(
  simulation: Simulation,
  costs: Costs,
  vehicle: HiddenVehicle,
  walker: Walker,
): Walk {
  const job = new Job(simulation.model, simulation.accesses, costs, vehicle);
  for (let step = 0; step < mostSteps && !job.proved; step += 1)
    job.step(walker(simulation.model, job.state));
  if (!job.proved) throw new RangeError(`a walker took ${mostSteps} steps without a proven repair`);
  return { minutes: job.minutes, checks: job.checks, repairs: job.repairs };
}

function spread(values: readonly number[]): { mean: number; error: number } {
  const mean = values.reduce((all, value) => all + value, 0) / values.length;
  const squares = values.reduce((all, value) => all + (value - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / Math.max(1, values.length - 1) / values.length) };
}

/** Sends every walker to the same hidden vehicles and compares their minutes in pairs. */
export function simulate(simulation: Simulation): readonly Simulated[] {
  const { model, accesses, count, seed, walkers } = simulation;
  const given = caseOf(model, { findings: [], repairs: [], accesses });
  if (given.kind === 'bad') throw new RangeError('a model without findings is always a case');
  const costs = new Costs(given.value);
  const random = makeRandom(seed);
  const vehicles = Array.from({ length: count }, () => hideVehicle(model, random));
  const minutes = Object.entries(walkers).map(([name, walker]) => ({
    name,
    walks: vehicles.map((vehicle) => walk(simulation, costs, vehicle, walker).minutes),
  }));
  const first = minutes[0]?.walks ?? [];
  return minutes.map(({ name, walks }) => {
    const { mean, error } = spread(walks);
    const more = spread(walks.map((one, index) => one - (first[index] ?? 0)));
    return { walker: name, mean, error, more: more.mean, moreError: more.error };
  });
}
