import { bad, good, type Parsed } from '../core/problem.ts';
import { cleanRow } from '../core/text.ts';
import { factsAsked, misfit } from '../core/tree/fit.ts';
import type { Tree } from '../core/tree/model.ts';
import { parseSheet, type TypedFigure } from '../core/session/book.ts';
import type { Header } from '../core/session/header/header.ts';
import { newHeader } from '../core/session/header/new-header.ts';
import { parseConditions } from '../core/session/rules/vehicle.ts';
import { attempt } from '../store/files.ts';
import type { Library } from '../core/tree/shop.ts';
import { sessionName } from '../store/find.ts';
import { createSession } from '../store/sessions.ts';
import { readSettings } from '../store/settings.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { openTree } from './library.ts';
import { readOptions, sessionsFolder, wrongUse, type Given } from './options.ts';

const use =
  'droplight open TREE --vehicle TEXT [--who T] [--altitude 5200ft] [--temperature 70F] [--facts a=b,c=d] [--sheet "figure=18inHg (where);..."] [--trees DIR] [--sessions DIR] [--json]';

/** `droplight open TREE`: begins a session without screens and prints the path of its file. */
export async function open(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, {
    vehicle: 'text',
    who: 'text',
    altitude: 'text',
    temperature: 'text',
    facts: 'text',
    sheet: 'text',
    json: 'flag',
  });
  if (given.kind === 'bad') return given;
  const header = headerFor(io, given.value);
  if (header.kind === 'bad') return header;
  const folder = sessionsFolder(io, given.value);
  const path = attempt(folder, () => createSession(io.disk, folder, header.value));
  if (path.kind === 'bad') return path;
  const { value } = path;
  if (given.value.flag('json')) printJson(io, { session: sessionName(value), path: value });
  else io.out(`${cleanRow(value)}\n`);
  return done;
}

function headerFor(io: Io, given: Given): Parsed<Header> {
  const [id] = given.words;
  const vehicle = given.text('vehicle');
  if (id === undefined || given.words.length > 1 || vehicle === undefined || vehicle.trim() === '')
    return wrongUse('A new session wants one tree and the name of the vehicle.', use);
  const opened = openTree(io, given, id);
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
  const known = readKnown(given, tree, library);
  if (known.kind === 'bad') return known;
  return good(
    newHeader(
      {
        tree,
        shop: library.shop,
        vehicle: vehicle.trim(),
        ...known.value,
        who: given.text('who') ?? settings.who,
        conditions: conditions.value,
        units: settings.units,
      },
      io.clock().at,
    ),
  );
}

/** What is known of the vehicle: its facts, and figures of its own book. */
function readKnown(given: Given, tree: Tree, library: Library) {
  const facts = readFacts(given.text('facts') ?? '', tree, library);
  if (facts.kind === 'bad') return facts;
  const wrong = misfit(tree, facts.value);
  if (wrong !== undefined) return bad(wrong);
  const sheet = parseSheet(readSheet(given.text('sheet') ?? ''), tree, library.shop);
  return sheet.kind === 'bad' ? sheet : good({ facts: facts.value, sheet: sheet.value });
}

/** `idle-vacuum=18 inHg (shop manual, page 12); dwell=55 deg`: where it was read may follow in brackets. */
function readSheet(text: string): Record<string, TypedFigure> {
  const figures = text.split(';').filter((part) => part.trim() !== '');
  return Object.fromEntries(
    figures.map((part) => {
      const [, id = '', reading = '', where] =
        /^\s*([^=]*?)\s*=\s*([^(]*?)\s*(?:\((.*)\))?\s*$/.exec(part) ?? [];
      return [
        id === '' ? part.trim() : id,
        { reading: reading === '' ? part.trim() : reading, where },
      ];
    }),
  );
}

/** `transmission=automatic,ground-side=negative`. */
function readFacts(text: string, tree: Tree, { shop }: Library): Parsed<Record<string, string>> {
  const facts: Record<string, string> = {};
  for (const pair of text.split(',').filter((part) => part.trim() !== '')) {
    const [fact = '', value = ''] = pair.split('=').map((part) => part.trim());
    const values = Object.hasOwn(shop.facts, fact) ? shop.facts[fact]?.values : undefined;
    if (values === undefined)
      return bad(wrongFact(`There is no fact "${fact}".`, factsAsked(tree).join(', ')));
    if (!Object.hasOwn(values, value))
      return bad(wrongFact(`"${fact}" cannot be "${value}".`, Object.keys(values).join(', ')));
    facts[fact] = value;
  }
  return good(facts);
}

const wrongFact = (message: string, offered: string) => ({
  code: 'unknown-fact',
  message,
  mend: `Possible: ${offered}.`,
});
