import { showReading } from '../../trade/units/units.ts';
import type { Shop } from '../../tree/shop.ts';
import type { Vehicle } from './vehicle.ts';

/** One line of a vehicle's sheet; a list gives a line for each of its entries. */
export type VehicleLine = {
  /** By which `changeVehicle` knows it. */
  readonly key: string;
  readonly name: string;
  /** As it is told; empty where it is not known. */
  readonly value: string;
  /** As it is typed. */
  readonly typed: string;
};

/** The whole sheet of a vehicle, what is not known of it among it, in the order of its screen. */
export const vehicleLines = (vehicle: Vehicle, shop: Shop): readonly VehicleLine[] => [
  plain('year', 'Year built', vehicle.year?.toString()),
  plain('body', 'Body', vehicle.body),
  plain('engine', 'Engine', vehicle.engine),
  odometerLine(vehicle),
  ...Object.entries(shop.facts).map(([key, { ask, values }]): VehicleLine => {
    const known = vehicle.facts[key];
    return {
      key,
      name: ask,
      value: known === undefined ? '' : (values[known] ?? known),
      typed: known ?? '',
    };
  }),
  ...Object.entries(shop.book).map(([key, { name }]) => figureLine(vehicle, key, name)),
  ...vehicle.modifications.map(({ what, quality }) =>
    plain(
      'modification',
      'Changed since new',
      `${what}${quality === undefined ? '' : ` (${quality})`}`,
    ),
  ),
  ...vehicle.remarks.map((text) => plain('remark', 'Remark', text)),
];

const plain = (key: string, name: string, value = ''): VehicleLine => ({
  key,
  name,
  value,
  typed: value,
});

function odometerLine({ odometer }: Vehicle): VehicleLine {
  const last = odometer.at(-1);
  if (last === undefined) return plain('odometer', 'Odometer');
  const shown = showReading(last.value, last.unit);
  return { key: 'odometer', name: 'Odometer', value: `${shown}, ${last.on}`, typed: shown };
}

function figureLine({ sheet }: Vehicle, key: string, name: string): VehicleLine {
  const figure = sheet[key];
  if (figure === undefined) return plain(key, `${name}, by its own book`);
  const where = figure.where === undefined ? '' : ` (${figure.where})`;
  return plain(
    key,
    `${name}, by its own book`,
    `${showReading(figure.value, figure.unit)}${where}`,
  );
}
