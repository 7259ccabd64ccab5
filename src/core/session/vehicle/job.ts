import type { Header } from '../header/header.ts';
import type { Vehicle } from './vehicle.ts';

type HeaderVehicle = Header['vehicle'];

/** What a new job takes over from the vehicle's file; what was asked anew for this job counts before it. */
export function forJob(
  vehicle: Vehicle,
  { facts = {}, sheet = {} }: Partial<Pick<HeaderVehicle, 'facts' | 'sheet'>> = {},
): HeaderVehicle {
  const { name, year, body, engine, odometer } = vehicle;
  const figures = { ...vehicle.sheet, ...sheet };
  const latest = odometer.at(-1);
  return {
    name,
    ...(year !== undefined && { year }),
    ...(body !== undefined && { body }),
    ...(engine !== undefined && { engine }),
    ...(latest !== undefined && { odometer: latest }),
    facts: { ...vehicle.facts, ...facts },
    ...(Object.keys(figures).length > 0 && { sheet: figures }),
  };
}

/** The vehicle's file after a job was begun: facts and figures that were given there are kept. */
export const afterStart = (
  vehicle: Vehicle,
  { facts, sheet = {} }: Pick<HeaderVehicle, 'facts' | 'sheet'>,
): Vehicle => ({
  ...vehicle,
  facts: { ...vehicle.facts, ...facts },
  sheet: { ...vehicle.sheet, ...sheet },
});
