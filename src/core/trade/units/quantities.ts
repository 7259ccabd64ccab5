import { electrical } from './electrical.ts';
import { fluid } from './fluid.ts';
import { motion } from './motion.ts';
import type { QuantityRow } from './row.ts';

/** Every kind of quantity that a reading or a figure can have. */
export type Quantity = keyof typeof electrical | keyof typeof fluid | keyof typeof motion;

/**
 * The units of each quantity with their factors to the quantity's base unit. Factors: NIST SP 811,
 * appendix B, or exact by definition; the inch of mercury is the conventional one (3386.389 Pa).
 */
export const quantities: Readonly<Record<Quantity, QuantityRow>> = {
  // Temperatures first: F and C are degrees before they are farads and coulombs.
  ...fluid,
  ...motion,
  ...electrical,
};

const known = new Set<string>(Object.keys(quantities));

/** True for a word that names a quantity of the table. */
export function isQuantity(word: string): word is Quantity {
  return known.has(word);
}

/** The names of all quantities, in the order in which units are looked up. */
export const quantityNames: readonly Quantity[] = Object.keys(quantities).filter(isQuantity);
