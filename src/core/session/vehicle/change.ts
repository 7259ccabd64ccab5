import { bad, good, type Parsed, type Problem } from '../../problem.ts';
import { parseReading } from '../../trade/units/reading.ts';
import { nearest } from '../../trade/units/nearest.ts';
import { convert } from '../../trade/units/units.ts';
import type { Library, Shop } from '../../tree/shop.ts';
import { parseFigure, typedFigure } from '../book.ts';
import { factValue } from './fact.ts';
import { qualities, Vehicle } from './vehicle.ts';

/** What is said of a vehicle: a line of its sheet by its key, and the words for it; empty takes it away. */
type Said = { readonly key: string; readonly text: string };

/** What a change is held against. */
type Known = {
  readonly library: Pick<Library, 'trees' | 'shop'>;
  /** The day, `2026-04-11`: an odometer that is read is read then. */
  readonly on: string;
};

/** A vehicle with one line of its sheet said anew, or why that cannot be. */
export function changeVehicle(vehicle: Vehicle, said: Said, known: Known): Parsed<Vehicle> {
  const next = changed(vehicle, { ...said, text: said.text.trim() }, known);
  if (next.kind === 'bad') return next;
  const read = Vehicle.safeParse(next.value);
  return read.success
    ? good(read.data)
    : refuse('vehicle-line', `"${said.text}" is too long or not possible here.`, 'Say it shorter.');
}

function changed(vehicle: Vehicle, { key, text }: Said, { library, on }: Known): Parsed<Vehicle> {
  const { shop } = library;
  if (key === 'year') return withYear(vehicle, text);
  if (key === 'body' || key === 'engine') return good(withPlain(vehicle, key, text));
  if (key === 'odometer') return withOdometer(vehicle, text, on);
  if (key === 'modification') return withModification(vehicle, text);
  if (key === 'remark')
    return good({ ...vehicle, remarks: added(vehicle.remarks, text === '' ? undefined : text) });
  if (Object.hasOwn(shop.facts, key)) return withFact(vehicle, { key, text }, shop);
  if (Object.hasOwn(shop.book, key)) return withFigure(vehicle, { key, text }, library);
  return bad(unknownLine(key, shop));
}

const plainKeys = ['year', 'body', 'engine', 'odometer', 'modification', 'remark'] as const;

/** Everything that can be said of a vehicle, by its key. */
export const sheetKeys = ({ facts, book }: Shop): readonly string[] => [
  ...plainKeys,
  ...Object.keys(facts),
  ...Object.keys(book),
];

function unknownLine(key: string, shop: Shop): Problem {
  const near = nearest(key, sheetKeys(shop));
  return {
    code: 'vehicle-line',
    value: key,
    message: `A vehicle's sheet has no line "${key}".`,
    mend:
      near.length > 0 ? `Nearest: ${near.join(', ')}.` : `Possible: ${sheetKeys(shop).join(', ')}.`,
  };
}

const refuse = (code: string, message: string, mend: string): Parsed<never> =>
  bad({ code, message, mend });

/** A list with one more at its end; nothing said takes the last away. */
const added = <T>(list: readonly T[], one: T | undefined): T[] =>
  one === undefined ? list.slice(0, -1) : [...list, one];

function withPlain(vehicle: Vehicle, key: 'body' | 'engine', text: string): Vehicle {
  const { [key]: _, ...rest } = vehicle;
  return text === '' ? rest : { ...rest, [key]: text };
}

function withYear({ year: _, ...rest }: Vehicle, text: string): Parsed<Vehicle> {
  if (text === '') return good(rest);
  const year = /^\d{4}$/.test(text) ? Number(text) : 0;
  if (year < 1885 || year > 2100)
    return refuse(
      'vehicle-line',
      `"${text}" is no year.`,
      'Type it with four digits, such as 1968.',
    );
  return good({ ...rest, year });
}

/** The last of a sheet counts; one that shows less than before is no reason to refuse: it may be another. */
function withOdometer(vehicle: Vehicle, text: string, on: string): Parsed<Vehicle> {
  const { odometer } = vehicle;
  if (text === '') return good({ ...vehicle, odometer: added(odometer, undefined) });
  const unit = odometer.at(-1)?.unit ?? 'mi';
  const read = parseReading(text, { quantity: 'length', unit, plausible: [1000, 2_000_000] });
  if (read.kind === 'bad') return read;
  const miles = convert(read.value.value, read.value.unit, 'mi');
  if (!['mi', 'km'].includes(read.value.unit) || miles < 0 || miles > 2_000_000)
    return refuse(
      'vehicle-line',
      `"${text}" is no reading of an odometer.`,
      'Type miles or kilometers, such as 61200 mi.',
    );
  return good({ ...vehicle, odometer: added(odometer, { ...read.value, typed: text, on }) });
}

/** `relays for the lamps (poor)`. */
function withModification(vehicle: Vehicle, text: string): Parsed<Vehicle> {
  const [, what = text, word] = /^(.*?)\s*\((\w+)\)$/.exec(text) ?? [];
  const quality = qualities.find((one) => one === word);
  const said = quality === undefined ? { what: text } : { what, quality };
  const { modifications } = vehicle;
  return good({ ...vehicle, modifications: added(modifications, text === '' ? undefined : said) });
}

function withFact(vehicle: Vehicle, { key, text }: Said, shop: Shop): Parsed<Vehicle> {
  const { [key]: _, ...others } = vehicle.facts;
  if (text === '') return good({ ...vehicle, facts: others });
  const value = factValue(key, text, shop);
  if (value.kind === 'bad') return value;
  return good({ ...vehicle, facts: { ...others, [key]: value.value } });
}

function withFigure(
  vehicle: Vehicle,
  { key, text }: Said,
  library: Known['library'],
): Parsed<Vehicle> {
  const { [key]: _, ...others } = vehicle.sheet;
  if (text === '') return good({ ...vehicle, sheet: others });
  const figure = parseFigure(key, typedFigure(text), library);
  if (figure.kind === 'bad') return figure;
  return good({ ...vehicle, sheet: { ...others, [key]: figure.value } });
}
