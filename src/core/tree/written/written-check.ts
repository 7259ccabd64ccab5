import * as z from 'zod';
import { Chance, Id, Minutes, Text, When } from '../basics.ts';
import { Check, Limit, Result } from '../shapes.ts';
import { varying } from './varying.ts';

/** Our words for how often, and the percent that each stands for: common practice, no source. */
export const oftenWords = { always: 97, mostly: 80, half: 50, seldom: 15, never: 0 } as const;

const Often = z.enum(['always', 'mostly', 'half', 'seldom', 'never']);
const Percent = z.number().min(0).max(100);

/** How often each result shows, by its id; what is left out of a hundred shows the healthy one. */
export const Shares = z.record(Id, z.union([Percent, Often]));

/** This result for certain: the complaint's own test alone, where the cause cannot show otherwise. */
export const Certain = z.strictObject({ always: Id });

/** Where a result leads: the first that holds. */
export const Leads = z
  .array(
    z.union([
      z.strictObject({ if: z.record(Id, z.array(Id).min(1)), go: Text }),
      z.strictObject({ when: When, go: Text }),
      Text,
    ]),
  )
  .min(1);

export const WrittenResult = Result.extend({
  /** A word or two; the limits add the numbers. */
  label: Text.optional(),
  /** `CHECK`, `cause:ID`, `tree:ID` or `stop`; or a list of which the first that holds is taken. */
  next: z.union([Text, Leads]).optional(),
});

export const WrittenCheck = Check.extend({
  how: varying(z.array(Text)).default([]),
  healthy: varying(Text).optional(),
  minutes: varying(Minutes),
  results: z.array(WrittenResult).min(2).max(9),
  /** Where one result ends and the next begins, in the reading's unit: one fewer than results. */
  limits: varying(z.array(Limit).min(1).max(8)).optional(),
  /** The results from the lowest reading up, where the healthiest is not at an end. */
  bands: z.array(Id).min(2).max(9).optional(),
  /** Of a hundred vehicles with none of the causes, how many show each result; a number: any bad one. */
  sound: varying(z.union([Shares, Percent])).optional(),
  /** Of a hundred vehicles with that cause alone, how many show each result. */
  'shows-with': z.record(Id, varying(z.union([Certain, Shares]))).optional(),
  background: z.array(Chance).optional(),
});

export type WrittenCheck = z.output<typeof WrittenCheck>;
export type WrittenResult = z.output<typeof WrittenResult>;
export type Shares = z.output<typeof Shares>;
export type Certain = z.output<typeof Certain>;
