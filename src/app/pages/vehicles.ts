import { sameVehicle, newVehicle, type KeptVehicle } from '../../core/session/vehicle/vehicle.ts';
import { object, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { picked } from '../keys/cursor.ts';
import { searched } from '../keys/search.ts';
import { matching, nothingSought, type Search } from '../keys/sought.ts';
import type { Message } from '../message.ts';
import type { Page } from '../page.ts';
import { home, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { typing } from '../typing/typing.ts';
import { openVehicle, openVehicles } from './vehicle.ts';

export const vehiclesPage: Page<'vehicles'> = {
  mode: () => 'search',
  update: updateVehicles,
  open: openVehicles,
};

/** A line of the list: a vehicle, or the one that is not there yet. */
export type VehicleChoice =
  | { readonly kind: 'known'; readonly kept: KeptVehicle }
  | { readonly kind: 'new' };

export const vehiclesShown = (
  vehicles: readonly KeptVehicle[],
  { sought }: Search,
): readonly VehicleChoice[] => [
  ...matching(vehicles, sought, ({ vehicle }) => vehicle.name).map((kept): VehicleChoice => ({
    kind: 'known',
    kept,
  })),
  { kind: 'new' },
];

function updateVehicles(state: State, screen: At<'vehicles'>, press: KeyPress): Transition {
  if (press.command === 'go-back')
    return screen.sought === ''
      ? show(state, home)
      : show(state, { kind: 'vehicles', ...nothingSought });
  const lines = vehiclesShown(state.vehicles, screen);
  const line = picked(screen.cursor, press, lines);
  if (line === undefined)
    return show(state, { ...screen, ...searched(screen, press, lines.length) });
  if (line.kind === 'known') return openVehicle(state, line.kept);
  return show(state, {
    kind: 'vehicle',
    path: undefined,
    vehicle: newVehicle(''),
    cursor: 0,
    typed: typing(screen.sought),
  });
}

/** What the disk said of the vehicles; the page of one shows it as it is there now. */
export function vehiclesTold(
  before: State,
  message: Extract<Message, { kind: 'vehicles-loaded' | 'looked-back' | 'unsafe-found' }>,
): Transition {
  if (message.kind === 'unsafe-found') return transition({ ...before, unsafe: message.unsafe });
  if (message.kind === 'looked-back') return transition({ ...before, past: message });
  const { vehicles, trouble } = message;
  const { screen } = before;
  const now =
    screen.kind === 'vehicle' &&
    vehicles.find(({ vehicle }) => sameVehicle(vehicle.name, screen.vehicle.name));
  const state = {
    ...before,
    vehicles,
    ...(screen.kind === 'vehicle' && now && { screen: { ...screen, ...now } }),
  };
  return trouble === undefined ? transition(state) : object(state, trouble);
}
