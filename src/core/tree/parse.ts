import type * as z from 'zod';
import { bad, good, type Parsed, type Problem } from '../problem.ts';
import { withPlaces } from './json/place.ts';
import { parseJson } from './json/read.ts';
import { checkLinks } from './links/links.ts';
import type { Tree } from './model.ts';
import { isOwn } from './own/bare.ts';
import { modelFor, settle } from './written/settle.ts';
import { rooted } from './roots.ts';
import { salvage, touching } from './salvage.ts';
import { shapeProblems } from './shape/words.ts';
import { Shop } from './shop.ts';

/**
 * A tree file made into a tree that the rest may trust, or everything that is wrong with it:
 * each with the file, the JSON path, the value and how to mend it.
 */
export function parseTree(text: string, file: string, shop?: Shop): Parsed<Tree> {
  const json = parseJson(text, file);
  if (json.kind === 'bad') return json;
  const tree = withPlaces(text, noOwn(parseTreeValue(json.value, file, shop), file));
  return tree.kind === 'bad' ? { kind: 'bad', problems: rooted(tree.problems) } : tree;
}

/** No file is called as the program calls the trees that it makes for complaints in own words. */
const noOwn = (parsed: Parsed<Tree>, file: string): Parsed<Tree> =>
  parsed.kind === 'good' && isOwn(parsed.value)
    ? bad({
        code: 'reserved-name',
        file,
        path: 'id',
        value: parsed.value.id,
        message: `"${parsed.value.id}" is the name of a complaint in own words: the program makes it.`,
        mend: 'Give the tree an id that does not begin with "own-".',
      })
    : parsed;

/** The same for a value that was JSON already, such as a tree kept in a session's header. */
export function parseTreeValue(value: unknown, file: string, shop?: Shop): Parsed<Tree> {
  const shaped = shapeTree(value, file);
  if (shaped.kind === 'bad')
    return bad(
      ...shaped.problems,
      ...problemsBeside(value, (tree) => checkLinks(tree, file, shop)),
    );
  const problems = checkLinks(shaped.value, file, shop);
  return problems.length > 0 ? { kind: 'bad', problems } : shaped;
}

/** A value of the shape that its format asks for, as a tree for a vehicle that nobody knows yet. */
export function shapeTree(value: unknown, file: string): Parsed<Tree> {
  const shaped = shape(modelFor(value), value, file);
  return shaped.kind === 'bad' ? shaped : good(settle(shaped.value, {}));
}

/** What else is wrong with a tree of the wrong shape, away from the places where its shape is wrong. */
export function problemsBeside(
  value: unknown,
  find: (tree: Tree) => readonly Problem[],
): readonly Problem[] {
  const rest = salvage(value);
  if (rest === undefined) return [];
  const isTouched = touching(rest);
  return find(rest.tree).filter((problem) => !isTouched(problem));
}

export function parseShop(text: string, file: string): Parsed<Shop> {
  const json = parseJson(text, file);
  return json.kind === 'bad' ? json : withPlaces(text, shape(Shop, json.value, file));
}

/** Holds a value against a zod model and turns what zod says into our problems. */
export function shape<T>(model: z.ZodType<T>, value: unknown, file: string): Parsed<T> {
  const result = model.safeParse(value, { reportInput: true });
  if (result.success) return good(result.data);
  return bad(...shapeProblems({ model, whole: value }, result.error.issues, file));
}
