import type { Check, Repair, Standing } from '../tree/model.ts';
import type { Payload } from './event.ts';
import type { Standpoint } from './story.ts';

/** One thing to be done to the vehicle before a step can be taken. */
export type Preparation =
  | { readonly kind: 'standing'; readonly set: Standing }
  | { readonly kind: 'open'; readonly access: string };

type Wants = Pick<Check | Repair, 'standing' | 'access'>;

/**
 * What must be done before a step, in the safe order: engine off and key off come before the
 * battery is parted and before anything is opened; the battery goes back on (ground lead last)
 * before the key, and the engine is started last of all.
 */
export function preparations(
  story: Pick<Standpoint, 'standing' | 'open'>,
  wants: Wants,
): readonly Preparation[] {
  const set = (part: Standing): Preparation => ({ kind: 'standing', set: part });
  const { battery, key, engine, heat } = differing(story.standing, wants.standing);
  const down: Preparation[] = [
    ...(engine === 'off' ? [set({ engine })] : []),
    ...(key === 'off' ? [set({ key })] : []),
  ];
  const up: Preparation[] = [
    ...(key !== undefined && key !== 'off' ? [set({ key })] : []),
    ...(engine !== undefined && engine !== 'off' ? [set({ engine })] : []),
  ];
  const warm: Preparation[] = heat === undefined ? [] : [set({ heat })];
  const opening: Preparation[] = wants.access
    .filter((access) => !story.open.includes(access))
    .map((access) => ({ kind: 'open', access }));
  const lead: Preparation[] = battery === undefined ? [] : [set({ battery })];
  return battery === 'connected'
    ? [...down, ...opening, ...lead, ...up, ...warm]
    : [...down, ...lead, ...opening, ...up, ...warm];
}

/** The parts of a wanted standing that the vehicle does not have yet. */
function differing(now: Standing, wanted: Standing): Standing {
  return Object.fromEntries(
    Object.entries(wanted).filter(([part, value]) => now[part as keyof Standing] !== value),
  );
}

/** The same as events, for a step that was taken without saying so: it cannot have been otherwise. */
export function impliedPayloads(
  story: Pick<Standpoint, 'standing' | 'open'>,
  wants: Wants,
): readonly Payload[] {
  return preparations(story, wants).map((one) =>
    one.kind === 'open'
      ? { kind: 'access', access: one.access, now: 'open', implied: true }
      : { kind: 'standing', set: one.set, implied: true },
  );
}
