import { at } from '../../at.ts';
import type { Model } from '../belief/model.ts';
import type { Random } from './random.ts';

/** A vehicle with its faults hidden: what each check would show, whatever is mended first. */
export type HiddenVehicle = {
  /** Causes that are there, by index. */
  readonly causes: readonly number[];
  /** Shown result of a check once these causes are mended. */
  readonly show: (check: number, mended: readonly number[]) => number;
};

type Drawn = {
  readonly background: readonly number[];
  readonly own: ReadonlyMap<number, readonly number[]>;
};

/** First result whose running total exceeds the draw. */
const resultAt = (totals: readonly number[], draw: number): number =>
  totals.findIndex((total) => draw < total);

/** Every producer's result for every check; checks that show one thing share their draws. */
function drawResults(model: Model, causes: readonly number[], random: Random): Drawn {
  const luck = (): readonly number[] => {
    const draws = model.checks.map(() => random());
    return model.checks.map(({ group }) => at(draws, group));
  };
  const shared = luck();
  const background = model.checks.map((check, index) =>
    resultAt(check.background, at(shared, index)),
  );
  const own = new Map(
    causes.map((cause) => {
      const draws = luck();
      const results = model.checks.map((check, index) => {
        const totals = check.links[cause];
        return totals === undefined ? 0 : resultAt(totals, at(draws, index));
      });
      return [cause, results] as const;
    }),
  );
  return { background, own };
}

function ownResult({ own }: Drawn, cause: number, check: number): number {
  const results = own.get(cause);
  if (results === undefined) throw new RangeError(`cause ${cause} was not drawn`);
  return at(results, check);
}

/** Tries before a model is given up whose causes hardly ever show the complaint. */
const mostTries = 100_000;

/** A tree of which no figure can be had by simulation; the message says why. */
export class NoSimulation extends RangeError {}

/** A vehicle with these causes: what each check would show is drawn, the complaint's own test as well. */
export function drawVehicle(
  model: Model,
  causes: readonly number[],
  random: Random,
): HiddenVehicle {
  const drawn = drawResults(model, causes, random);
  const show = (check: number, mended: readonly number[]): number =>
    causes
      .filter((cause) => !mended.includes(cause))
      .reduce(
        (most, cause) => Math.max(most, ownResult(drawn, cause, check)),
        at(drawn.background, check),
      );
  return { causes, show };
}

/** Draws vehicles until one shows the complaint, and hides what was drawn. */
export function hideVehicle(model: Model, random: Random): HiddenVehicle {
  for (let attempt = 0; attempt < mostTries; attempt += 1) {
    const causes = model.causes.flatMap(({ prior }, index) => (random() < prior ? [index] : []));
    const vehicle = drawVehicle(model, causes, random);
    if (vehicle.show(model.complaint, []) > 0) return vehicle;
  }
  throw new NoSimulation(
    `no vehicle in ${mostTries} shows the complaint; its causes never show it`,
  );
}
