/** One unit: how it is written, what it is worth, and how finely a person reads it. */
export type UnitRow = {
  /** The one way we write it. */
  readonly id: string;
  /** Base units in one of it. */
  readonly factor: number;
  /** Added before the factor is applied: base = (value + offset) x factor. Temperatures only. */
  readonly offset?: number;
  /** The unit counts the other way up (litres per distance against distance per litre). */
  readonly upsideDown?: boolean;
  /** Other ways to type it. */
  readonly aliases: readonly string[];
  /** Decimals worth showing of a reading of ordinary size. */
  readonly decimals: number;
  /** Nobody reads it to a thousandth: three digits behind a mark may be thousands. */
  readonly coarse?: boolean;
};

/** A quantity: what to call it in a sentence, its units, and the sizes met in everyday work. */
export type QuantityRow = {
  readonly name: string;
  readonly units: readonly UnitRow[];
  /**
   * Smallest and largest everyday size in base units. Used for one thing only: to tell
   * whether `1,250` or `5.200` was meant as thousands or as a decimal.
   */
  readonly everyday: readonly [number, number];
};

/** A unit row from its parts; aliases are parted by bars because some hold blanks. */
export function unit(id: string, factor: number, decimals: number, aliases = ''): UnitRow {
  return { id, factor, decimals, aliases: aliases === '' ? [] : aliases.split('|') };
}

/** A unit that is never read to a thousandth. */
export const coarse = (row: UnitRow): UnitRow => ({ ...row, coarse: true });
