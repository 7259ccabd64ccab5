import * as z from 'zod';
import { closings } from '../session/record/closing.ts';

/** Why nothing of a session counts: what it says may not be what was done, or was done to no vehicle. */
const aparts = [
  'practice',
  'torn',
  'cut short',
  'altered',
  'made by another tool',
  'made by a newer version',
  'unreadable',
] as const;
export type Apart = (typeof aparts)[number];

/** A cause that a complaint was proven to be; several that were mended for one share its weight. */
const Proven = z.object({
  cause: z.string(),
  name: z.string(),
  /** The tree that named it: a complaint may have been led to another one. */
  tree: z.string(),
  weight: z.number(),
  /** Its share of the tree's odds, as the tree was written; left out where nobody gave odds. */
  share: z.number().optional(),
});

const JobComplaint = z.object({
  tree: z.string(),
  /** Every tree that it was walked by, that one first. */
  trees: z.array(z.string()),
  title: z.string(),
  /** Proven gone, its job open still, or closed with those words and no proof. */
  end: z.enum(['proven', 'open', ...closings]),
  /** Empty unless it is proven gone. */
  causes: z.array(Proven),
});

/** What a check took by the record, against what its tree says, in minutes. */
const Took = z.object({
  tree: z.string(),
  check: z.string(),
  name: z.string(),
  planned: z.number(),
  minutes: z.number(),
});

const Mended = z.object({
  tree: z.string(),
  cause: z.string(),
  name: z.string(),
  /** As they were typed. */
  parts: z.array(z.string()),
  /** Left out where the complaint's test was not made after it. */
  helped: z.boolean().optional(),
});

/** What one session comes to for those that come after it. */
export const Job = z.object({
  session: z.string(),
  opened: z.string(),
  vehicle: z.string(),
  apart: z.enum(aparts).optional(),
  complaints: z.array(JobComplaint),
  took: z.array(Took),
  mended: z.array(Mended),
});

export type Job = z.output<typeof Job>;
export type Proven = z.output<typeof Proven>;
export type JobComplaint = z.output<typeof JobComplaint>;
export type End = JobComplaint['end'];
export type Took = z.output<typeof Took>;
export type Mended = z.output<typeof Mended>;

/** A session of which nothing counts, by its name. */
export const jobApart = (
  session: string,
  apart: Apart,
  { opened = '', vehicle = '' }: Partial<Pick<Job, 'opened' | 'vehicle'>> = {},
): Job => ({ session, opened, vehicle, apart, complaints: [], took: [], mended: [] });
