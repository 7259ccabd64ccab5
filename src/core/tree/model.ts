import * as z from 'zod';
import { quantityNames } from '../trade/units/quantities.ts';
import { Chance, Id, Minutes, Text, When } from './basics.ts';
import { causeFeedFields, checkFeedFields, Feed } from './feed-model.ts';

export const Standing = z.strictObject({
  battery: z.enum(['connected', 'disconnected', 'meter-in-series']).optional(),
  key: z.enum(['off', 'acc', 'run', 'start']).optional(),
  engine: z.enum(['off', 'cranking', 'idling', 'fast-idle', 'revved', 'road']).optional(),
  heat: z.enum(['cold', 'warm', 'hot', 'hot-soaked']).optional(),
});

export const Result = z.strictObject({
  id: Id,
  label: Text,
  /** Lower end of the band, in the reading's unit; belongs to the band. Left out: no lower end. */
  from: z.number().optional(),
  /** Upper end of the band; does not belong to it. Left out: no upper end. */
  below: z.number().optional(),
  /** `CHECK`, `cause:ID`, `tree:ID` or `stop`. */
  next: Text.optional(),
  /** Why the way stops here, or why another tree takes over. */
  reason: Text.optional(),
  when: When.optional(),
});

export const Reading = z.strictObject({
  quantity: z.enum(quantityNames),
  unit: z.string().min(1).max(20),
  plausible: z.tuple([z.number(), z.number()]),
  /** Id of the figure that brings the reading to reference conditions before it is judged. */
  standard: Id.optional(),
});

export const Check = z.strictObject({
  kind: z.enum(['look', 'listen', 'feel', 'measure', 'try', 'ask']),
  ask: Text,
  how: z.array(Text).default([]),
  healthy: Text.optional(),
  minutes: Minutes,
  access: z.array(Id).default([]),
  standing: Standing.default({}),
  cautions: z.array(Id).default([]),
  tools: z.array(Id).default([]),
  reading: Reading.optional(),
  /** Healthiest first. */
  results: z.array(Result).min(2).max(9),
  /** P(result) on a vehicle with none of the causes. The complaint's own check needs none. */
  background: z.array(Chance).optional(),
  /** P(result | that cause alone is there), by cause id or `unlisted`. */
  points: z.record(Id, z.array(Chance)).default({}),
  /** Checks that must have shown one of these results first. */
  after: z.record(Id, z.array(Id).min(1)).optional(),
  /** Checks with one name here show one and the same thing. */
  same: Id.optional(),
  /** What it reads on the feed path; its background and points are then worked out unless typed. */
  ...checkFeedFields,
  when: When.optional(),
  source: Text.optional(),
});

export const Repair = z.strictObject({
  do: z.array(Text).min(1),
  minutes: Minutes,
  access: z.array(Id).default([]),
  standing: Standing.default({}),
  cautions: z.array(Id).default([]),
  tools: z.array(Id).default([]),
  parts: z.array(Text).default([]),
  /** Checks to repeat once it is done, before the proof. */
  // oxlint-disable-next-line unicorn/no-thenable -- the tree format's word, in data that is never awaited
  then: z.array(Id).default([]),
});

export const Cause = z.strictObject({
  name: Text,
  where: Text.optional(),
  /** Share of all vehicles with this complaint, in parts of a hundred or of any other total. */
  odds: z.number().positive().max(1e6),
  shows: Text.optional(),
  repair: Repair,
  /** Where on the feed path it sits, and what it does there. */
  ...causeFeedFields,
  when: When.optional(),
  source: Text.optional(),
});

export const Tree = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal(1),
  id: Id,
  title: Text,
  complaint: z.strictObject({
    say: Text,
    /** The check that shows the complaint; repeated after a repair it is the proof. */
    confirm: Id,
    /** Good tries in a row that prove an intermittent complaint cured. */
    tries: z.number().int().min(1).max(100).default(1),
  }),
  fits: z.array(Text).default([]),
  start: Id,
  /** Checks to take before anything is disturbed, whatever the way. */
  baseline: z.array(Id).default([]),
  /** Chance that a second cause is there too. */
  alsoLikely: z.number().min(0).max(0.95).default(0.2),
  /** Odds that it is something not on this list, on the scale of the causes' odds. */
  unlisted: z.number().min(0).max(1e6).default(5),
  causes: z.record(Id, Cause),
  checks: z.record(Id, Check),
  /** The supply path as a circuit, where the complaint is an electrical one. */
  feed: Feed.optional(),
});

export type Tree = z.output<typeof Tree>;
export type Cause = z.output<typeof Cause>;
export type Repair = z.output<typeof Repair>;
export type Check = z.output<typeof Check>;
export type Result = z.output<typeof Result>;
export type Reading = z.output<typeof Reading>;
export type Standing = z.output<typeof Standing>;
