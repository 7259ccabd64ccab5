import { groups } from './groups.ts';
import * as z from 'zod';
import { quantityNames } from '../trade/units/quantities.ts';
import { Chance, Id, Minutes, Text, When } from './basics.ts';
import { Counted } from './counted/counted.ts';
import { causeFeedFields, checkFeedFields, Feed } from './feed-model.ts';

export const Standing = z.strictObject({
  battery: z.enum(['connected', 'disconnected', 'meter-in-series']).optional(),
  key: z.enum(['off', 'acc', 'run', 'start']).optional(),
  engine: z.enum(['off', 'cranking', 'idling', 'fast-idle', 'revved', 'road']).optional(),
  heat: z.enum(['cold', 'warm', 'hot', 'hot-soaked']).optional(),
});

/** A limit taken from the vehicle's own book, and the general figure where the book is not known. */
export const BookLimit = z.strictObject({
  /** Name of the figure in `shop.json`'s `book`. */
  book: Id,
  plus: z.number().optional(),
  minus: z.number().optional(),
  times: z.number().positive().optional(),
  /** The limit on a vehicle whose book nobody has read, in the reading's unit. */
  else: z.number(),
});

export const Limit = z.union([z.number(), BookLimit]);

export const Result = z.strictObject({
  id: Id,
  label: Text,
  /** What was found, as a past phrase: "there was none", "{reading} was read". */
  told: Text.optional(),
  /** Lower end of the band, in the reading's unit; belongs to the band. Left out: no lower end. */
  from: Limit.optional(),
  /** Upper end of the band; does not belong to it. Left out: no upper end. */
  below: Limit.optional(),
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
  /** How far off such a reading may be, in its unit; else what is usual for the quantity. */
  uncertainty: z.number().min(0).optional(),
});

/** One of several readings of a check, typed on one line in their order. */
export const NamedReading = z.strictObject({
  ...Reading.omit({ standard: true }).shape,
  name: Text,
});

/** Our own words for how several readings become the one that is judged. */
export const judgeWords = ['difference', 'spread', 'lowest', 'each', 'share'] as const;

/**
 * How several readings become the one that is judged: first less second, highest less lowest,
 * the lowest, each by itself (the one furthest from healthy counts), or the share of the highest
 * that the lowest reaches, in percent. Any other word is the id of a trade figure that takes a
 * list of readings: its result is judged.
 */
const Judge = z.union([z.enum(judgeWords), Id]);

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
  /** Several readings taken in one go; `reading` then tells what they are judged as. */
  readings: z.array(NamedReading).min(1).max(16).optional(),
  /** One reading a cylinder: as many as the vehicle has. */
  each: z.enum(['cylinder']).optional(),
  judge: Judge.optional(),
  /** The check as a noun phrase: "the spark at a plug lead". */
  told: Text.optional(),
  /** Causes whose very part this check looks at. */
  'looks-at': z.array(Id).optional(),
  /** The passing state in which alone this check tells anything. */
  'only-while': Id.optional(),
  /** Passing states that are over once it was done. */
  spends: z.array(Id).optional(),
  /** Accesses that must be closed again for it. */
  shut: z.array(Id).optional(),
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
  /** What has to be bought: nothing, something small, something dear. */
  part: z.enum(['none', 'small', 'dear']).optional(),
  /** An act of minutes that needs no part and can be taken back: it may be tried on a suspicion. */
  try: z.boolean().optional(),
  /** Least chance at which it is advised, where the tree asks for more than the settings. */
  'sure-at': z.number().min(0.5).max(0.99).optional(),
  spends: z.array(Id).optional(),
  /** Checks to repeat once it is done, before the proof. */
  // oxlint-disable-next-line unicorn/no-thenable -- the tree format's word, in data that is never awaited
  then: z.array(Id).default([]),
});

