import { bad, good, type Parsed, type Problem } from '../../core/problem.ts';
import { hideFault, saltOf } from '../../core/reason/practice/hide.ts';
import type { Header } from '../../core/session/header/header.ts';
import type { Practice } from '../../core/session/header/practice.ts';
import { currencyOf, newHeader } from '../../core/session/header/new-header.ts';
import { parseConditions } from '../../core/session/rules/vehicle.ts';
import { cleanRow } from '../../core/text.ts';
import { attempt } from '../../store/files.ts';
import { sessionName } from '../../store/find.ts';
import { keepSecret, newSalt } from '../../store/practice.ts';
import { sha256 } from '../../store/recover.ts';
import { createSession } from '../../store/sessions.ts';
import { readSettings } from '../../store/settings.ts';
import { done, printJson, type Ended, type Io } from '../io.ts';
import { newPlace } from '../program/new-place.ts';
import { readOptions, sessionsFolder, type Given } from '../options.ts';
import { callOf, uses } from '../uses.ts';
import { groundFor, type Ground } from './ground.ts';
import { markOf } from './set-file.ts';
import type { Hidden } from './hidden.ts';
import { wishFrom } from './wish.ts';

const use = callOf('practice');

/**
 * `droplight practice TREE`: hides a fault and begins a session on it; on a terminal the screens open
 * with it. `set` and `compare` are for whoever sets practice for a class.
 */
export async function practice(io: Io, args: readonly string[]): Promise<Ended> {
  const [verb, ...rest] = args;
  if (verb === 'compare') return (await import('./compare.ts')).compare(io, rest);
  if (verb === 'set') return (await import('./set.ts')).makeSet(io, rest);
  const given = readOptions(args, uses.practice.options);
  if (given.kind === 'bad') return given;
  const begun = begin(io, given.value);
  if (begun.kind === 'bad') return begun;
  const path = begun.value;
  if (given.value.flag('json')) printJson(io, { session: sessionName(path), path });
  else if (!io.isTerminal) io.out(`${cleanRow(path)}\n`);
  else {
    const { screens } = await import('../screens.ts');
    return screens(io, [path, ...placesOf(given.value)], 'resume');
  }
  return done;
}

/** The folders that were named hold for the screens as well. */
const placesOf = (given: Given): string[] =>
  ['trees', 'sessions'].flatMap((name) => {
    const place = given.text(name);
    return place === undefined ? [] : [`--${name}`, place];
  });

/** Hides the fault, keeps its secret, and makes the session; returns its path. */
function begin(io: Io, given: Given): Parsed<string> {
  const hidden = wishFrom(io, given, use);
  if (hidden.kind === 'bad') return hidden;
  const header = headerFor(io, given, hidden.value);
  if (header.kind === 'bad') return header;
  const folder = sessionsFolder(io, given);
  const placeTold = newPlace(io, given);
  const path = attempt(folder, () => createSession(io.disk, folder, header.value));
  if (path.kind === 'good') io.err(placeTold());
  return path;
}

function headerFor(io: Io, given: Given, hidden: Hidden): Parsed<Header> {
  const ground = groundFor(io, given, hidden.tree, hidden.facts);
  if (ground.kind === 'bad') return ground;
  const { tree, library, facts } = ground.value;
  const settings = readSettings(io.disk.files, io.folders.settings);
  const conditions = parseConditions({ altitude: settings.altitude }, settings.units);
  if (conditions.kind === 'bad') return conditions;
  const committed = commit(io, hidden, ground.value);
  if (committed.kind === 'bad') return committed;
  const about = {
    tree,
    shop: library.shop,
    vehicle: { name: practiceVehicle, facts },
    practice: committed.value,
    who: given.text('who') ?? settings.who,
    conditions: conditions.value,
    units: settings.units,
    ...currencyOf(settings),
  };
  return good(newHeader(about, io.clock().at));
}

/** Draws what is hidden, keeps it on this machine, and says what the record may say of it. */
function commit(io: Io, hidden: Hidden, { tree, walked }: Ground): Parsed<Practice> {
  const { seed, mark, hard, set } = hidden;
  if (mark !== undefined && mark !== markOf(tree)) return bad(otherTree(tree.id));
  const salt = seed === undefined ? newSalt() : saltOf(seed, tree.id, sha256);
  const secret = hideFault(walked, { ...hidden, salt });
  if (secret.kind === 'bad') return secret;
  const { files } = io.disk;
  const { settings } = io.folders;
  const kept = attempt(settings, () => keepSecret(files, settings, secret.value));
  if (kept.kind === 'bad') return kept;
  const commitment = kept.value;
  return good({ commitment, ...(hard && { hard }), ...(set !== undefined && { set }) });
}

const otherTree = (tree: string): Problem => ({
  code: 'other-tree',
  value: tree,
  message: `The set was made of another version of the tree "${tree}": its numbers would hide other faults here.`,
  mend: 'Make the set anew, or use the trees that it was made with (--trees DIR).',
});

/** What the vehicle of a practice is called: it is nobody's. */
const practiceVehicle = 'Practice vehicle';
