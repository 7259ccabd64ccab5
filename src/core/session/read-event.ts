import * as z from 'zod';
import { showPath, type Problem } from '../problem.ts';
import { quantitiesOf } from '../trade/units/units.ts';
import { withOffset } from './clock.ts';
import { isKind, modelOf } from './event.ts';
import { Stamp } from './kinds/shapes.ts';
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
  return payload.success && hasKnownUnits(payload.data) ? zoned(payload.data, at) : undefined;
}

/** Every reading is in a unit that can be worked with. */
const hasKnownUnits = (payload: Payload): boolean =>
  Object.entries(payload)
    .filter(([field]) => measured.has(field))
    .every(([, value]) => isMeasured(value));

/** The fields of events that hold amounts. */
const measured: ReadonlySet<string> = new Set(['reading', 'readings', 'standard', 'set']);

function isMeasured(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (Array.isArray(value)) return value.every(isMeasured);
  if ('unit' in value && typeof value.unit === 'string') return quantitiesOf(value.unit).length > 0;
  return Object.values(value).every(isMeasured);
}

/**
 * Why the reader would not take an event back as it is written. Every writer asks before it writes:
 * what was acknowledged must be read.
 */
export function unreadable(event: Event): Problem | undefined {
  const written: unknown = JSON.parse(JSON.stringify(event));
  const read = parseEvent(written);
  if (read !== undefined && read.kind !== 'unknown') return undefined;
  const model = modelOf(event.kind).and(Numbered);
  return unreadableBy(model.safeParse(written).error?.issues ?? []);
}

/** The same of anything that a model has refused, in words. */
export function unreadableBy(issues: readonly z.core.$ZodIssue[]): Problem {
  const [issue] = issues;
  const where = issue === undefined ? '' : showPath(issue.path);
  const long = issue?.code === 'too_big' && issue.origin === 'string';
  return long
    ? {
        code: 'too-long',
        path: where,
        message: `The text of "${where}" is longer than ${issue.maximum} characters.`,
        mend: 'Say it shorter.',
      }
    : {
        code: 'not-readable',
        path: where,
        message: `This could not be read back from the record${issue === undefined ? '' : ` (${issue.message})`}.`,
        mend: 'Say it in another way.',
      };
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
