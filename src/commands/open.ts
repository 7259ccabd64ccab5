import { bad, firstOf, good, type Parsed } from '../core/problem.ts';
import { cleanLine, cleanRow } from '../core/text.ts';
import { misfit } from '../core/tree/fit.ts';
import type { Tree } from '../core/tree/model.ts';
import { fromYourJobs } from '../core/tree/counted/words.ts';
import { groupNamed, groups } from '../core/tree/groups.ts';
import { bareTree } from '../core/tree/own/bare.ts';
import { parseSheet, typedFigure, type TypedFigure } from '../core/session/book.ts';
import type { Header } from '../core/session/header/header.ts';
import { currencyOf, newHeader } from '../core/session/header/new-header.ts';
import { parseConditions } from '../core/session/rules/vehicle.ts';
import { factsFrom } from '../core/session/vehicle/fact.ts';
import { forJob } from '../core/session/vehicle/job.ts';
import { newVehicle, type Vehicle } from '../core/session/vehicle/vehicle.ts';
import { attempt } from '../store/files.ts';
import type { Library } from '../core/tree/shop.ts';
import { sessionName } from '../store/find.ts';
import { createSession } from '../store/sessions.ts';
import { readSettings } from '../store/settings.ts';
import { loadVehicles, rememberVehicle, vehicleNamed } from '../store/vehicles.ts';
import { done, fail, printJson, type Ended, type Io } from './io.ts';
import { libraryForJobs, oddityOf, openLibrary, openTree } from './library.ts';
import { newPlace } from './program/new-place.ts';
import { readOptions, sessionsFolder, wrongUse, type Given } from './options.ts';
import { callOf, uses } from './uses.ts';

const use = callOf('open');

/** `droplight open TREE`: begins a session without screens and prints the path of its file. */
export async function open(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.open.options);
  if (given.kind === 'bad') return given;
  const header = headerFor(io, given.value);
  if (header.kind === 'bad') return header;
  const folder = sessionsFolder(io, given.value);
  const placeTold = newPlace(io, given.value);
  const path = attempt(folder, () => createSession(io.disk, folder, header.value));
  if (path.kind === 'bad') return path;
  remember(io, folder, header.value);
  const { value } = path;
  if (given.value.flag('json')) printJson(io, { session: sessionName(value), path: value });
  else io.out(`${cleanRow(value)}\n`);
  io.err(placeTold());
  return done;
}

/** The job is begun whether or not the vehicle's file takes what it was told: then that is said. */
function remember(io: Io, folder: string, header: Header): void {
  const kept = attempt(folder, () => rememberVehicle(io.disk.files, folder, header));
  if (kept.kind === 'bad') fail(io, firstOf(kept.problems));
}

function headerFor(io: Io, given: Given): Parsed<Header> {
  const vehicle = given.text('vehicle') ?? '';
  const opened = whatFor(io, given);
  if (opened.kind === 'bad') return opened;
  const { tree, library } = opened.value;
  const settings = readSettings(io.disk.files, io.folders.settings);
  const conditions = parseConditions(
    {
      altitude: given.text('altitude') ?? settings.altitude,
      temperature: given.text('temperature'),
    },
    settings.units,
  );
  if (conditions.kind === 'bad') return conditions;
  const known = readKnown(given, tree, { library, vehicle: vehicleFor(io, given, vehicle) });
  if (known.kind === 'bad') return known;
  return good(
    newHeader(
      {
        tree,
        shop: library.shop,
        vehicle: known.value,
        who: given.text('who') ?? settings.who,
        conditions: conditions.value,
        units: settings.units,
        ...currencyOf(settings),
      },
      io.clock().at,
    ),
  );
}

/** The tree that was named, or a bare one for a complaint in own words. */
function whatFor(io: Io, given: Given): ReturnType<typeof openTree> {
  const [id] = given.words;
  const own = given.text('own')?.trim() ?? '';
  const one = (id === undefined) !== (own === '') && given.words.length <= 1;
  if (!one || (given.text('vehicle') ?? '').trim() === '')
    return wrongUse(
      'A new session wants one tree, or the complaint in own words, and the name of the vehicle.',
      use,
    );
  if (id === undefined) return withoutTree(io, given, own);
  const opened = openTree(io, given, id);
  if (opened.kind === 'bad') return opened;
  tellOddity(io, opened.value);
  const library = libraryForJobs(io, given, opened.value.library);
  const tree = library.trees.find((one) => one.id === opened.value.tree.id) ?? opened.value.tree;
  const counted = fromYourJobs(tree);
  if (counted !== undefined) io.err(`${cleanLine(`Odds and minutes: ${counted}.`)}\n`);
  return good({ tree, library });
}

function tellOddity(io: Io, { tree, library }: { readonly tree: Tree; readonly library: Library }) {
  const oddity = oddityOf(tree, library);
  if (oddity !== undefined) io.err(`${cleanLine(oddity)}\n`);
}

/** A complaint that no tree is about, with the library's cautions. */
function withoutTree(io: Io, given: Given, words: string): ReturnType<typeof openTree> {
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return library;
  const about = given.text('about');
  const group = groupNamed(about);
  return about !== undefined && group === undefined
    ? wrongUse(`There is no group "${about}"; there are ${groups.join(', ')}.`, use)
    : good({ tree: bareTree(words, group), library: library.value });
}

/** The vehicle of that name as its file has it, or one of which only the name is known. */
const vehicleFor = (io: Io, given: Given, name: string): Vehicle =>
  vehicleNamed(loadVehicles(io.disk.files, sessionsFolder(io, given)), name)?.vehicle ??
  newVehicle(name);

/** What is known of the vehicle: its file, and the facts and figures of its book that are given now. */
function readKnown(
  given: Given,
  tree: Tree,
  { library, vehicle }: { readonly library: Library; readonly vehicle: Vehicle },
): Parsed<Header['vehicle']> {
  const facts = readFacts(given.text('facts') ?? '', library);
  if (facts.kind === 'bad') return facts;
  const sheet = parseSheet(readSheet(given.text('sheet') ?? ''), tree, library.shop);
  if (sheet.kind === 'bad') return sheet;
  const known = forJob(vehicle, { facts: facts.value, sheet: sheet.value });
  const wrong = misfit(tree, known.facts);
  return wrong === undefined ? good(known) : bad(wrong);
}

/** `idle-vacuum=18 inHg (shop manual, page 12); dwell=55 deg`. */
function readSheet(text: string): Record<string, TypedFigure> {
  const figures = text.split(';').filter((part) => part.trim() !== '');
  return Object.fromEntries(
    figures.map((part) => {
      const [, id = '', figure = ''] = /^\s*([^=]*?)\s*=(.*)$/s.exec(part) ?? [];
      return [id === '' ? part.trim() : id, typedFigure(figure === '' ? part : figure)];
    }),
  );
}

/** Facts as they are typed: `transmission=automatic,ground-side=negative`. */
export const readFacts = (text: string, { shop }: Library): Parsed<Record<string, string>> =>
  factsFrom(
    Object.fromEntries(
      text
        .split(',')
        .filter((part) => part.trim() !== '')
        .map((pair) => {
          const [fact = '', value = ''] = pair.split('=').map((part) => part.trim());
          return [fact, value] as const;
        }),
    ),
    shop,
  );
