import { vehiclesShown, type VehicleChoice } from '../../app/pages/vehicles.ts';
import type { Search } from '../../app/keys/sought.ts';
import { inShort, type KeptVehicle } from '../../core/session/vehicle/vehicle.ts';
import { Choices, Narrowed } from '../parts.tsx';

type VehiclesProps = {
  readonly vehicles: readonly KeptVehicle[];
  readonly search: Search;
  readonly rows: number;
};

/** The vehicles by name, and the one that is not there yet. */
export function VehiclesBody({ vehicles, search, rows }: VehiclesProps) {
  const shown = vehiclesShown(vehicles, search);
  return (
    <>
      <Narrowed sought={search.sought} left={shown.length - 1} />
      <Choices
        choices={shown.map((line) => ({ id: idOf(line), label: words(line) }))}
        cursor={search.cursor}
        rows={search.sought === '' ? rows : rows - 1}
      />
    </>
  );
}

const idOf = (line: VehicleChoice): string => (line.kind === 'known' ? line.kept.path : line.kind);

const words = (line: VehicleChoice): string =>
  line.kind === 'known' ? inShort(line.kept.vehicle) : 'A new vehicle';
