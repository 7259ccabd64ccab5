import * as z from 'zod';
import { withOffset } from './clock.ts';
import { isKind, modelOf, Stamp } from './event.ts';
import type { Event, Kind, Payload, UnknownEvent } from './event.ts';

const Numbered = Stamp.extend({ n: z.number().int().min(0), kind: z.string().max(40) });

/** Reads one event from a line's JSON value; undefined when it is no event of ours at all. */
export function parseEvent(value: unknown): Event | UnknownEvent | undefined {
  const numbered = Numbered.safeParse(value);
  if (!numbered.success) return undefined;
  const { kind, ...stamp } = numbered.data;
  if (!isKind(kind)) return { ...stamp, kind: 'unknown', was: kind };
  const payload = parsePayload(kind, value, stamp.at);
  return payload && { ...stamp, ...payload };
}

/**
 * Holds what an event or its correction says against the model of its kind. Old files hold times
 * told without an offset: they are read with that of `at`, the time of the event itself.
 */
export function parsePayload(kind: Kind, value: unknown, at: string): Payload | undefined {
  const payload = modelOf(kind).safeParse(value);
  return payload.success ? zoned(payload.data, at) : undefined;
}

/** An event to be written; a time told without an offset takes the one that the session has now. */
export const newEvent = (n: number, stamp: Stamp, payload: Payload): Event => ({
  n,
  ...stamp,
  ...zoned(payload, stamp.at),
});

const zoned = (payload: Payload, at: string): Payload =>
  'told' in payload && payload.told !== undefined
    ? { ...payload, told: withOffset(payload.told, at) }
    : payload;
