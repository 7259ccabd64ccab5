import { at } from '../../at.ts';
import { sum } from '../../sum.ts';

/** A branch as the search for the best halves weighs it. */
export type Leaf = {
  readonly id: string;
  /** How often it is this one, on any scale. */
  readonly weight: number;
  /** Minutes to part it. */
  readonly minutes: number;
};

/** Which branches to part together, and where to go on when the fault is among them or elsewhere. */
export type Halves =
  | { readonly kind: 'one'; readonly leaf: string }
  | {
      readonly kind: 'probe';
      /** Every branch that is still open here; the last may be "none of them". */
      readonly among: readonly string[];
      /** Those that are parted. */
      readonly parted: readonly string[];
      readonly here: Halves;
      readonly elsewhere: Halves;
    };

/**
 * The cheapest way to find one of some neighbors in a row: at each step a run of them from one end
 * is parted. With equal weights and minutes it halves them, so that it takes about the logarithm of
 * their number. By the recurrence of optimal alphabetic trees (Gilbert and Moore, from memory); a
 * dozen branches need no quicker one.
 * @param leaves in the order in which they lie beside one another
 * @param each minutes of any probe, whatever it parts
 * @param never one that cannot be parted: "none of them"
 */
export function halve(leaves: readonly Leaf[], each: number, never?: string): Halves {
  const best = new Map<string, { readonly cost: number; readonly halves: Halves }>();
  const solve = (from: number, to: number): { readonly cost: number; readonly halves: Halves } => {
    const key = `${from} ${to}`;
    const known = best.get(key);
    if (known !== undefined) return known;
    const made =
      to - from === 1
        ? { cost: 0, halves: { kind: 'one', leaf: at(leaves, from).id } as const }
        : cheapest(from, to);
    best.set(key, made);
    return made;
  };
  const cheapest = (from: number, to: number) => {
    const among = leaves.slice(from, to);
    const weight = sum(among.map((leaf) => leaf.weight));
    const ways = among.slice(1).flatMap((_, index) => {
      const cut = from + 1 + index;
      const sides = [
        [from, cut, cut, to],
        [cut, to, from, cut],
      ] as const;
      return sides.flatMap(([first, last, otherFirst, otherLast]) => {
        const parted = leaves.slice(first, last);
        if (parted.some(({ id }) => id === never)) return [];
        const [here, elsewhere] = [solve(first, last), solve(otherFirst, otherLast)];
        const probe = each + sum(parted.map(({ minutes }) => minutes));
        const halves: Halves = {
          kind: 'probe',
          among: among.map(({ id }) => id),
          parted: parted.map(({ id }) => id),
          here: here.halves,
          elsewhere: elsewhere.halves,
        };
        return [{ cost: weight * probe + here.cost + elsewhere.cost, halves }];
      });
    });
    return ways.reduce((one, other) => (other.cost < one.cost - 1e-9 ? other : one));
  };
  return solve(0, leaves.length).halves;
}
