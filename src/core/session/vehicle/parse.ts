import { withPlaces } from '../../tree/json/place.ts';
import { parseJson } from '../../tree/json/read.ts';
import { shape } from '../../tree/parse.ts';
import type { Parsed } from '../../problem.ts';
import { safeJson } from '../../text.ts';
import { Vehicle } from './vehicle.ts';

/** The file of a vehicle, which a person may have written: each mistake with its line. */
export function parseVehicle(text: string, file: string): Parsed<Vehicle> {
  const json = parseJson(text, file);
  return json.kind === 'bad' ? json : withPlaces(text, shape(Vehicle, json.value, file));
}

/** The same as it is written; nothing that is not known of the vehicle stands in it. */
export function vehicleText(vehicle: Vehicle): string {
  const known = Object.entries(vehicle).filter(
    ([, value]) => typeof value !== 'object' || Object.keys(value).length > 0,
  );
  return `${safeJson(Object.fromEntries(known), 2)}\n`;
}
