import { quantities, quantityNames } from '../../trade/units/quantities.ts';
import type { Shop } from '../shop.ts';
import { shopMeanings } from '../shop-search.ts';

/** A piece of a JSON Schema. */
export type Node = Readonly<Record<string, unknown>>;

const id = '[a-z0-9][a-z0-9-]{0,63}';

/** Refers to one of the definitions that stand once for the whole schema. */
export const refer = (name: string): Node => ({ $ref: `#/$defs/${name}` });

/**
 * What stands once in the schema and is referred to: ids of every kind, those of the shop as lists
 * with their meaning, so that an editor offers them.
 */
export function definitions(shop: Shop): Node {
  return {
    id: {
      type: 'string',
      pattern: `^(?!(?:constructor|prototype)$)${id}$`,
      description: 'A name of yours: lower-case letters, digits and hyphens, 64 at most.',
    },
    caution: listed('caution', shop),
    tool: listed('tool', shop),
    access: listed('access', shop),
    book: listed('book', shop),
    when: whenOf(shop),
    units: { allOf: unitRules() },
    next: {
      type: 'string',
      pattern: `^(?:stop|(?:cause:|tree:)?${id})$`,
      description: 'A check’s id, cause:ID, tree:ID or stop.',
      examples: ['fuse-look', 'cause:fuse', 'tree:charging', 'stop'],
    },
  };
}

/** The ids of one kind of entry, each with its meaning; any id where the shop has none. */
function listed(kind: 'caution' | 'tool' | 'access' | 'book', shop: Shop): Node {
  const entries = shopMeanings(shop).filter((one) => one.kind === kind);
  if (entries.length === 0) return refer('id');
  return {
    enum: entries.map((one) => one.id),
    enumDescriptions: entries.map(({ meaning }) => meaning),
  };
}

/** Conditions: facts of the shop, with one or several of their values. */
function whenOf({ facts }: Shop): Node {
  const value = (values: Readonly<Record<string, string>>): Node => ({
    enum: Object.keys(values),
    enumDescriptions: Object.values(values),
  });
  return {
    type: 'object',
    properties: Object.fromEntries(
      Object.entries(facts).map(([fact, { ask, values }]) => [
        fact,
        {
          description: ask,
          anyOf: [value(values), { type: 'array', minItems: 1, items: value(values) }],
        },
      ]),
    ),
    additionalProperties: false,
    examples: [{ transmission: 'automatic' }],
  };
}

/** Of each quantity its own units only, in every spelling that is read. */
const unitRules = (): readonly Node[] =>
  quantityNames.map((quantity) => ({
    if: { properties: { quantity: { const: quantity } }, required: ['quantity'] },
    // oxlint-disable-next-line unicorn/no-thenable -- a word of JSON Schema, never awaited
    then: {
      properties: {
        unit: {
          enum: [...new Set(quantities[quantity].units.flatMap((row) => [row.id, ...row.aliases]))],
        },
      },
    },
  }));
