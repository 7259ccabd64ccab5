import type { PlacedFactor } from './order.ts';

/** Weights of the states; bit j of the index says that the finding at place j is explained. */
export type States = Float64Array<ArrayBuffer>;

/** Share of a cause that produces `explains` where the finding at `bit` is still open. */
function applyOne(states: States, bit: number, explains: number, nothing: number): void {
  const both = explains + nothing;
  for (let block = 0; block < states.length; block += 2 * bit)
    for (let unset = block; unset < block + bit; unset += 1) {
      const open = states[unset] ?? 0;
      states[unset + bit] = both * (states[unset + bit] ?? 0) + explains * open;
      states[unset] = nothing * open;
    }
}

/** The transpose of `applyOne`. */
function applyOneBack(states: States, bit: number, explains: number, nothing: number): void {
  const both = explains + nothing;
  for (let block = 0; block < states.length; block += 2 * bit)
    for (let unset = block; unset < block + bit; unset += 1) {
      const set = states[unset + bit] ?? 0;
      states[unset] = nothing * (states[unset] ?? 0) + explains * set;
      states[unset + bit] = both * set;
    }
}

/** Masks of the nested bits: `masks[j]` sets the bits at places j, j+1, ... */
const nestedMasks = (places: readonly number[]): readonly number[] =>
  places.map((_, first) => places.slice(first).reduce((mask, place) => mask | (1 << place), 0));

/** Goes down so that a source, never above its target, is still as it was. */
function applyNested(states: States, factor: PlacedFactor): void {
  const masks = nestedMasks(factor.places);
  for (let target = states.length - 1; target >= 0; target -= 1) {
    let gathered = factor.nothing * (states[target] ?? 0);
    masks.forEach((mask, index) => {
      if ((target & mask) !== mask) return;
      const explains = factor.explains[index] ?? 0;
      for (let part = mask; ; part = (part - 1) & mask) {
        gathered += explains * (states[target ^ part] ?? 0);
        if (part === 0) break;
      }
    });
    states[target] = gathered;
  }
}

function applyNestedBack(states: States, factor: PlacedFactor): void {
  const masks = nestedMasks(factor.places);
  for (let source = 0; source < states.length; source += 1) {
    let gathered = factor.nothing * (states[source] ?? 0);
    masks.forEach((mask, index) => {
      gathered += (factor.explains[index] ?? 0) * (states[source | mask] ?? 0);
    });
    states[source] = gathered;
  }
}

/** What one cause, or the background, produces at one check, in place; every term is positive. */
export function applyFactor(states: States, factor: PlacedFactor): void {
  const [place, ...more] = factor.places;
  if (place === undefined) return;
  if (more.length > 0) applyNested(states, factor);
  else applyOne(states, 1 << place, factor.explains[0] ?? 0, factor.nothing);
}

/** The transpose of `applyFactor`, for the run back. */
export function applyFactorBack(states: States, factor: PlacedFactor): void {
  const [place, ...more] = factor.places;
  if (place === undefined) return;
  if (more.length > 0) applyNestedBack(states, factor);
  else applyOneBack(states, 1 << place, factor.explains[0] ?? 0, factor.nothing);
}

/** A new finding on top: nobody has explained it yet. */
export function openTop(states: States): States {
  const wider = new Float64Array(states.length * 2);
  wider.set(states);
  return wider;
}

/** Keeps the states in which the finding at `place` is explained, and drops the place. */
export function closePlace(states: States, place: number): States {
  const bit = 1 << place;
  const narrower = new Float64Array(states.length / 2);
  for (let index = 0; index < narrower.length; index += 1)
    narrower[index] = states[((index & -bit) << 1) | bit | (index & (bit - 1))] ?? 0;
  return narrower;
}

/** The transpose of `closePlace`. */
export function reopenPlace(states: States, place: number): States {
  const bit = 1 << place;
  const wider = new Float64Array(states.length * 2);
  for (let index = 0; index < states.length; index += 1)
    wider[((index & -bit) << 1) | bit | (index & (bit - 1))] = states[index] ?? 0;
  return wider;
}
