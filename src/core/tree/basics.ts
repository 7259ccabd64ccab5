import * as z from 'zod';

/** The name by which one thing in a tree points at another. */
export const Id = z.string().regex(
  // The two would reach an object's own workings instead of its entries.
  /^(?!(?:constructor|prototype)$)[a-z0-9][a-z0-9-]{0,63}$/,
  'use lower-case letters, digits and hyphens, 64 at most; "constructor" and "prototype" are reserved',
);

export const Text = z.string().min(1).max(4000);
export const Minutes = z.number().min(0).max(10_000);
export const Chance = z.number().min(0).max(1);

/** Only vehicles with these facts (one value or several) have the thing that carries this. */
export const When = z.record(Id, z.union([Id, z.array(Id).min(1)]));
export type When = z.output<typeof When>;
