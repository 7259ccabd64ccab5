import * as z from 'zod';
import type { Problem } from '../problem.ts';
import { quantityNames } from '../trade/units/quantities.ts';
import { Id } from './basics.ts';
import { Standing } from './shapes.ts';
import type { Tree } from './model.ts';

const Text = z.string().min(1).max(4000);

/** One way to be hurt, told before the step, and who knows more. */
export const Caution = z.strictObject({
  hazard: Text,
  text: Text,
  when: Text,
  defer: Text.optional(),
  /** The worst it does to a person; what is not said `harms`. What kills is read first. */
  worst: z.enum(['kills', 'maims', 'harms']).optional(),
  /** The mechanic must say that it was read before the step's answer is taken. */
  acknowledge: z.boolean().default(false),
});

const Access = z.strictObject({
  name: Text,
  open: z.number().min(0).max(1000),
  close: z.number().min(0).max(1000),
  /** How the vehicle stands while it is opened, whatever the step behind it wants; in its minutes. */
  standing: Standing.optional(),
  /** The name in a sentence: "the kick panel". */
  told: Text.optional(),
});

/** Something to note of the vehicle before anything on it is disturbed, in any job. */
const BaselineItem = z.strictObject({
  say: Text,
  /** How the vehicle stands for it: a safeguard that is shut before that holds it back. */
  standing: Standing.optional(),
  /** Trees whose complaint does not allow it. */
  'not-for': z.array(Id).default([]),
});

/** What trees share: kept once, in `shop.json` beside them. */
export const Shop = z.strictObject({
  $schema: z.string().optional(),
  format: z.literal(1),
  cautions: z.record(Id, Caution).default({}),
  tools: z.record(Id, z.strictObject({ name: Text, use: Text.optional() })).default({}),
  accesses: z.record(Id, Access).default({}),
  sources: z
    .record(Id, z.strictObject({ title: Text, address: Text.optional(), mark: Text }))
    .default({}),
  /** What to note before anything is disturbed, in this order. */
  baseline: z.record(Id, BaselineItem).default({}),
  /** Facts about the vehicle a tree may ask for, each with its allowed values and their wording. */
  facts: z
    .record(
      Id,
      z.strictObject({
        /** What an account calls it, where the id does not read as words. */
        name: Text.optional(),
        ask: Text,
        values: z.record(Id, Text),
      }),
    )
    .default({}),
  /** Figures of the vehicle's own book that a tree's limits may stand on. */
  book: z
    .record(
      Id,
      z.strictObject({ name: Text, quantity: z.enum(quantityNames), unit: z.string().max(20) }),
    )
    .default({}),
});

export type Shop = z.output<typeof Shop>;
export type Caution = z.output<typeof Caution>;

export const emptyShop: Shop = Shop.parse({ format: 1 });

/** The trees of a folder, the shop they share, and what is wrong with those that could not be read. */
export type Library = {
  readonly trees: readonly Tree[];
  readonly shop: Shop;
  readonly problems: readonly Problem[];
};