export const Cause = z.strictObject({
  name: Text,
  /** The name in a sentence: "the fuel pump". */
  short: Text.optional(),
  where: Text.optional(),
  /** Share of all vehicles with this complaint, in parts of a hundred or of any other total. */
  odds: z.number().positive().max(1e6),
  shows: Text.optional(),
  /** Causes that may have brought this one about: mending it alone is not the end of the job. */
  because: z.array(Id).min(1).optional(),
  /** Named, this one is only handed to inspection, as all are where the whole tree sorts. Why. */
  triage: Text.optional(),
  /** The tree of a complaint of its own, where that finds what is behind it: named, the job goes on there. */
  tree: Id.optional(),
  repair: Repair,
  /** Where on the feed path it sits, and what it does there. */
  ...causeFeedFields,
  when: When.optional(),
  source: Text.optional(),
});

const engineNow = z.enum([...Standing.shape.engine.unwrap().options, 'running']);
const keyNow = Standing.shape.key.unwrap();
const batteryNow = Standing.shape.battery.unwrap();

/**
 * A check that must have shown one of these results before any step with such a standing, or before
 * the repair of such a cause.
 */
export const Safeguard = z.strictObject({
  /** Any of these makes a step wait; `running` stands for every way in which an engine runs. */
  before: z
    .strictObject({
      engine: z.array(engineNow).min(1).optional(),
      key: z.array(keyNow).min(1).optional(),
      battery: z.array(batteryNow).min(1).optional(),
      /** Causes that are not mended before: the link that a short would burn again. */
      repair: z.array(Id).min(1).optional(),
    })
    .refine((before) => Object.values(before).some((values) => values !== undefined), {
      message: 'name at least one of engine, key, battery, repair',
    }),
  check: Id,
  shows: z.array(Id).min(1),
  /** What is said where the check has shown something else, or somebody wants to go past it. */
  else: Text,
  when: When.optional(),
});

/** A state of the vehicle that passes: it refuses while hot, it stands under pressure. */
const PassingState = z.strictObject({
  /** The state in a sentence: "it refuses". */
  say: Text,
  /** Minutes to bring it back once it is over. */
  minutes: Minutes,
  /** States that are back with it: what stands cold from a night can be started cold as well. */
  with: z.array(Id).min(1).optional(),
});

export const Tree = z.strictObject({
  $schema: z.string().optional(),
  format: z.union([z.literal(1), z.literal(2)]),
  id: Id,
  title: Text,
  complaint: z.strictObject({
    say: Text,
    /** What else owners say for it: found by it, never told. */
    heard: z.array(Text).min(1).max(60).optional(),
    /** The check that shows the complaint; repeated after a repair it is the proof. */
    confirm: Id,
    /** Good tries in a row that prove an intermittent complaint cured. */
    tries: z.number().int().min(1).max(100).default(1),
  }),
  /** What the complaint is about: lists stand by it. */
  group: z.enum(groups).optional(),
  fits: z.array(Text).default([]),
  start: Id,
  /** This tree only sorts: whatever it names is handed to inspection, never mended or proven here. Why. */
  triage: Text.optional(),
  /** Checks to take before anything is disturbed, whatever the way. */
  baseline: z.array(Id).default([]),
  /** Chance that a second cause is there too. */
  alsoLikely: z.number().min(0).max(0.95).default(0.2),
  /** Odds that it is something not on this list, on the scale of the causes' odds. */
  unlisted: z.number().min(0).max(1e6).default(5),
  /** What forbids to crank, run, power or drive, until a check has shown otherwise. */
  safeguards: z.array(Safeguard).optional(),
  /** States that pass, by the name that `only-while` and `spends` use. */
  states: z.record(Id, PassingState).optional(),
  causes: z.record(Id, Cause),
  checks: z.record(Id, Check),
  /** The supply path as a circuit, where the complaint is an electrical one. */
  feed: Feed.optional(),
  /** The program's own word: whose jobs moved its odds and minutes, and what they were before. */
  counted: Counted.optional(),
});
