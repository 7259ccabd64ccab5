import { showProblem, type Parsed } from '../core/problem.ts';
import { cleanRow } from '../core/text.ts';
import { changeVehicle } from '../core/session/vehicle/change.ts';
import { vehicleLines } from '../core/session/vehicle/lines.ts';
import { jobWords, leftWords } from '../core/session/vehicle/past-words.ts';
import { leftToDo } from '../core/session/vehicle/past.ts';
import { inShort, newVehicle, type Vehicle } from '../core/session/vehicle/vehicle.ts';
import { attempt } from '../store/files.ts';
import { loadLibrary } from '../store/library.ts';
import {
  findVehicle,
  keepVehicle,
  loadVehicles,
  pastJobs,
  vehicleNamed,
  type Vehicles,
} from '../store/vehicles.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { readOptions, sessionsFolder, treesFolder, wrongUse, type Given } from './options.ts';
import { didYouMean } from '../core/trade/units/nearest.ts';
import { callOf, uses } from './uses.ts';

const use = callOf('vehicles');

/** What a verb of the command works on. */
type Work = {
  readonly io: Io;
  readonly given: Given;
  readonly folder: string;
  readonly vehicles: Vehicles;
  /** What stands behind the verb and the name of the vehicle. */
  readonly rest: readonly string[];
  readonly name: string;
};

const verbs: Readonly<Record<string, (work: Work) => Ended>> = {
  show: (work) => withVehicle(work, (kept) => show(work, kept)),
  new: begin,
  edit: (work) => withVehicle(work, ({ path, vehicle }) => keep(work, vehicle, path)),
  done: (work) => withVehicle(work, (kept) => tick(work, kept)),
};

/** `droplight vehicles`: the files of the vehicles, to read and to write. */
export async function vehicles(io: Io, args: readonly string[]): Promise<Ended> {
  const read = readOptions(args, uses.vehicles.options);
  if (read.kind === 'bad') return read;
  const given = read.value;
  const folder = sessionsFolder(io, given);
  const known = loadVehicles(io.disk.files, folder);
  for (const problem of known.problems) io.err(`droplight: ${cleanRow(showProblem(problem))}\n`);
  const [verb, name, ...rest] = given.words;
  if (verb === undefined) return list({ io, given, folder }, known);
  const does = Object.hasOwn(verbs, verb) ? verbs[verb] : undefined;
  if (does === undefined || name === undefined || name.trim() === '')
    return wrongUse(
      'Say what to do with which vehicle.',
      use,
      didYouMean(verb, Object.keys(verbs)),
    );
  return does({ io, given, folder, vehicles: known, rest, name });
}

function list(
  { io, given, folder }: Pick<Work, 'io' | 'given' | 'folder'>,
  { kept, problems }: Vehicles,
): Ended {
  if (given.flag('json')) printJson(io, { vehicles: kept.map(({ vehicle }) => vehicle), problems });
  else if (kept.length === 0) io.out(`${cleanRow(`There is no vehicle in ${folder} yet.`)}\n`);
  else for (const { vehicle } of kept) io.out(`${cleanRow(inShort(vehicle))}\n`);
  return done;
}

/** A vehicle that has jobs and no file yet: of one begun before vehicles had files only the name is known. */
type Known = { readonly path: string | undefined; readonly vehicle: Vehicle };

function withVehicle(work: Work, job: (known: Known) => Ended): Ended {
  const { io, folder, vehicles: known, name } = work;
  const found = findVehicle(known, name);
  if (found.kind === 'good') return job(found.value);
  const unfiled = newVehicle(name);
  const hasJobs = pastJobs(io.disk.files, folder, unfiled).length > 0;
  return hasJobs ? job({ path: undefined, vehicle: unfiled }) : found;
}

function show({ io, given, folder }: Work, { vehicle }: Known): Ended {
  const jobs = pastJobs(io.disk.files, folder, vehicle);
  if (given.flag('json')) {
    printJson(io, { vehicle, jobs });
    return done;
  }
  const lines = vehicleLines(vehicle, libraryOf(io, given).shop).filter(
    ({ value }) => value !== '',
  );
  const told = [
    vehicle.name,
    ...lines.map(({ key, name, value }) => `  ${name} ${value}   [${key}]`),
    ...jobs.map((job) => `  ${jobWords(job)}`),
    ...leftToDo(jobs).map((left) => `  ${leftWords(left)}   [${left.session} ${left.n}]`),
  ];
  for (const line of told) io.out(`${cleanRow(line)}\n`);
  return done;
}

const libraryOf = (io: Io, given: Given) =>
  loadLibrary(io.disk.files, { folder: treesFolder(io, given), shipped: io.folders.shipped });

function begin(work: Work): Ended {
  const known = vehicleNamed(work.vehicles, work.name);
  if (known === undefined) return keep(work, newVehicle(work.name), undefined);
  return {
    kind: 'bad',
    problems: [
      {
        code: 'vehicle-known',
        value: work.name,
        message: `There is a vehicle "${known.vehicle.name}" already.`,
        mend: 'Change it with "droplight vehicles edit".',
      },
    ],
  };
}

/** Says the lines that were given, all of them or none, and writes the file. */
function keep(work: Work, vehicle: Vehicle, path: string | undefined): Ended {
  const { io, given, folder } = work;
  const said = sayAll(work, vehicle);
  if (said.kind === 'bad') return said;
  const kept = attempt(folder, () =>
    keepVehicle(io.disk.files, folder, { path, vehicle: said.value }),
  );
  if (kept.kind === 'bad') return kept;
  if (given.flag('json')) printJson(io, { path: kept.value, vehicle: said.value });
  else io.out(`${cleanRow(kept.value)}\n`);
  return done;
}

function sayAll({ io, given, rest }: Work, vehicle: Vehicle): Parsed<Vehicle> {
  const library = libraryOf(io, given);
  const on = io.clock().at.slice(0, 10);
  let so = vehicle;
  for (const line of rest) {
    const at = line.indexOf('=');
    if (at < 1) return wrongUse(`"${line}" is no line of a vehicle.`, use);
    const said = { key: line.slice(0, at).trim(), text: line.slice(at + 1) };
    const next = changeVehicle(so, said, { library, on });
    if (next.kind === 'bad') return next;
    so = next.value;
  }
  return { kind: 'good', value: so };
}

/** Says of something that a past job left to do that it is done. */
function tick(work: Work, { path, vehicle }: Known): Ended {
  const { io, folder, rest } = work;
  const [session, number] = rest;
  const left = leftToDo(pastJobs(io.disk.files, folder, vehicle));
  const found = left.find((one) => one.session === session && String(one.n) === number);
  if (found !== undefined) {
    const ticked = [...vehicle.done, { session: found.session, n: found.n }];
    return keep({ ...work, rest: [] }, { ...vehicle, done: ticked }, path);
  }
  return {
    kind: 'bad',
    problems: [
      {
        code: 'nothing-left',
        value: rest.join(' '),
        message: `No job of "${vehicle.name}" left that to do.`,
        mend:
          left.length === 0
            ? 'Nothing is left to do.'
            : `Left: ${left.map((one) => `${one.session} ${one.n}`).join(', ')}.`,
      },
    ],
  };
}
