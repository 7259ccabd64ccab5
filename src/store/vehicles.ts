import { join } from 'node:path';
import { bad, good, problemsOf, type Parsed, type Problem } from '../core/problem.ts';
import { fold } from '../core/session/fold.ts';
import { isPractice } from '../core/session/header/is-practice.ts';
import { slug } from '../core/session/name.ts';
import type { Header } from '../core/session/header/header.ts';
import { afterStart } from '../core/session/vehicle/job.ts';
import { parseVehicle, vehicleText } from '../core/session/vehicle/parse.ts';
import { pastJob, type PastJob } from '../core/session/vehicle/past.ts';
import {
  newVehicle,
  sameVehicle,
  type KeptVehicle,
  type Vehicle,
} from '../core/session/vehicle/vehicle.ts';
import { maxLength, tooLarge } from '../core/tree/json/read.ts';
import { attempt, StoreError, type Files } from './files.ts';
import { listSessions } from './find.ts';
import { loadSession } from './sessions.ts';
import { textOf } from './text.ts';
import { writeWhole } from './whole-file.ts';

/** The vehicles kept beside the sessions, and the files among them that cannot be read. */
export type Vehicles = {
  readonly kept: readonly KeptVehicle[];
  readonly problems: readonly Problem[];
};

/** Where the vehicles are: a folder of its own in that of the sessions. */
const folderIn = (sessions: string): string => join(sessions, 'vehicles');

/** All vehicles by name; one file that cannot be read hides no other. */
export function loadVehicles(files: Files, sessions: string): Vehicles {
  const folder = folderIn(sessions);
  if (!files.exists(folder)) return { kept: [], problems: [] };
  const names = attempt(folder, () => files.list(folder));
  if (names.kind === 'bad') return { kept: [], problems: names.problems };
  const read = names.value
    .filter((name) => name.endsWith('.json'))
    .map((name) => join(folder, name))
    .map((path) => ({ path, vehicle: loadVehicle(files, path) }));
  return {
    kept: read
      .flatMap(({ path, vehicle }) =>
        vehicle.kind === 'good' ? [{ path, vehicle: vehicle.value }] : [],
      )
      .toSorted((one, other) => (one.vehicle.name < other.vehicle.name ? -1 : 1)),
    problems: read.flatMap(({ vehicle }) => problemsOf(vehicle)),
  };
}

function loadVehicle(files: Files, path: string): Parsed<Vehicle> {
  const bytes = attempt(path, () =>
    files.sizeOf(path) > maxLength ? undefined : files.read(path),
  );
  if (bytes.kind === 'bad') return bytes;
  if (bytes.value === undefined) return bad(tooLarge(files.sizeOf(path), path));
  const text = textOf(bytes.value, path);
  return text.kind === 'bad' ? text : parseVehicle(text.value, path);
}

/** The vehicle of a name among those kept. */
export const vehicleNamed = ({ kept }: Vehicles, name: string): KeptVehicle | undefined =>
  kept.find(({ vehicle }) => sameVehicle(vehicle.name, name));

/** The same, or in one line why there is none. */
export function findVehicle(vehicles: Vehicles, name: string): Parsed<KeptVehicle> {
  const found = vehicleNamed(vehicles, name);
  if (found !== undefined) return good(found);
  const names = vehicles.kept.map(({ vehicle }) => vehicle.name);
  return bad({
    code: 'no-such-vehicle',
    value: name,
    message: `There is no vehicle "${name}" here.`,
    mend: names.length > 0 ? `Known: ${names.join(', ')}.` : 'Make one: "droplight vehicles new".',
  });
}

/** Writes a vehicle whole, to its own file or to a new one named after it. Returns the path. */
export function keepVehicle(
  files: Files,
  sessions: string,
  { path, vehicle }: { readonly path?: string | undefined; readonly vehicle: Vehicle },
): string {
  const folder = folderIn(sessions);
  files.makeFolder(folder);
  const file = path ?? freePath(files, join(folder, slug(vehicle.name)));
  const text = vehicleText(vehicle);
  const [problem] = problemsOf(parseVehicle(text, file));
  // Nothing is written that would not be read back.
  if (problem !== undefined)
    throw new StoreError(problem.code, problem.message, problem.mend, { path: file });
  writeWhole(files, file, text);
  return file;
}

/** Two names may make one file name: the second gets a number. */
function freePath(files: Files, stem: string): string {
  for (let count = 1; ; count += 1) {
    const path = `${stem}${count === 1 ? '' : `-${count}`}.json`;
    if (files.placeAt(path) === undefined) return path;
  }
}

/** What a new job was told of its vehicle, kept for the next one; a file that is as it was stays untouched. */
export function rememberVehicle(files: Files, sessions: string, { vehicle }: Header): void {
  const vehicles = loadVehicles(files, sessions);
  const known = vehicleNamed(vehicles, vehicle.name);
  const next = afterStart(known?.vehicle ?? newVehicle(vehicle.name), vehicle);
  if (known !== undefined && vehicleText(known.vehicle) === vehicleText(next)) return;
  keepVehicle(files, sessions, { path: known?.path, vehicle: next });
}

/** The jobs that were done on a vehicle, newest first; what cannot be read is no job of it. */
export function pastJobs(files: Files, sessions: string, vehicle: Vehicle): readonly PastJob[] {
  // The name of a session's file holds that of its vehicle, so that the others need not be read.
  const part = `-${slug(vehicle.name)}-`;
  return listSessions(files, sessions)
    .filter(({ name }) => name.includes(part))
    .flatMap(({ path }) => {
      const loaded = loadSession(files, path);
      if (loaded.kind === 'bad' || isPractice(loaded.value.header)) return [];
      if (!sameVehicle(loaded.value.header.vehicle.name, vehicle.name)) return [];
      return [pastJob(fold(loaded.value.header, loaded.value.events), vehicle)];
    });
}

/** Sessions looked into for what is unsafe: Home must not wait for more. */
const lookedInto = 60;

/**
 * What jobs left that must be done before a vehicle is driven, as Home tells it: `Orchard van: brake
 * hose cracked`. The newest jobs first; one that cannot be read says nothing.
 */
export function unsafeLeft(files: Files, sessions: string): readonly string[] {
  const { kept } = loadVehicles(files, sessions);
  return listSessions(files, sessions)
    .slice(0, lookedInto)
    .flatMap(({ path }) => {
      const loaded = mayBeUnsafe(files, path) ? loadSession(files, path) : undefined;
      if (loaded?.kind !== 'good') return [];
      const { header, events } = loaded.value;
      if (isPractice(header)) return [];
      const { name } = header.vehicle;
      const vehicle = kept.find((one) => sameVehicle(one.vehicle.name, name))?.vehicle;
      return pastJob(fold(header, events), vehicle ?? newVehicle(name))
        .left.filter(({ urgency }) => urgency === 'unsafe')
        .map(({ text }) => `${name}: ${text}`);
    });
}

/** Most sessions hold no such word, and need not be read through. */
function mayBeUnsafe(files: Files, path: string): boolean {
  const bytes = attempt(path, () => files.read(path));
  return bytes.kind === 'good' && new TextDecoder().decode(bytes.value).includes('"unsafe"');
}
