/** Annealed copper at 20 °C, ohm metre (IACS: 0.017241 ohm mm²/m). */
const copper = 1.7241e-8;
const metresPerInch = 0.0254;

/**
 * Ohms of a copper wire at 20 °C. American wire gauge n (0, -1, -2, -3 for 1/0 to 4/0) has the
 * diameter 0.005 · 92^((36 - n) / 39) inch. Gauges -3 to 40, length from 0 m.
 * Source: gauge formula after ASTM B258, from memory; copper after the IACS value.
 * Worked example: 1 m of 12 AWG is 5.21 mΩ.
 */
export function wireOhms(gauge: number, metres: number): number {
  if (!Number.isInteger(gauge) || gauge < -3 || gauge > 40)
    throw new RangeError(`gauge ${gauge} is outside -3 to 40 (whole numbers)`);
  if (!(metres >= 0 && metres < Infinity))
    throw new RangeError(`length ${metres} m is outside 0 m and up`);
  const diameter = 0.005 * 92 ** ((36 - gauge) / 39) * metresPerInch;
  return (copper * metres) / ((Math.PI / 4) * diameter ** 2);
}
