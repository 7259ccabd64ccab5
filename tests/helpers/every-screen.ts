import { readFileSync } from 'node:fs';
import type { Program } from '../../src/app/program.ts';
import type { Action } from '../../src/core/session/action.ts';
import { figures } from '../../src/core/trade/catalog.ts';
import { codeOf } from '../../src/phone/code.ts';
import { readSession } from '../../src/store/recover.ts';
import { shippedTree } from './library.ts';
import { practiceOn } from './practice/begun.ts';
import { chooseTree, makeProgram, pagesRead, passPages, press, startKeys } from './program.ts';
import { readingsFolder, see } from './readings.ts';

/** A screen of the program and how it is reached from Home. */
export type Reached = { readonly name: string; readonly reach: () => Program };

/** Down the list of figures to the vacuum one, wherever it stands. */
const toVacuum = '<down>'.repeat(figures.findIndex(({ name }) => name === 'vacuum-at-altitude'));

/** Keys that lead to each screen, from Home. The tree is rough-idle, whose first check wants three things set. */
const walk = startKeys();
const ready = `${walk}y`;
/** A job without a tree, up to its walk; then the words of its own test. */
const ownJob =
  's<end><enter>Wipers stop half way<enter>1Orchard van<enter>JB<enter><enter><enter>1';
const ownTest = 'the wipers on wet glass<enter>they stop half way<enter>they sweep it all';

const byKeys: readonly (readonly [name: string, keys: string])[] = [
  ['home', ''],
  ['start-complaint', 's'],
  ['start-altitude', `${chooseTree('rough-idle')}Orchard van<enter>JB<enter>`],
  ['cautions', walk.replace(/Z1$/, '')],
  ['prepare', walk],
  ['look', ready],
  ['note', `${ready}nfan belt squeals`],
  ['photo', `${ready}P~/pictures/fuse.jpg<enter>Green at the`],
  ['expect', `${ready}e`],
  ['others', `${ready}2o`],
  ['suspects', `${ready}2r`],
  ['why', `${ready}2w`],
  ['picked-cause', `${ready}2r2`],
  ['cautions-read', `${ready}2r21`],
  ['condemned', `${ready}2r21y<enter>`],
  ['not-this', `${ready}2r21x`],
  ['close', `${ready}2c`],
  ['keys', `${ready}?`],
  ['in-full', `${ready}i`],
  ['settings', 'g'],
  ['past-jobs', 'p'],
  ['figures', 'f'],
  ['figure', `f${toVacuum}<enter>`],
  ['sessions', `${ready}2qa`],
  ['vehicles', 'v'],
  ['vehicle-named', 'v<enter>Orchard van'],
  ['vehicle', 'v<enter>Orchard van<enter><enter>1968<enter><down><down>'],
  ['apart', `${ready}2pair filter<enter><enter><enter><enter><enter>a`],
  [
    'putting-back',
    `${ready}2pair filter<enter><enter><enter><enter><enter>phorn<enter><enter><enter><enter><enter>p+ jumper<enter>ar`,
  ],
  ['baseline', `${walk}B`],
  ['part-off', `${ready}2pair filter<enter>on the fender<enter>wing nut`],
  ['nothing-apart', `${walk}a`],
  ['costs', `${ready}2M<enter>2 x fuse link at 3,50 EUR, spare<enter>`],
  ['timers', `${ready}T<down><down><enter>20 min cool down<enter>T1`],
  ['not-there', `${ready}1`],
  ['no-feed', `${ready}2f`],
  ['closed', `${ready}2c3y`],
  ['own-complaint', 's<end><enter>'],
  ['own-test-first', ownJob],
  ['own-test', `${ownJob}N${ownTest}`],
  ['own-next', `${ownJob}N${ownTest}<enter>2`],
  ['own-check', `${ownJob}N${ownTest}<enter>2Nvolts batt<down>`],
  ['own-kind', `${ownJob}N${ownTest}<enter>2Nthe wiper fuse<enter>`],
  ['own-shown', `${ownJob}N${ownTest}<enter>2Nthe wiper fuse<enter>1whole<enter>3`],
  ['own-cause', `${ownJob}N${ownTest}<enter>2Rwiper ground rusted<enter>`],
  ['own-named', `${ownJob}N${ownTest}<enter>2Rwiper ground rusted<enter>under the cowl<enter>`],
  // Typed with its unit: the clock goes on a second a message, and must stay off a full minute.
  ['figure-worked', `${walk}v${toVacuum}<enter>5200   ft<enter><enter>15   <enter>`],
];

function after(keys: string): Program {
  const { program } = makeProgram();
  press(program, keys);
  return program;
}

const act = (program: Program, ...actions: readonly Action[]): void => {
  for (const action of actions) program.dispatch({ kind: 'acted', action });
};

/** What the vacuum at idle waits for. */
const chokeOpen: Action = { do: 'find', check: 'choke-hot', result: 'open' };

/** At a reading that is judged by the altitude, with some keys typed. */
function judgedByAltitude(keys: string): Program {
  const program = after(`${ready}2`);
  act(program, chokeOpen, { do: 'begin', check: 'vac-level' });
  passPages(program);
  press(program, keys);
  return program;
}

function contradiction(): Program {
  const program = after(`${ready}2`);
  act(
    program,
    { do: 'find', check: 'dwell-run', result: 'good' },
    { do: 'begin', check: 'dwell-run' },
  );
  passPages(program);
  press(program, '3');
  return program;
}

