import { airPressure, altitudes, vacuumAtSeaLevel } from './figures/air.ts';
import { loadTestFloor } from './figures/battery/load.ts';
import { hydrometerCorrection } from './figures/battery/electrolyte.ts';
import type { ReadingValue } from './units/reading.ts';
import { convert } from './units/units.ts';

/** Today's conditions as far as they are known. */
export type Conditions = {
  /** Metres above sea level. */
  readonly altitude?: number;
  /** C, of the air; a vehicle that stood overnight has it too. */
  readonly temperature?: number;
  /** Of the system: 12 or 6. */
  readonly volts?: number;
};

export type StandardReading =
  | { readonly kind: 'as-is' }
  | { readonly kind: 'needs'; readonly condition: keyof Conditions }
  | {
      readonly kind: 'standard';
      readonly value: number;
      readonly unit: string;
      readonly under: string;
    };

type Standard = {
  readonly needs: readonly (keyof Conditions)[];
  readonly unit: string;
  readonly under: string;
  readonly turn: (value: number, under: Required<Conditions>) => number;
};

const standards: ReadonlyMap<string, Standard> = new Map([
  [
    'vacuum-at-altitude',
    {
      needs: ['altitude'],
      unit: 'inHg',
      under: 'at sea level',
      turn: (value, { altitude }) => vacuumAtSeaLevel(feet(altitude), value),
    },
  ],
  [
    // A gauge reading is air pressure x (ratio^n - 1): it goes with the pressure of the air.
    'cranking-compression',
    {
      needs: ['altitude'],
      unit: 'psi',
      under: 'at sea level',
      turn: (value, { altitude }) => (value * airPressure(0)) / airPressure(feet(altitude)),
    },
  ],
  [
    'load-test',
    {
      needs: ['temperature', 'volts'],
      unit: 'V',
      under: 'at 70 F, told as a 12 V battery',
      turn: (value, { temperature, volts }) =>
        asTwelve(value, volts) +
        loadTestFloor(70, '12') -
        loadTestFloor(clipped(temperature), '12'),
    },
  ],
  [
    'electrolyte',
    {
      needs: ['temperature'],
      unit: '1',
      under: 'at 80 F',
      turn: (value, { temperature }) => value + hydrometerCorrection(acidHeat(temperature)),
    },
  ],
  [
    'battery-charge',
    {
      needs: ['volts'],
      unit: 'V',
      under: 'told as a 12 V battery',
      turn: (value, { volts }) => asTwelve(value, volts),
    },
  ],
] satisfies readonly (readonly [string, Standard])[]);

/** The figures that bring a reading to reference conditions, for trees to name. @tested */
export const standardFigures: readonly string[] = [...standards.keys()];

/**
 * A reading brought to the conditions for which a tree's bands are written, in the reading's own
 * unit. `needs` when a condition is not known; `as-is` when the figure changes nothing here.
 * Conditions beyond a figure's range count as its end. Worked example: 13 inHg of vacuum at
 * 1524 m is 18.03 inHg at sea level.
 */
export function standardReading(
  figure: string,
  reading: ReadingValue,
  conditions: Conditions,
): StandardReading {
  const standard = standards.get(figure);
  if (standard === undefined) return { kind: 'as-is' };
  const missing = standard.needs.find((each) => !Number.isFinite(conditions[each]));
  if (missing !== undefined) return { kind: 'needs', condition: missing };
  const { altitude = 0, temperature = 21, volts = 12 } = conditions;
  const before = convert(reading.value, reading.unit, standard.unit);
  const after = standard.turn(before, { altitude, temperature, volts });
  if (after === before) return { kind: 'as-is' };
  const value = convert(after, standard.unit, reading.unit);
  return { kind: 'standard', value, unit: reading.unit, under: standard.under };
}

function feet(metres: number): number {
  return between(convert(metres, 'm', 'ft'), altitudes.low, altitudes.high);
}

function clipped(celsius: number): number {
  return between(fahrenheit(celsius), 0, 120);
}

function acidHeat(celsius: number): number {
  return between(fahrenheit(celsius), -40, 160);
}

function fahrenheit(celsius: number): number {
  return celsius * 1.8 + 32;
}

function asTwelve(value: number, volts: number): number {
  return volts === 6 ? value * 2 : value;
}

function between(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
