import { convert } from './units.ts';

/** Which units a person types and reads where none is named. */
export type Units = 'us' | 'metric';

/** The metric unit beside each US one that a figure asks for or tells. */
const metric: Readonly<Record<string, string>> = {
  ft: 'm',
  in: 'mm',
  mi: 'km',
  F: 'C',
  inHg: 'kPa',
  psi: 'bar',
  mph: 'km/h',
  gal: 'l',
  in3: 'ml',
  'ft-lb': 'Nm',
  lbf: 'N',
  'ohm/1000ft': 'ohm/km',
  'ft3/min': 'l/min',
};

/** The unit that counts for a person where a figure itself works in `unit`; the same one if no other is usual. */
export const usualUnit = (unit: string, units: Units): string =>
  units === 'us' ? unit : (metric[unit] ?? unit);

/** A value of a figure in the unit that is usual for a person. */
export function inUsual(
  { value, unit }: { readonly value: number; readonly unit: string },
  units: Units,
): { readonly value: number; readonly unit: string } {
  const usual = usualUnit(unit, units);
  return usual === unit ? { value, unit } : { value: convert(value, unit, usual), unit: usual };
}
