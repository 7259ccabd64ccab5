import { firstOf } from '../../core/problem.ts';
import type { Header } from '../../core/session/header/header.ts';
import { attempt, type Files } from '../../store/files.ts';
import { keepVehicle, loadVehicles, pastJobs, rememberVehicle } from '../../store/vehicles.ts';
import type { Effect } from '../effect.ts';
import type { Program } from '../program.ts';

/** The vehicles on the disk, in the folder of the sessions. */
type Garage = { readonly files: Files; readonly sessions: string };

/** What is done about vehicles. */
type VehicleEffect = Extract<Effect, { kind: 'load-vehicles' | 'look-back' | 'keep-vehicle' }>;

export function onVehicles(effect: VehicleEffect, garage: Garage, program: Program): void {
  switch (effect.kind) {
    case 'load-vehicles':
      loadAll(garage, program);
      return;
    case 'keep-vehicle':
      keep(garage, effect, program);
      return;
    case 'look-back':
      program.dispatch({
        kind: 'looked-back',
        vehicle: effect.vehicle.name,
        jobs: pastJobs(garage.files, garage.sessions, effect.vehicle),
      });
  }
}

function loadAll({ files, sessions }: Garage, { dispatch }: Program): void {
  const { kept, problems } = loadVehicles(files, sessions);
  dispatch({ kind: 'vehicles-loaded', vehicles: kept, trouble: problems[0] });
}

function keep(
  garage: Garage,
  { path, vehicle }: Extract<Effect, { kind: 'keep-vehicle' }>,
  program: Program,
): void {
  const { files, sessions } = garage;
  const kept = attempt(sessions, () => keepVehicle(files, sessions, { path, vehicle }));
  if (kept.kind === 'bad') program.dispatch({ kind: 'failed', problem: firstOf(kept.problems) });
  // What stands on the disk is what the page shows, whatever was asked of it.
  loadAll(garage, program);
}

/** A job is begun whether or not the vehicle's file takes what it was told: then that is said. */
export function remember({ files, sessions }: Garage, header: Header, { dispatch }: Program): void {
  const kept = attempt(sessions, () => rememberVehicle(files, sessions, header));
  if (kept.kind === 'bad') dispatch({ kind: 'failed', problem: firstOf(kept.problems) });
}
