import { firstOf } from '../../core/problem.ts';
import { changeVehicle } from '../../core/session/vehicle/change.ts';
import { vehicleLines, type VehicleLine } from '../../core/session/vehicle/lines.ts';
import { leftWords, jobWords } from '../../core/session/vehicle/past-words.ts';
import { leftToDo, type LeftToDo } from '../../core/session/vehicle/past.ts';
import { sameVehicle, type KeptVehicle, type Vehicle } from '../../core/session/vehicle/vehicle.ts';
import { object, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved, picked } from '../keys/cursor.ts';
import type { Page } from '../page.ts';
import type { At } from '../screen.ts';
import type { State } from '../state.ts';
import { edited, edits } from '../typing/edit.ts';
import { isEmpty, textOf, typing } from '../typing/typing.ts';
import { nothingSought } from '../keys/sought.ts';

/** A line of a vehicle's page, and the words it stands there with. */
export type PageLine = { readonly words: string; readonly about: string } & (
  | { readonly kind: 'name' }
  | { readonly kind: 'typed' | 'turned'; readonly line: VehicleLine }
  /** One more of a list. */
  | { readonly kind: 'added'; readonly key: string }
  | { readonly kind: 'left'; readonly left: LeftToDo }
  | { readonly kind: 'told' }
);

export const vehiclePage: Page<'vehicle'> = {
  mode: (screen, state) =>
    screen.typed !== undefined
      ? 'text'
      : pageLines(state, screen)[screen.cursor]?.kind === 'left'
        ? 'vehicle'
        : 'settings',
  update: updateVehicle,
  bindings: [
    {
      modes: ['vehicle'],
      keys: ['y'],
      command: 'confirm',
      hint: 'it is done',
      about: 'what was left to do is done',
    },
  ],
};

/** The list of the vehicles, read anew from the disk. */
export const openVehicles = (state: State): Transition =>
  show(
    state,
    { kind: 'vehicles', ...nothingSought },
    { kind: 'load-library' },
    { kind: 'load-vehicles' },
  );

/** The page of a vehicle that is known, with its past jobs looked for. */
export const openVehicle = (state: State, { path, vehicle }: KeptVehicle): Transition =>
  show(state, { kind: 'vehicle', path, vehicle, cursor: 0 }, { kind: 'look-back', vehicle });

/** What stands on the page: what past jobs left first, then the sheet, then the jobs. */
export function pageLines(
  { library, past }: Pick<State, 'library' | 'past'>,
  { vehicle, path }: At<'vehicle'>,
): readonly PageLine[] {
  if (path === undefined)
    return [{ kind: 'name', words: 'Name', about: 'A name of your own. No plate, no owner.' }];
  const jobs = past?.vehicle === vehicle.name ? past.jobs : [];
  const lines = library === undefined ? [] : vehicleLines(vehicle, library.shop);
  return [
    ...leftToDo(jobs).map((left): PageLine => ({
      kind: 'left',
      left,
      words: leftWords(left),
      about: `From the job ${left.session}. y: it is done.`,
    })),
    ...lines.map((line) => sheetLine(line, library?.shop.facts ?? {})),
    added('modification', 'One more change since new', 'What, and (good), (poor) or (unsafe).'),
    added('remark', 'One more remark', 'Anything the next job should know.'),
    ...jobs.map((job): PageLine => ({ kind: 'told', words: jobWords(job), about: job.session })),
  ];
}

const added = (key: string, words: string, about: string): PageLine => ({
  kind: 'added',
  key,
  words,
  about: `${about} Empty takes the last one away.`,
});

function sheetLine(line: VehicleLine, facts: Readonly<Record<string, unknown>>): PageLine {
  const words = `${line.name}${/[?.)]$/.test(line.name) ? '' : ':'} ${line.value === '' ? '-' : line.value}`;
  if (line.key === 'modification' || line.key === 'remark')
    return { kind: 'told', words, about: 'The last of these is taken away by an empty new one.' };
  return Object.hasOwn(facts, line.key)
    ? { kind: 'turned', line, words, about: 'Enter turns it on to the next kind.' }
    : { kind: 'typed', line, words, about: abouts[line.key] ?? bookAbout };
}