function contradictionAfterRepair(): Program {
  const program = after(ready);
  act(
    program,
    chokeOpen,
    { do: 'find', check: 'vac-level', reading: '17.9', insist: true },
    { do: 'repair', cause: 'idle-mix', acknowledged: true },
    { do: 'prove', result: 'hunts' },
    { do: 'find', check: 'vac-level', reading: '15', insist: true },
  );
  press(program, 'z');
  return program;
}

const example = 'sessions/examples/2026-04-11-1042-orchard-van-no-supply.jsonl';

/** A replay of an example, with some keys pressed. */
function replayed(keys: string): Program {
  const { program } = makeProgram();
  const read = readSession(readFileSync(example), example);
  if (read.kind === 'bad') throw new Error('the example cannot be read');
  const { header, events } = read.value;
  program.dispatch({ kind: 'replay-opened', path: example, header, events });
  press(program, keys);
  return program;
}

/** The page of the feed path, after some actions. */
function feedPage(...actions: readonly Action[]): Program {
  const program = after(`${chooseTree('no-supply')}Orchard van<enter>JB<enter><enter><enter>`);
  for (let guard = 0; guard < 20 && program.state().session === undefined; guard += 1)
    press(program, `${'<down>'.repeat(9)}<enter>`);
  act(program, ...actions);
  press(program, 'f');
  return program;
}

/** The page of the telephone, open at an address of the longest kind, after some photos came in. */
function phonePage(...names: readonly string[]): Program {
  const program = after(`${ready}P<C-p>`);
  const url = 'http://192.168.100.120:41873/q8Zb3XwK1tY7uMv0aR5cNg';
  program.dispatch({ kind: 'phone-ready', url, code: codeOf(url) });
  for (const name of names) {
    const photo = { file: `job.photos/${name}`, sha256: 'a'.repeat(64), bytes: 3 };
    program.dispatch({ kind: 'photo-arrived', photo });
  }
  return program;
}

/** A practice just begun, its fault hidden, with some keys pressed. */
function practised(keys: string): Program {
  const { header, secret } = practiceOn(shippedTree('rough-idle'), { seed: 'a screen' });
  const { program } = makeProgram();
  const path = 'sessions/practice.jsonl';
  program.dispatch({ kind: 'session-opened', path, header, events: [], torn: 0, secret });
  passPages(program);
  press(program, keys);
  return program;
}

/** Each kind of screen of the shipped trees, by the name of its golden frame. */
export const everyScreen: readonly Reached[] = [
  ...byKeys.map(([name, keys]) => ({ name, reach: () => after(keys) })),
  { name: 'condition', reach: () => judgedByAltitude('') },
  { name: 'measure', reach: () => judgedByAltitude('<enter>5200<enter>15') },
  { name: 'unlikely', reach: () => judgedByAltitude('uy99<enter>') },
  { name: 'contradiction', reach: contradiction },
  { name: 'contradiction-repair', reach: contradictionAfterRepair },
  {
    name: 'contradiction-open',
    reach: () => {
      const program = contradictionAfterRepair();
      press(program, '<esc>');
      return program;
    },
  },
  { name: 'phone', reach: () => phonePage() },
  { name: 'phone-caption', reach: () => phonePage('01-photo.jpg', '02-photo.jpg') },
  { name: 'replay', reach: () => replayed('<enter>'.repeat(9)) },
  { name: 'replay-turning', reach: () => replayed('t') },
  { name: 'replay-playing', reach: () => replayed('<enter>gff') },
  { name: 'replay-typed', reach: () => replayed('<enter>11:0') },
  { name: 'feed', reach: () => feedPage() },
  { name: 'practice', reach: () => practised('') },
  { name: 'practice-answered', reach: () => practised('yZy') },
  { name: 'practice-hint', reach: () => practised('yZyZ<enter>A') },
];

/** Keys from Home to the question for a figure of the book, on the tree of readings. */
export const askBook = 's1<enter>Van<enter><enter><enter><enter><end><enter>2';

/** A job on the tree of readings with its complaint shown, by the book or not, and a check begun. */
export function askedReading(check: string, book: string, ...actions: readonly Action[]): Program {
  const { program } = makeProgram({ trees: readingsFolder });
  press(program, `${askBook}${book}`);
  const all: readonly Action[] = [
    see('pull-test', 'weak'),
    ...actions,
    { do: 'begin', check, acknowledged: true },
  ];
  for (const action of all) program.dispatch({ kind: 'acted', action });
  while (program.state().question.mode === 'caution')
    press(program, `Z${pagesRead(program.state()) + 1}`);
  // What is to be set first is set.
  if (program.state().question.due?.blocker.kind === 'prepare') press(program, 'Zy');
  return program;
}

export const byBook = '20<enter>page 12<enter>';
export const noBook = '<enter>';

/** Fields of several readings, and Home with a job to pick up. */
export const moreScreens: readonly Reached[] = [
  { name: 'home with a job', reach: () => after(`${ready}2q`) },
  ...(
    [
      ['two readings', 'feed-drop', noBook, '12.55 12.30'],
      ['a reading by the book', 'idle-vacuum', byBook, '17'],
      ['a reading of every cylinder', 'compression', noBook, '150 148 145 150 90 149'],
    ] as const
  ).map(([name, check, book, typed]) => ({
    name,
    reach: () => {
      const program = askedReading(check, book);
      press(program, typed);
      return program;
    },
  })),
];
