import type { Check, Repair, Standing } from '../tree/model.ts';
import type { Payload } from './event.ts';
import type { Shop } from '../tree/shop.ts';
import { currentLeg, type Standpoint } from './story.ts';

/** One thing to be done to the vehicle before a step can be taken. */
export type Preparation =
  | { readonly kind: 'standing'; readonly set: Standing }
  | { readonly kind: 'open' | 'close'; readonly access: string };

type Wants = Pick<Check | Repair, 'standing' | 'access'> & Pick<Check, 'shut'>;

type Now = Pick<Standpoint, 'standing' | 'open'>;

/**
 * What must be done before a step, in the safe order. What is opened asks for its own standing first
 * (the ground lead off before a live stud is bared); the step's own standing comes after it.
 */
export function preparations(
  story: Now & Pick<Standpoint, 'legs'>,
  wants: Wants,
): readonly Preparation[] {
  const { accesses } = currentLeg(story).shop;
  const shut = wants.access.filter((access) => !story.open.includes(access));
  const whileOpening = standingToOpen(accesses, shut);
  if (Object.keys(differing(story.standing, whileOpening)).length === 0)
    return inOrder(story, wants);
  const opening = inOrder(story, { standing: whileOpening, access: shut });
  const standing = opening.reduce<Standing>(
    (at, one) => (one.kind === 'standing' ? { ...at, ...one.set } : at),
    story.standing,
  );
  const open = [...story.open, ...shut];
  return [...opening, ...inOrder({ standing, open }, wants)];
}

/** How the vehicle must stand while these are opened. */
const standingToOpen = (accesses: Shop['accesses'], ids: readonly string[]): Standing =>
  Object.assign({}, ...ids.map((id) => accesses[id]?.standing));

/**
 * A step's own wants in the safe order: engine off and key off come before the battery is parted and
 * before anything is opened; the battery goes back on (ground lead last) before the key, and the
 * engine is started last of all.
 */
function inOrder(story: Now, wants: Wants): readonly Preparation[] {
  const { standing } = story;
  const missing = differing(standing, safely(standing, wants));
  const shut = story.open.filter((access) => wants.shut?.includes(access));
  const opening: Preparation[] = [
    ...shut.map((access) => ({ kind: 'close', access }) as const),
    ...wants.access
      .filter((access) => !story.open.includes(access))
      .map((access) => ({ kind: 'open', access }) as const),
  ];
  const lead = only(missing, 'battery');
  const warm = only(missing, 'heat');
  // A key that is to be on again afterwards is off while the battery is joined.
  const rejoin = missing.battery === 'connected' && standing.key !== 'off';
  const keyOff: Preparation[] =
    missing.key === 'off' || rejoin ? [{ kind: 'standing', set: { key: 'off' } }] : [];
  const keyOn = rejoin ? only(wants.standing, 'key') : only(missing, 'key');
  const engine = only(missing, 'engine');
  const down = [...engine.filter(isOff), ...keyOff];
  const up = [
    ...keyOn.filter((one) => !isOff(one)),
    ...engine.filter((one) => !isOff(one)),
    ...warm,
  ];
  return missing.battery === 'connected'
    ? [...down, ...opening, ...lead, ...up]
    : [...down, ...lead, ...opening, ...up];
}

/** One part of a standing as a thing to be done, if it is named at all. */
function only(standing: Standing, part: keyof Standing): readonly Preparation[] {
  const value = standing[part];
  return value === undefined ? [] : [{ kind: 'standing', set: { [part]: value } }];
}

const isOff = (one: Preparation): boolean =>
  one.kind === 'standing' && (one.set.key === 'off' || one.set.engine === 'off');

/** The battery is parted and joined with key and engine off, whether the step says so or not. */
function safely(now: Standing, { standing }: Wants): Standing {
  const moves = standing.battery !== undefined && standing.battery !== now.battery;
  return moves ? { key: 'off', engine: 'off', ...standing } : standing;
}

/** The parts of a wanted standing that the vehicle does not have yet. */
function differing(now: Standing, wanted: Standing): Standing {
  return Object.fromEntries(
    Object.entries(wanted).filter(([part, value]) => now[part as keyof Standing] !== value),
  );
}

/**
 * The same as events, for a step that was taken without saying so: it cannot have been otherwise. How
 * the vehicle stood while something was opened is not known then.
 */
export function impliedPayloads(story: Now, wants: Wants): readonly Payload[] {
  return inOrder(story, wants).map((one) =>
    one.kind === 'standing'
      ? { kind: 'standing', set: one.set, implied: true }
      : {
          kind: 'access',
          access: one.access,
          now: one.kind === 'open' ? 'open' : 'closed',
          implied: true,
        },
  );
}
