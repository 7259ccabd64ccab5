import * as z from 'zod';
import { Chance, Id, Minutes, Text, When } from './basics.ts';

const Volts = z.number().min(-1000).max(1000);
const Milliohm = z.number().positive().max(1e9);
/** Spread of a log-normal: standard deviation of the natural logarithm. */
const Sigma = z.number().min(0).max(5);

/** A place where a probe fits. */
const Station = z.strictObject({
  name: Text,
  /** One word or two, for a line that holds many stations. */
  short: z.string().min(1).max(16).optional(),
  side: z.enum(['supply', 'ground']),
  /** Minutes to get a probe there, once its access is open. */
  minutes: Minutes,
  access: z.array(Id).default([]),
  when: When.optional(),
});

/** American wire gauge as a number (0 is 1/0, -1 is 2/0, -2 is 3/0, -3 is 4/0) and length. */
const Wire = z.strictObject({
  gauge: z.number().int().min(-3).max(40),
  metres: z.number().positive().max(1000),
});

/** A joint, a contact, or a part in the line such as a ballast; `sigma` when it is closer than joints are. */
const Joint = z.strictObject({ name: Text, milliohm: Milliohm, sigma: Sigma.optional() });

/** How bad a bad one is: log-normal about the median, and the share of bad ones that are open. */
export const BadJoint = z.strictObject({
  milliohm: Milliohm,
  sigma: Sigma,
  open: Chance.default(0),
});

/** Conductor and joints between two stations. No two spans join the same pair of stations. */
export const Span = z.strictObject({
  from: Id,
  to: Id,
  name: Text,
  wire: Wire.optional(),
  joints: z.array(Joint).default([]),
  /** What a fault here usually is; a cause may say otherwise. */
  bad: BadJoint.optional(),
  /** Ohms that still carry when this span is open, such as control cables beside a body strap. */
  leak: z.number().positive().optional(),
  /** Conducts only while this is in a check's `load`: a key position, a relay. */
  switch: Id.optional(),
  /** A relay's contact: it conducts while its coil, which is a load, gets what pulls it in. */
  relay: z.strictObject({ coil: Id, pulls: Volts.positive() }).optional(),
  when: When.optional(),
});

/** What a load takes: amps or watts at a voltage, or ohms. All act as a resistance. */
const Takes = z.union([
  z.strictObject({ amps: z.number().positive(), at: Volts.positive() }),
  z.strictObject({ watts: z.number().positive(), at: Volts.positive() }),
  z.strictObject({ ohms: z.number().positive() }),
]);

export const Load = z.strictObject({
  id: Id,
  name: Text,
  from: Id,
  to: Id,
  takes: Takes,
  /** A lamp: cold, it has a tenth of its hot resistance. */
  filament: z.boolean().default(false),
  /** Cannot be switched off by the driver. */
  always: z.boolean().default(false),
  /** Goes with another load's name in a check's `load`, as two lamps go with one switch. */
  with: Id.optional(),
  when: When.optional(),
});

/** A charging machine: gives amps one way only, at most `amps`; runs while a check's `load` names it. */
export const Machine = z.strictObject({
  id: Id,
  name: Text,
  from: Id,
  to: Id,
  volts: Volts.positive(),
  milliohm: Milliohm,
  amps: z.number().positive(),
  /** The load that is its field: without current there it gives nothing. */
  field: Id.optional(),
});

/** On a positive-ground vehicle the two posts, like the two leads of the meter, change places. */
const FeedBattery = z.strictObject({
  positive: Id,
  /** The black lead stands here unless a check says otherwise. */
  negative: Id,
  volts: Volts.positive(),
  milliohm: Milliohm,
  /** Volts and inner milliohms while it is being charged. */
  charging: z.strictObject({ volts: Volts.positive(), milliohm: Milliohm }).optional(),
});

/** How far sound vehicles differ: standard deviations, the log ones of the natural logarithm. */
const FeedSpread = z.strictObject({
  volts: z.number().min(0).default(0.1),
  joints: Sigma.default(0.4),
  loads: Sigma.default(0.1),
  /** The meter's own error, in volts and (for ohm checks) in ohms. */
  meter: z.number().min(0).default(0.03),
  meterOhms: z.number().min(0).default(0.1),
});

/** The supply path of the vehicle as a circuit. */
export const Feed = z.strictObject({
  battery: FeedBattery,
  stations: z.record(Id, Station),
  spans: z.array(Span).min(1),
  loads: z.array(Load).min(1),
  machines: z.array(Machine).default([]),
  /** Loads, switches and machines that are on while the complaint shows. */
  on: z.array(Id).optional(),
  spread: FeedSpread.prefault({}),
  source: Text.optional(),
});

/** What a cause does to the path. `open`, `resistive` and `bad` (either) go by the span's own `bad`. */
export const Fault = z.union([
  z.enum(['open', 'resistive', 'bad']),
  BadJoint,
  z.strictObject({
    battery: z.strictObject({
      volts: Volts.positive(),
      spread: z.number().min(0),
      milliohm: Milliohm,
      sigma: Sigma,
    }),
  }),
  z.strictObject({ load: Id, ohms: z.number().positive(), sigma: Sigma.default(0) }),
]);

/** Fields for a cause; `span` names the two stations, in either order. */
export const causeFeedFields = {
  span: z.tuple([Id, Id]).optional(),
  fault: Fault.optional(),
};

/** What a check reads on the path. */
export const CheckFeed = z.strictObject({
  /** Where the red lead goes. */
  station: Id,
  /** Loads, switches and machines that are on. */
  load: z.array(Id).default([]),
  /** Where the black lead goes: the battery's negative station unless named. */
  against: Id.optional(),
  /** `ohms` is read with the battery's ground lead off. */
  reads: z.enum(['volts', 'ohms']).default('volts'),
});

/** Field for a check. */
export const checkFeedFields = { feed: CheckFeed.optional() };

export type Feed = z.output<typeof Feed>;
type Station = z.output<typeof Station>;
type Wire = z.output<typeof Wire>;
export type Span = z.output<typeof Span>;
export type BadJoint = z.output<typeof BadJoint>;
export type Load = z.output<typeof Load>;
export type Machine = z.output<typeof Machine>;
export type Fault = z.output<typeof Fault>;
export type CheckFeed = z.output<typeof CheckFeed>;
