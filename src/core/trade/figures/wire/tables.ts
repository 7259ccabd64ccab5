import type { Table } from '../../table.ts';

/**
 * Largest resistance of metric copper conductors at 20 C, ohm per km by nominal mm2: IEC 60228,
 * flexible (class 5). Read in secondary copies to 50 mm2; 70 mm2 and up from memory.
 */
export const iecFlexible: Table = [
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
  [25, 0.78],
  [35, 0.554],
  [50, 0.386],
  [70, 0.272],
  [95, 0.206],
  [120, 0.161],
];

/** As iecFlexible for stranded conductors (class 2). 0.5 to 1 and 35 mm2 and up from memory. */
export const iecStranded: Table = [
  [0.5, 36],
  [0.75, 24.5],
  [1, 18.1],
  [1.5, 12.1],
  [2.5, 7.41],
  [4, 4.61],
  [6, 3.08],
  [10, 1.83],
  [16, 1.15],
  [25, 0.727],
  [35, 0.524],
  [50, 0.387],
  [70, 0.268],
  [95, 0.193],
  [120, 0.153],
];

/**
 * Largest resistance of tin-plated stranded aircraft wire at 20 C, ohm per 1000 ft by size
 * (0 to -3 for 0 to 0000): FAA AC 43.13-1B Change 1, table 11-9, read in a copy.
 */
export const tinned: Table = [
  [-3, 0.06],
  [-2, 0.07],
  [-1, 0.09],
  [0, 0.12],
  [1, 0.15],
  [2, 0.18],
  [4, 0.28],
  [6, 0.44],
  [8, 0.7],
  [10, 1.26],
  [12, 2.02],
  [14, 3.06],
  [16, 4.81],
  [18, 6.23],
  [20, 9.88],
  [22, 16.2],
  [24, 28.4],
];

/** Insulation ratings in C, the columns of allowableAmps. */
export const insulations = [60, 75, 80, 90, 105, 125, 200] as const;

/** What is left of the allowable current in an engine space: note 1 of the table, by insulation. */
export const engineSpace: Table = [
  [60, 0.58],
  [75, 0.75],
  [80, 0.78],
  [90, 0.82],
  [105, 0.85],
  [125, 0.89],
  [200, 1],
];

/**
 * Continuous amperes under 50 V by AWG (0 to -3 for 0 to 0000) and insulation: 33 CFR 183.425,
 * table 5, read in a copy; the engine-space factors but that of 105 C are from memory.
 */
export const allowableAmps: readonly (readonly [gauge: number, amps: readonly number[]])[] = [
  [-3, [300, 360, 385, 385, 445, 475, 510]],
  [-2, [260, 310, 330, 330, 385, 410, 430]],
  [-1, [225, 265, 285, 285, 330, 355, 370]],
  [0, [195, 230, 245, 245, 285, 305, 325]],
  [1, [165, 195, 210, 210, 245, 265, 280]],
  [2, [140, 170, 175, 180, 210, 225, 240]],
  [3, [120, 145, 150, 155, 180, 195, 210]],
  [4, [105, 125, 130, 135, 160, 170, 180]],
  [6, [80, 95, 100, 100, 120, 125, 135]],
  [8, [55, 65, 70, 70, 80, 90, 100]],
  [10, [40, 40, 50, 55, 60, 70, 70]],
  [12, [25, 25, 35, 40, 45, 50, 55]],
  [14, [20, 20, 25, 30, 35, 40, 45]],
  [16, [15, 15, 20, 25, 25, 30, 35]],
  [18, [10, 10, 15, 20, 20, 25, 25]],
];
