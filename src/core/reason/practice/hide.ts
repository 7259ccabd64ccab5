import { at } from '../../at.ts';
import { bad, good, type Parsed, type Problem } from '../../problem.ts';
import type { Fingerprint } from '../../session/record/chain.ts';
import { seedIn, type Secret } from '../../session/practice/secret.ts';
import { meant } from '../../trade/units/nearest.ts';
import { unlisted, type Tree } from '../../tree/model.ts';
import { makeModel } from '../belief/model.ts';
import { makeRandom, type Random } from '../plan/random.ts';
import { vehicleOf } from './vehicle.ts';

/** What is to be hidden. */
export type Wish = {
  /** 64 digits and letters a to f; nobody may be able to guess them. */
  readonly salt: string;
  /** Two faults. */
  readonly hard: boolean;
  /** These, and none drawn. */
  readonly causes: readonly string[];
};

/** Draws before a tree is given up whose faults never make a vehicle that can be worked on to a proof. */
const mostDraws = 200;

/**
 * Hides one fault, or two: each listed cause by its odds, never the unlisted one, which nobody could
 * mend. The same salt hides the same in the same tree.
 */
export function hideFault(tree: Tree, { salt, hard, causes }: Wish): Parsed<Secret> {
  if (tree.triage !== undefined) return bad(onlySorts(tree.triage));
  const sorted = causes.map((id) => tree.causes[id]?.triage).find((why) => why !== undefined);
  if (sorted !== undefined) return bad(onlySorts(sorted));
  const away = causes.find((id) => tree.causes[id]?.tree !== undefined);
  if (away !== undefined) return bad(goesOn(tree, away));
  const known = mendable(tree).map(([id]) => id);
  const strange = causes.find((id) => !known.includes(id));
  if (strange !== undefined) return bad(unknownCause(strange, known));
  const wanted = hard ? 2 : 1;
  if (causes.length > 0) return provable(tree, { causes: [...new Set(causes)], salt });
  if (known.length < wanted) return bad(tooFew(known.length));
  const random = makeRandom(seedIn(salt, 0));
  for (let draw = 0; draw < mostDraws; draw += 1) {
    const secret = provable(tree, { causes: drawCauses(tree, wanted, random), salt });
    if (secret.kind === 'good') return secret;
  }
  return bad(noVehicle);
}

/** Causes that a job may end with as mended: the others go to inspection, or another tree goes on from them. */
const mendable = ({ causes }: Tree) =>
  Object.entries(causes).filter(
    ([, { triage, tree }]) => triage === undefined && tree === undefined,
  );

/** Different causes, each by its odds among those that are left. */
function drawCauses(tree: Tree, wanted: number, random: Random): readonly string[] {
  let left = mendable(tree)
    .filter(([id]) => id !== unlisted)
    .map(([id, { odds }]) => ({ id, odds }));
  const drawn: string[] = [];
  while (drawn.length < wanted) {
    const total = left.reduce((sum, { odds }) => sum + odds, 0);
    let draw = random() * total;
    const index = left.findIndex(({ odds }) => (draw -= odds) < 0);
    const { id } = at(left, Math.max(0, index));
    drawn.push(id);
    left = left.filter((one) => one.id !== id);
  }
  return drawn;
}

const provable = (tree: Tree, secret: Secret): Parsed<Secret> =>
  vehicleOf(tree, makeModel(tree), secret) === undefined ? bad(noVehicle) : good(secret);

const noVehicle: Problem = {
  code: 'no-vehicle',
  message: 'No vehicle with such a fault shows the complaint and could be proven mended.',
  mend: 'Name another cause, or leave --cause out.',
};

const onlySorts = (why: string): Problem => ({
  code: 'only-sorts',
  message: `What is found is handed to inspection, not mended, so there is nothing to practice. Why: ${why}`,
  mend: 'Choose another cause or another tree.',
});

const goesOn = ({ causes }: Tree, id: string): Problem => ({
  code: 'goes-on',
  message: `From "${id}" the complaint "${causes[id]?.tree}" goes on: it is not mended in this tree.`,
  mend: 'Choose another cause, or practice on that complaint.',
});

const tooFew = (count: number): Problem => ({
  code: 'too-few-causes',
  message: `Two faults are to be hidden, and the tree has ${count} for this vehicle.`,
  mend: 'Leave --hard out, or choose another tree.',
});

const unknownCause = (id: string, known: readonly string[]): Problem => ({
  code: 'unknown-cause',
  value: id,
  message: `The tree has no cause "${id}" for this vehicle.`,
  mend: meant(id, known),
});

/** The salt that a seed gives: the same for everybody who knows the seed, and for nobody else. */
export const saltOf = (seed: string, tree: string, fingerprint: Fingerprint): string =>
  fingerprint(`practice ${tree} ${seed}`);
