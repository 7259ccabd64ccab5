import type { Conditions as Known } from '../trade/standard.ts';
import { convert } from '../trade/units/units.ts';
import type { Standpoint } from './story.ts';

/** Conditions that a reading may be judged by and a person can tell. */
export type AskedCondition = 'altitude' | 'temperature';

/** Today's conditions in the units that the trade figures take; 12 V unless the vehicle is said to have 6. */
export function today({ conditions, facts }: Pick<Standpoint, 'conditions' | 'facts'>): Known {
  const { altitude, temperature } = conditions;
  return {
    volts: facts['volts'] === '6-volt' ? 6 : 12,
    ...(altitude !== undefined && { altitude: convert(altitude.value, altitude.unit, 'm') }),
    ...(temperature !== undefined && {
      temperature: convert(temperature.value, temperature.unit, 'C'),
    }),
  };
}
