import * as z from 'zod';
import { courseKinds } from './kinds/course.ts';
import { ownKinds } from './kinds/own.ts';
import { practiceKinds } from './kinds/practice.ts';
import { remarkKinds } from './kinds/remarks.ts';
import { Count, Stamp } from './kinds/shapes.ts';
import { stepKinds } from './kinds/steps.ts';
import { vehicleKinds } from './kinds/vehicle.ts';

const kinds = {
  ...vehicleKinds,
  ...stepKinds,
  ...ownKinds,
  ...remarkKinds,
  ...courseKinds,
  ...practiceKinds,
};

export type Kind = keyof typeof kinds;
/** All of them, for documents and tests to be held to. @tested */
export const eventKinds = Object.keys(kinds) as readonly Kind[];

/** Whether this version knows a kind. */
export const isKind = (kind: string): kind is Kind => Object.hasOwn(kinds, kind);

/** The model of what events of a kind say. */
export const modelOf = (kind: Kind): (typeof kinds)[Kind] => kinds[kind];

/** What an event says, without its number and time. */
export type Payload = { [K in Kind]: z.output<(typeof kinds)[K]> }[Kind];
export type PayloadOf<K extends Kind> = z.output<(typeof kinds)[K]>;

/** One line of a session after the header. `n` counts from 1. */
export type Event = Stamp & { readonly n: number } & Payload;

/** A kind that this version does not know: kept in the file, shown as such, folded into nothing. */
export type UnknownEvent = Stamp & {
  readonly n: number;
  readonly kind: 'unknown';
  readonly was: string;
};

const Chained = Stamp.extend({ n: Count, previous: z.string(), link: z.string() });

/** An event as it stands on its line, with the links of the chain. */
export const EventLine = z.union(
  Object.values(kinds).map((model) => z.object({ ...Chained.shape, ...model.shape })),
);
