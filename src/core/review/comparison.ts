import { at } from '../at.ts';
import { environmentOf, type Environment } from '../reason/plan/episode.ts';
import { advisedPolicy, ownWay, type Policy } from '../reason/plan/policies.ts';
import { makeRandom, type Random } from '../reason/plan/random.ts';
import { runEpisode } from '../reason/plan/simulate.ts';
import { drawVehicle, NoSimulation } from '../reason/plan/vehicle.ts';
import { complaintsOf, isProvenGone } from '../session/complaints.ts';
import { failedRepairs } from '../account/blocks/ledger.ts';
import { firstLeg, type Story } from '../session/story.ts';
import { isOwn } from '../tree/own/bare.ts';

/** Minutes to a proven repair on vehicles with the same fault: most of them lie between `from` and `to`. */
export type Spread = { readonly middle: number; readonly from: number; readonly to: number };

/** What this very fault takes, the advised way and the tree's own. */
export type Comparison = {
  readonly causes: readonly string[];
  readonly advised: Spread;
  readonly own: Spread;
};

const seed = 20_260_411;

/**
 * Only for a job of one complaint and one tree that was proven: its cause is known. Vehicles with that
 * cause are made up, each with its own luck, and mended both ways.
 */
export function comparisonOf(story: Story, vehicles: number): Comparison | undefined {
  const { tree, shop } = firstLeg(story);
  const [complaint, ...others] = complaintsOf(story);
  if (isOwn(tree) || story.legs.length > 1 || others.length > 0 || complaint === undefined)
    return undefined;
  const causes = provenCauses(story);
  if (!isProvenGone(story, complaint) || causes.length === 0) return undefined;
  const environment = environmentOf(tree, shop.accesses);
  const faults = causes.map((id) =>
    environment.input.model.causes.findIndex((one) => one.id === id),
  );
  if (faults.includes(-1) || vehicles === 0) return undefined;
  try {
    const minutes = (policy: Policy) => minutesOf(environment, faults, { policy, vehicles });
    return {
      causes,
      advised: spreadOf(minutes(advisedPolicy())),
      own: spreadOf(minutes(ownWay(tree))),
    };
  } catch (error) {
    if (error instanceof NoSimulation) return undefined;
    throw error;
  }
}

/** What was mended and not found sound after all. */
function provenCauses(story: Story): readonly string[] {
  const failed = new Set(failedRepairs(story).map(({ n }) => n));
  return [...new Set(story.repairs.flatMap(({ n, cause }) => (failed.has(n) ? [] : [cause])))];
}

function minutesOf(
  environment: Environment,
  faults: readonly number[],
  { policy, vehicles }: { readonly policy: Policy; readonly vehicles: number },
): readonly number[] {
  const random = makeRandom(seed);
  return Array.from(
    { length: vehicles },
    () => runEpisode(environment, vehicleWith(environment, faults, random), policy).minutes,
  );
}

/** Draws before a fault is given up that hardly ever shows the complaint. */
const mostDraws = 1000;

function vehicleWith({ input: { model } }: Environment, faults: readonly number[], random: Random) {
  for (let draw = 0; draw < mostDraws; draw += 1) {
    const vehicle = drawVehicle(model, faults, random);
    if (vehicle.show(model.complaint, []) > 0) return vehicle;
  }
  throw new NoSimulation(`no vehicle in ${mostDraws} shows the complaint by these causes`);
}

/** The middle, and where four in five of them lie. */
function spreadOf(values: readonly number[]): Spread {
  const sorted = values.toSorted((one, other) => one - other);
  const place = (share: number): number => at(sorted, Math.round(share * (sorted.length - 1)));
  return { middle: place(0.5), from: place(0.1), to: place(0.9) };
}
