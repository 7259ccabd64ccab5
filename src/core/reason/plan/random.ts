/** Draws a number from 0 up to, not including, 1. */
export type Random = () => number;

/**
 * A seeded generator of our own, so that a run can be had again from its seed: a 32-bit counter
 * with odd step, mixed by two multiply-and-fold rounds (after the splitmix family; constants
 * from memory). Good for simulation, not for secrets.
 */
export function makeRandom(seed: number): Random {
  let counter = seed >>> 0;
  return () => {
    counter = (counter + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(counter ^ (counter >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}
