import type * as z from 'zod';
import { showPath, type Problem } from '../problem.ts';
import type { Tree } from './model.ts';
import { modelFor, settle } from './written/settle.ts';
import { mendedShape } from './shape/mended.ts';

/** A tree of the wrong shape, with something harmless where it is wrong. */
type Salvaged = {
  readonly tree: Tree;
  /** JSON paths of what was replaced: what is said about these places says nothing of the file. */
  readonly replaced: readonly string[];
  /** What stood there: a name from here that is missed elsewhere is missed for no other reason. */
  readonly lost: readonly unknown[];
};

/** Replacing one thing can bring the next to light; a file that needs more rounds is given up. */
const mostRounds = 5;

const repair = { do: ['x'], minutes: 1 };
const cause = { name: 'x', odds: 1, repair };
const results = [
  { id: 'x', label: 'x' },
  { id: 'y', label: 'y' },
];
const check = { kind: 'look', ask: 'x', minutes: 1, results };

/** What may stand under a key that a tree cannot do without. */
const harmless: Readonly<Record<string, unknown>> = {
  format: 1,
  id: 'x',
  title: 'x',
  say: 'x',
  confirm: 'x',
  start: 'x',
  label: 'x',
  name: 'x',
  kind: 'look',
  ask: 'x',
  minutes: 1,
  odds: 1,
  do: ['x'],
  plausible: [0, 1],
  unit: 'V',
  quantity: 'voltage',
  causes: {},
  checks: {},
  results,
  repair,
  complaint: { say: 'x', confirm: 'x' },
};

/**
 * Puts something harmless where a tree has the wrong shape, so that the rest can be looked at too
 * and all that is wrong is told at once. Undefined where too much is wrong.
 */
export function salvage(value: unknown): Salvaged | undefined {
  const rest = mendedShape(modelFor(value), value);
  const replaced = new Set<string>();
  const lost: unknown[] = [];
  for (let round = 0; round < mostRounds; round += 1) {
    const parsed = modelFor(rest).safeParse(rest);
    if (parsed.success) return { tree: settle(parsed.data, {}), replaced: [...replaced], lost };
    for (const issue of parsed.error.issues)
      for (const path of placesOf(issue, round)) {
        if (path.length === 0) return undefined;
        replaced.add(showPath(path));
        // What has no usable name is missed by it, wherever else it is named.
        lost.push(replace(rest, path), path.length === 2 ? path[1] : undefined);
      }
  }
  return undefined;
}

/** Where to replace: unknown keys each; later rounds take what holds the place as well. */
function placesOf(issue: z.core.$ZodIssue, round: number): readonly PropertyKey[][] {
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => [...issue.path, key]);
  return [issue.path.slice(0, Math.max(1, issue.path.length - Math.floor(round / 2)))];
}

/** @returns what stood there */
function replace(whole: unknown, path: readonly PropertyKey[]): unknown {
  const key = path.at(-1);
  const owner = path
    .slice(0, -1)
    .reduce<unknown>(
      (part, step) => (isBranch(part) && Object.hasOwn(part, step) ? part[step] : undefined),
      whole,
    );
  if (!isBranch(owner) || key === undefined) return undefined;
  const stood = owner[key];
  const stand = standIn(path);
  if (stand === undefined) delete owner[key];
  else owner[key] = JSON.parse(JSON.stringify(stand));
  return stood;
}

function standIn(path: readonly PropertyKey[]): unknown {
  const key = path.at(-1);
  if (path.length === 2 && path[0] === 'causes') return cause;
  if (path.length === 2 && path[0] === 'checks') return check;
  if (typeof key === 'number')
    return path.includes('points') || path.includes('background') ? 0 : 'x';
  return Object.hasOwn(harmless, String(key)) ? harmless[String(key)] : undefined;
}

const isBranch = (value: unknown): value is Record<PropertyKey, unknown> =>
  typeof value === 'object' && value !== null;

/** Tells whether a place, or the name missed there, has to do with something that was replaced. */
export function touching({ replaced, lost }: Salvaged) {
  const own = new Set(replaced);
  const around = new Set(replaced.flatMap(holding));
  const gone = JSON.stringify(lost);
  const isTouched = (place: string): boolean =>
    around.has(place) || holding(place).some((one) => own.has(one));
  return ({ path = '', value }: Pick<Problem, 'path' | 'value'>): boolean => {
    const named = value !== undefined && gone.includes(JSON.stringify(value));
    const gate = /\.after\.([^.[]+)$/.exec(path)?.[1];
    return named || isTouched(path) || (gate !== undefined && isTouched(`checks.${gate}.results`));
  };
}

/** A place and all that hold it: `a.b[0]` is held by `a.b` and by `a`. */
const holding = (place: string): readonly string[] => [
  ...Array.from(place.matchAll(/[.[]/g), ({ index }) => place.slice(0, index)),
  place,
];
