/** A lamp by its standard designation: volts and amperes, or watts, at design. */
export type LampRow =
  | { readonly volts: number; readonly amps: number }
  | {
      readonly volts: number;
      readonly watts: number;
      /** Largest power in watts at 13.5 V, UN R37. */
      readonly most?: number;
    };

const byAmps = (volts: number, amps: number): LampRow => ({ volts, amps });
const byWatts = (volts: number, watts: number, most?: number): LampRow =>
  most === undefined ? { volts, watts } : { volts, watts, most };

/**
 * Trade numbers of miniature lamps (ANSI), design volts and amperes. From memory. A filament of two
 * is told by -major or -minor.
 */
const miniature: readonly (readonly [string, LampRow])[] = [
  ['37', byAmps(14, 0.09)],
  ['44', byAmps(6.3, 0.25)],
  ['47', byAmps(6.3, 0.15)],
  ['51', byAmps(7.5, 0.22)],
  ['53', byAmps(14.4, 0.12)],
  ['55', byAmps(7, 0.41)],
  ['57', byAmps(14, 0.24)],
  ['63', byAmps(7, 0.63)],
  ['67', byAmps(13.5, 0.59)],
  ['68', byAmps(13.5, 0.59)],
  ['73', byAmps(14, 0.08)],
  ['74', byAmps(14, 0.1)],
  ['81', byAmps(6.5, 1.02)],
  ['82', byAmps(6.5, 1.02)],
  ['87', byAmps(6.8, 1.91)],
  ['89', byAmps(13, 0.58)],
  ['90', byAmps(13, 0.58)],
  ['93', byAmps(12.8, 1.04)],
  ['94', byAmps(12.8, 1.04)],
  ['97', byAmps(13.5, 0.69)],
  ['158', byAmps(14, 0.24)],
  ['161', byAmps(14, 0.19)],
  ['168', byAmps(14, 0.35)],
  ['194', byAmps(14, 0.27)],
  ['631', byAmps(14, 0.63)],
  ['1003', byAmps(12.8, 0.94)],
  ['1004', byAmps(12.8, 0.94)],
  ['1034-major', byAmps(12.8, 1.8)],
  ['1034-minor', byAmps(14, 0.59)],
  ['1073', byAmps(12.8, 1.8)],
  ['1129', byAmps(6.4, 2.63)],
  ['1133', byAmps(6.2, 3.91)],
  ['1141', byAmps(12.8, 1.44)],
  ['1142', byAmps(12.8, 1.44)],
  ['1154-major', byAmps(6.4, 2.63)],
  ['1154-minor', byAmps(7, 0.75)],
  ['1156', byAmps(12.8, 2.1)],
  ['1157-major', byAmps(12.8, 2.1)],
  ['1157-minor', byAmps(14, 0.59)],
  ['1176-major', byAmps(12.8, 1.34)],
  ['1176-minor', byAmps(14, 0.59)],
  ['1445', byAmps(14.4, 0.135)],
  ['1816', byAmps(13, 0.33)],
  ['1891', byAmps(14, 0.24)],
  ['1893', byAmps(14, 0.33)],
  ['1895', byAmps(14, 0.27)],
];

/** Sealed beams by trade number, design volts and watts: SAE, from memory. */
const sealed: readonly (readonly [string, LampRow])[] = [
  ['4001', byWatts(12.8, 37.5)],
  ['4002-high', byWatts(12.8, 37.5)],
  ['4002-low', byWatts(12.8, 55)],
  ['4411', byWatts(12.8, 35)],
  ['5001', byWatts(12.8, 50)],
  ['6006-high', byWatts(6.2, 50)],
  ['6006-low', byWatts(6.2, 40)],
  ['6012-high', byWatts(12.8, 50)],
  ['6012-low', byWatts(12.8, 40)],
  ['6014-high', byWatts(12.8, 60)],
  ['6014-low', byWatts(12.8, 50)],
];

/** Lamps of UN R37, rated watts at 12 V; H1, H3 and P21W read, the others from memory. */
const european: readonly (readonly [string, LampRow])[] = [
  ['P21W', byWatts(12, 21, 26.5)],
  ['PY21W', byWatts(12, 21, 26.5)],
  ['P21/5W-stop', byWatts(12, 21, 26.5)],
  ['P21/5W-tail', byWatts(12, 5, 6.6)],
  ['R5W', byWatts(12, 5, 5.5)],
  ['R10W', byWatts(12, 10, 11)],
  ['T4W', byWatts(12, 4, 4.4)],
  ['W3W', byWatts(12, 3, 3.45)],
  ['W5W', byWatts(12, 5, 5.5)],
  ['C5W', byWatts(12, 5, 5.5)],
  ['H1', byWatts(12, 55)],
  ['H3', byWatts(12, 55)],
  ['H4-high', byWatts(12, 60)],
  ['H4-low', byWatts(12, 55)],
  ['R2-high', byWatts(12, 45)],
  ['R2-low', byWatts(12, 40)],
];

/** Every lamp of the three lists by its designation. */
export const lamps: ReadonlyMap<string, LampRow> = new Map([...miniature, ...sealed, ...european]);
