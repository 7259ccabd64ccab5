import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { freeText, programText } from '../free-text.ts';

/** Words that a person typed. */
export const Text = freeText();
/** What somebody is called: initials will do. */
export const Name = freeText(200);
/** The number of an event. */
export const Count = z.number().int().min(0);
/** The number on a bag: each is used once in a job. */
export const Bag = z.number().int().min(1).max(9999);

/** A value with the unit it was given in; `typed` is what the person typed. */
export const Amount = z.object({
  value: z.number(),
  unit: programText(20),
  typed: programText(200).optional(),
});

/** When the tool learned of a thing, four ways: see DEVELOPERS.md, "Time". */
export const Stamp = z.object({
  /** Wall time, ISO 8601 with offset. */
  at: z.string().max(40),
  /** Which opening of the file this belongs to. */
  run: z.string().max(40),
  /** Milliseconds since that opening; stops while the machine sleeps. */
  mono: z.number(),
  /** Seconds the machine has been up; goes on while it sleeps. */
  up: z.number(),
});

/** A trade figure as it was worked out, with what it rests on. */
export const Worked = z.object({
  figure: programText(60),
  inputs: z.record(z.string(), z.object({ value: z.unknown(), unit: programText(20) })),
  outputs: z.record(z.string(), z.object({ value: z.number(), unit: programText(20) })),
  verdict: programText().optional(),
  source: programText(),
  mark: programText(),
});

/** When it was, where that was not when it was written down; the record holds it with its offset. */
export const told = { told: programText(40).optional() };
/** What a remark is said of, by its id. */
export const about = { about: Id.optional() };
/** A check, a cause, or the number of the event that tells of a part taken off: `part:12`. */
export const Subject = z.union([Id, z.string().regex(/^part:[1-9]\d{0,8}$/)]);
/** Safeguards of the tree that were passed, by the checks which should have come first, and why. */
export const despite = {
  despite: z.object({ checks: z.array(Id).max(100), why: Text }).optional(),
};
/** What is said of a cause can have a safeguard passed before it, and a time of its own. */
export const ofCause = { ...despite, ...told };

/** What a finding, an unsure answer or a proof says of its check. */
export const shown = {
  check: Id,
  /** The result, or the healthier end of the two it may be. */
  result: Id,
  /** The other end, when the mechanic could only say "one of these". */
  orResult: Id.optional(),
  /** What was judged: the reading as it was taken, or what several come to. */
  reading: Amount.optional(),
  /** What the meter showed in place of a number, as typed: its range was exceeded. */
  beyond: programText(200).optional(),
  /** Each of several readings as it was taken, in the order of its check. */
  readings: z
    .array(z.union([Amount, z.object({ beyond: programText(20) })]))
    .max(200)
    .optional(),
  /** The reading brought to reference conditions, where its check asks for that. */
  standard: Amount.extend({ under: programText() }).optional(),
  /** The reading lies outside the plausible range and was insisted on. */
  insisted: z.boolean().optional(),
  /** What exactly was found, in the person's own words. */
  words: Text.optional(),
};

/**
 * What a finding that is worse than the one before it comes from, as the mechanic says: the earlier
 * one was misread, the later one was, the repair between brought it, or it comes and goes.
 */
export const Settling = z.enum(['misread-then', 'misread-now', 'new-since', 'comes-and-goes']);
export type Settling = z.output<typeof Settling>;

/** How soon something left to do must be done, the most urgent first. */
export const urgencies = ['unsafe', 'soon', 'noticed'] as const;

export const Conditions = z.object({
  altitude: Amount.optional(),
  temperature: Amount.optional(),
});

export type Stamp = z.output<typeof Stamp>;
export type Amount = z.output<typeof Amount>;
export type Conditions = z.output<typeof Conditions>;