const abouts: Readonly<Record<string, string>> = {
  year: 'Four digits.',
  body: 'Such as pickup, van, tractor.',
  engine: 'Layout and size, such as straight six, 4.1 L.',
  odometer: 'Miles unless you type km. The day is kept with it.',
};
const bookAbout = 'From its own book, and (where it stands). Readings are judged by it.';

function updateVehicle(state: State, screen: At<'vehicle'>, press: KeyPress): Transition {
  if (screen.typed !== undefined) return updateTyped(state, screen, press);
  if (press.command === 'go-back') return openVehicles(state);
  const lines = pageLines(state, screen);
  const marked = lines[screen.cursor];
  if (press.command === 'confirm' && marked?.kind === 'left')
    return keep(state, screen, withDone(screen.vehicle, marked.left));
  const line = picked(screen.cursor, press, lines);
  if (line === undefined)
    return show(state, { ...screen, cursor: moved(screen.cursor, press.command, lines.length) });
  return pickLine(state, { ...screen, cursor: lines.indexOf(line) }, line);
}

const withDone = (vehicle: Vehicle, { session, n }: LeftToDo): Vehicle => ({
  ...vehicle,
  done: [...vehicle.done, { session, n }],
});

function pickLine(state: State, screen: At<'vehicle'>, line: PageLine): Transition {
  switch (line.kind) {
    case 'typed':
      return show(state, { ...screen, typed: typing(line.line.typed) });
    case 'added':
    case 'name':
      return show(state, { ...screen, typed: typing() });
    case 'turned':
      return say(state, screen, { key: line.line.key, text: nextValue(state, line.line) });
    default:
      return show(state, screen);
  }
}

/** The value behind the one that stands there; behind the last one it is not known. */
function nextValue({ library }: State, { key, typed }: VehicleLine): string {
  const values = ['', ...Object.keys(library?.shop.facts[key]?.values ?? {})];
  return values[(values.indexOf(typed) + 1) % values.length] ?? '';
}

function updateTyped(state: State, screen: At<'vehicle'>, press: KeyPress): Transition {
  const { typed, ...rest } = screen;
  if (typed === undefined) return transition(state);
  if (press.command === 'leave-field')
    return rest.path === undefined ? openVehicles(state) : show(state, rest);
  if (edits(press.command)) return show(state, { ...screen, typed: edited(typed, press) });
  if (press.command !== 'choose') return transition(state);
  const line = pageLines(state, screen)[screen.cursor];
  if (line?.kind === 'name') return nameIt(state, rest, textOf(typed).trim());
  const key = line?.kind === 'typed' ? line.line.key : line?.kind === 'added' ? line.key : '';
  return say(state, screen, { key, text: textOf(typed) });
}

function nameIt(state: State, screen: At<'vehicle'>, name: string): Transition {
  if (isEmpty(typing(name)))
    return object(state, { message: 'Give the vehicle a name,', mend: 'such as "Orchard van".' });
  const known = state.vehicles.find(({ vehicle }) => sameVehicle(vehicle.name, name));
  if (known !== undefined) return openVehicle(state, known);
  return keep(state, screen, { ...screen.vehicle, name });
}

/** Says a line of the sheet anew; what cannot be is told, and the field stays. */
function say(
  state: State,
  screen: At<'vehicle'>,
  said: { readonly key: string; readonly text: string },
): Transition {
  const { library, now } = state;
  if (library === undefined) return transition(state);
  const next = changeVehicle(screen.vehicle, said, { library, on: now.at.slice(0, 10) });
  return next.kind === 'bad'
    ? object(state, firstOf(next.problems))
    : keep(state, screen, next.value);
}

function keep(state: State, { typed: _, ...screen }: At<'vehicle'>, vehicle: Vehicle): Transition {
  return show(
    state,
    { ...screen, vehicle },
    { kind: 'keep-vehicle', path: screen.path, vehicle },
    { kind: 'look-back', vehicle },
  );
}
