import { at } from '../../at.ts';
import { askedNow, type AskedCheck } from '../../session/answered.ts';
import type { Answer } from '../../session/answer.ts';
import { seedIn, type Secret } from '../../session/practice/secret.ts';
import { currentLeg, type Story } from '../../session/story.ts';
import type { Tree } from '../../tree/model.ts';
import { makeModel, type Model } from '../belief/model.ts';
import { makeRandom } from '../plan/random.ts';
import type { HiddenVehicle } from '../plan/vehicle.ts';
import { isOnPath, meterReading, numberOf } from './by-circuit.ts';
import { readingIn, standsIn } from './reading.ts';
import { vehicleOf } from './vehicle.ts';

type Hidden = { readonly model: Model; readonly vehicle: HiddenVehicle };

/** Hidden vehicles by their tree and salt: drawing one takes longer than asking it. */
const drawn = new WeakMap<Tree, Map<string, Hidden | undefined>>();

function hiddenIn(tree: Tree, secret: Secret): Hidden | undefined {
  const known = drawn.get(tree) ?? new Map<string, Hidden | undefined>();
  drawn.set(tree, known);
  const key = [...secret.causes, secret.salt].join(' ');
  if (!known.has(key)) {
    const model = makeModel(tree);
    const vehicle = vehicleOf(tree, model, secret);
    known.set(key, vehicle && { model, vehicle });
  }
  return known.get(key);
}

/**
 * What the hidden vehicle shows on a check as the story stands: the same again until something is
 * mended. Rows of the tree are drawn once for the whole vehicle; volts of the feed path come from the
 * circuit with all faults in it and the meter's error. Undefined for a check that the tree has not.
 */
export function vehicleAnswer(story: Story, secret: Secret, id: string): Answer | undefined {
  const { tree } = currentLeg(story);
  const check = Object.hasOwn(tree.checks, id) ? tree.checks[id] : undefined;
  const hidden = hiddenIn(tree, secret);
  if (check === undefined || hidden === undefined) return undefined;
  const mended = story.repairs.map(({ cause }) => cause);
  const left = secret.causes.filter((cause) => !mended.includes(cause));
  return answerOf(tree, hidden, { asked: askedNow(story, id, check), left, secret });
}

type Asked = {
  readonly asked: AskedCheck;
  /** Hidden causes that are not mended. */
  readonly left: readonly string[];
  readonly secret: Secret;
};

function answerOf(tree: Tree, hidden: Hidden, { asked, left, secret }: Asked): Answer {
  const { id, check } = asked;
  const random = makeRandom((seedIn(secret.salt, 3) ^ numberOf(id)) >>> 0);
  const metered = meterReading(tree, check, { ...secret, causes: left }, random);
  const measured = metered === undefined ? undefined : standsIn(asked, metered);
  // The circuit says what its own faults and a sound path show; a fault beside the path has its row.
  const beside = measured === undefined ? left : left.filter((cause) => !isOnPath(tree, cause));
  const byRow =
    measured === undefined || beside.length > 0 ? shownByRows(hidden, id, beside) : measured;
  if (metered !== undefined && measured !== undefined && byRow <= measured)
    return { reading: metered };
  const reading = readingIn(asked, byRow, random);
  return reading === undefined ? { result: at(check.results, byRow).id } : { reading };
}

/** The result that the drawn rows show with these of the hidden causes there. */
function shownByRows(
  { model, vehicle: { causes, show } }: Hidden,
  check: string,
  left: readonly string[],
): number {
  const mended = causes.filter((cause) => !left.includes(at(model.causes, cause).id));
  return show(
    model.checks.findIndex(({ id }) => id === check),
    mended,
  );
}
