import * as z from 'zod';
import type { Shop } from '../shop.ts';
import { Written } from '../written/written.ts';
import { feedWords } from './feed-words.ts';
import { definitions, refer, type Node } from './names.ts';
import { keyRules, listKeys, mostOf, neededKeys, objectRules, snippets } from './rules.ts';
import { treeWords } from './words.ts';

const made =
  'Made from the models in src/core and from shop.json by "npm run schema", or by "droplight trees schema" with a shop of your own; change those, not this.';

/**
 * JSON Schema of a tree file, for editors that complete and check while one types: the shape as the
 * model has it, a word on every key, the ids that the shop offers, and of what `trees check` asks as
 * much as a schema can say.
 */
export function treeSchema(shop: Shop): Node {
  // What the program itself writes into the tree of a session is no author's to type.
  const shape: Node = z.toJSONSchema(Written.omit({ counted: true }), { io: 'input' });
  return {
    ...told(shape, 'tree'),
    title: 'Droplight symptom tree, format 2',
    description: made,
    $defs: definitions(shop),
  };
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The keys of a schema that hold others for the same place in a file. */
const sides = ['items', 'anyOf', 'oneOf', 'allOf', 'prefixItems'];

/** A piece of the schema with what is to be said of it; `owner` is the key of the tree it stands under. */
function told(node: Node, owner: string): Node {
  if (isId(node)) return refer('id');
  const { propertyNames, ...rest } = node;
  const made: Record<string, unknown> = { ...rest };
  if (isNode(propertyNames)) made['propertyNames'] = told(propertyNames, owner);
  for (const side of sides) {
    const held = node[side];
    if (Array.isArray(held)) made[side] = held.map((one) => (isNode(one) ? told(one, owner) : one));
    else if (isNode(held)) made[side] = told(held, owner);
  }
  const { properties, additionalProperties } = node;
  if (isNode(additionalProperties)) {
    made['additionalProperties'] = told(additionalProperties, owner);
    if (snippets[owner] !== undefined) made['defaultSnippets'] = snippets[owner];
  }
  if (!isNode(properties)) return made;
  made['properties'] = Object.fromEntries(
    Object.entries(properties).map(([key, value]) => [key, toldKey(value, owner, key)]),
  );
  return { ...made, ...rulesFor(owner, node) };
}

/** The rules of an object; what only carries alternatives (`when`, `is`) has none. */
function rulesFor(owner: string, { properties, required }: Node): Node {
  if (!isNode(properties) || 'is' in properties || 'always' in properties) return {};
  const keys = Array.isArray(required) ? required : [];
  return { ...objectRules[owner], required: [...keys, ...(neededKeys[owner] ?? [])] };
}

const isId = ({ type, pattern }: Node): boolean =>
  type === 'string' && typeof pattern === 'string' && pattern.includes('[a-z0-9][a-z0-9-]{0,63}');

/** One key of an object: its word, its rule, and the list its ids are taken from. */
function toldKey(value: unknown, owner: string, key: string): Node {
  const place = `${owner}.${key}`;
  const description = wordFor(owner, key);
  const said = description === undefined ? {} : { description };
  if (!isNode(value)) return said;
  if (key === 'when') return { ...refer('when'), ...said };
  if (key === 'book') return { ...refer('book'), ...said };
  if (key === 'go') return { ...refer('next'), ...said };
  if (leading.has(place)) return { ...leads(told(value, key)), ...said };
  const list = listKeys[key];
  const most = mostOf[place];
  const inner = told(value, key);
  const snip = key === 'results' ? { items: withSnippets(inner['items']) } : {};
  const items = list === undefined ? snip : { items: refer(list) };
  return {
    ...(most === undefined ? inner : bounded(inner, most)),
    ...items,
    ...keyRules[place],
    ...said,
  };
}

const wordFor = (owner: string, key: string): string | undefined =>
  [`${owner}.${key}`, `${likeOf[owner]}.${key}`, key]
    .map((place) => treeWords[place] ?? feedWords[place])
    .find((word) => word !== undefined);

/** Keys whose value has the keys of a check, without being one of the tree's own. */
const likeOf: Readonly<Record<string, string>> = { look: 'checks', probe: 'checks' };

/** Keys that say where the way goes on. */
const leading: ReadonlySet<string> = new Set(['results.next', 'of.next', 'none.next']);

const withSnippets = (items: unknown): unknown =>
  isNode(items) ? { ...items, defaultSnippets: snippets['results'] } : items;

/** Where a result leads: wherever the model takes a text, what can be a way. */
function leads(node: Node): Node {
  if (node['type'] === 'string') return refer('next');
  const made: Record<string, unknown> = { ...node };
  for (const side of ['items', 'anyOf']) {
    const held = node[side];
    if (Array.isArray(held)) made[side] = held.map((one) => (isNode(one) ? leads(one) : one));
    else if (isNode(held)) made[side] = leads(held);
  }
  return made;
}

/** The same with no number in it above this. */
function bounded(node: Node, most: number): Node {
  if (node['type'] === 'number') return { ...node, maximum: most };
  const made: Record<string, unknown> = { ...node };
  for (const [key, held] of Object.entries(node))
    if (Array.isArray(held))
      made[key] = held.map((one) => (isNode(one) ? bounded(one, most) : one));
    else if (isNode(held)) made[key] = bounded(held, most);
  return made;
}
