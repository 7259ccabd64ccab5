import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { Amount } from '../kinds/shapes.ts';
import { freeText, programText } from '../free-text.ts';

/** Figures of the vehicle's own book, by the name that trees use, and where each was read. */
export const Sheet = z.record(Id, Amount.extend({ where: freeText(500).optional() }));
export type Sheet = z.output<typeof Sheet>;

/** What the odometer showed (miles or kilometers), and the day it was read. */
export const Odometer = Amount.extend({ on: programText(40) });

/** How well a change to the vehicle was made. */
export const qualities = ['good', 'poor', 'unsafe'] as const;

/** What is told of a vehicle where it is told which one it is. */
export const described = {
  /** The year it was built. */
  year: z.number().int().min(1885).max(2100).optional(),
  /** `pickup`, `van`, `tractor`. */
  body: freeText(200).optional(),
  /** Layout and size: `straight six, 4.1 L`. */
  engine: freeText(200).optional(),
};

/** The file of a vehicle: what stays true of it from one job to the next. */
export const Vehicle = z.strictObject({
  format: z.literal(1),
  name: freeText(500).min(1),
  ...described,
  /** Which of the kinds that trees ask for it has. */
  facts: z.record(Id, Id).default({}),
  sheet: Sheet.default({}),
  odometer: z.array(Odometer).max(1000).default([]),
  /** What was changed on it since it was new. */
  modifications: z
    .array(z.strictObject({ what: freeText(500), quality: z.enum(qualities).optional() }))
    .max(200)
    .default([]),
  remarks: z.array(freeText(2000)).max(200).default([]),
  /** Follow-ups of its jobs that are done: the session and the number of the event. */
  done: z.array(z.object({ session: programText(200), n: z.number().int() })).default([]),
});

export type Vehicle = z.output<typeof Vehicle>;

/** A vehicle and the file that keeps it. */
export type KeptVehicle = { readonly path: string; readonly vehicle: Vehicle };

/** A vehicle of which only the name is known. */
export const newVehicle = (name: string): Vehicle => ({
  format: 1,
  name: name.trim(),
  facts: {},
  sheet: {},
  odometer: [],
  modifications: [],
  remarks: [],
  done: [],
});

/** Two names mean one vehicle where only case and space part them. */
export const sameVehicle = (one: string, other: string): boolean => nameKey(one) === nameKey(other);

const nameKey = (name: string): string =>
  name.normalize('NFKC').trim().replaceAll(/\s+/g, ' ').toLowerCase();

/** `Orchard van: 1968 pickup, straight six`. */
export function inShort({ name, year, body, engine }: Vehicle): string {
  const kind = [year, body].filter((part) => part !== undefined).join(' ');
  const about = [kind, engine ?? ''].filter((part) => part !== '').join(', ');
  return about === '' ? name : `${name}: ${about}`;
}
