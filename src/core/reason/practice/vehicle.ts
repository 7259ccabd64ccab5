import { seedIn, type Secret } from '../../session/practice/secret.ts';
import type { Tree } from '../../tree/model.ts';
import type { Model } from '../belief/model.ts';
import { provableBy } from '../plan/provable.ts';
import { makeRandom } from '../plan/random.ts';
import { drawVehicle, type HiddenVehicle } from '../plan/vehicle.ts';

/** Draws before it is said that no vehicle with these causes shows the complaint. */
const mostDraws = 2000;

/**
 * The hidden vehicle of a secret: every cause shows the complaint by itself, so that the proof asks for
 * all of them to be mended, and with all of them mended it can be proven. Undefined where none does.
 */
export function vehicleOf(
  tree: Tree,
  model: Model,
  { causes, salt }: Secret,
): HiddenVehicle | undefined {
  const hidden = causes.map((id) => model.causes.findIndex((cause) => cause.id === id));
  if (hidden.includes(-1)) return undefined;
  const random = makeRandom(seedIn(salt, 1));
  const isProvable = provableBy(tree, model);
  const shows = ({ show }: HiddenVehicle, cause: number): boolean =>
    show(
      model.complaint,
      hidden.filter((other) => other !== cause),
    ) > 0;
  for (let draw = 0; draw < mostDraws; draw += 1) {
    const vehicle = drawVehicle(model, hidden, random);
    if (hidden.every((cause) => shows(vehicle, cause)) && isProvable(vehicle)) return vehicle;
  }
  return undefined;
}
