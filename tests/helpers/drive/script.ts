import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import * as z from 'zod';
import type { Tree } from '../../../src/core/tree/model.ts';
import { Safeguard } from '../../../src/core/tree/shapes.ts';
import { blockOf } from '../../../src/core/tree/written/branches.ts';

/** Folder of the vehicles that the trees are driven with, one a file: `TREE-NAME.json`. */
const vehiclesFolder = 'tests/vehicles';

const Names = z.union([z.string(), z.array(z.string()).min(1)]);

/** What a check shows while a fault is there: text for all of them, or a text for each. */
export type Shows =
  | string
  | {
      readonly while: string | readonly string[];
      readonly then: Shows;
      readonly else?: Shows | undefined;
    }
  | { readonly [cause: string]: string };

const Shows: z.ZodType<Shows> = z.lazy(() =>
  z.union([
    z.string(),
    // oxlint-disable-next-line unicorn/no-thenable -- a word of the script, never awaited
    z.strictObject({ while: Names, then: Shows, else: Shows.optional() }),
    z.record(z.string(), z.string()),
  ]),
);

/**
 * A vehicle as a script: what is wrong with it, and what each check shows while that is so, by
 * physical sense. trees/README.md tells how one is written.
 */
export const Script = z.strictObject({
  tree: z.string(),
  vehicle: z.string(),
  facts: z.record(z.string(), z.string()).default({}),
  altitude: z.string().default('0 ft'),
  temperature: z.string().default('70 F'),
  /** Faults that are there, the one that hides the others first. */
  causes: z.array(z.string()).min(1),
  shows: z.record(z.string(), Shows),
  /** By the id of a block of branches: on which branch each of its faults is. Its probes follow from it. */
  on: z.record(z.string(), z.record(z.string(), z.string())).default({}),
  /** What checks show once nothing acts on them; left out, their first result. */
  sound: z.record(z.string(), z.string()).default({}),
  /** The trees that this one leads on to, in order: the drive goes on in each of them. */
  onto: z.array(z.string()).default([]),
  /** How the job ends: mended and proven, unless it says otherwise. */
  end: z
    .union([z.enum(['mended', 'inspection', 'unlisted']), z.templateLiteral(['tree:', z.string()])])
    .default('mended'),
  /** Steps on a master's list for this vehicle: checks, repairs and the proof. */
  master: z.int().min(1),
  /** Checks that may not be asked of it before the first repair. */
  never: z.array(z.string()).default([]),
  /** How it may not be put before the first repair, as a safeguard says it. */
  neverWith: Safeguard.shape.before.optional(),
  /** Most repairs of what is sound; left out, none by the advice and one on the tree's own way. */
  wrongAtMost: z.int().min(0).optional(),
});

export type Script = z.output<typeof Script>;

/** A script with the name of its file, less the ending. */
export type Vehicle = { readonly name: string; readonly script: Script };

/** Reads one vehicle's file; a file that is none is an error that says where. */
export function readVehicle(path: string): Vehicle {
  const read = Script.safeParse(JSON.parse(readFileSync(path, 'utf8')));
  if (!read.success) throw new Error(`${path}\n${z.prettifyError(read.error)}`);
  return { name: basename(path, '.json'), script: read.data };
}

/** All vehicles of the folder, by name. */
export const readVehicles = (): readonly Vehicle[] =>
  readdirSync(vehiclesFolder)
    .filter((file) => file.endsWith('.json'))
    .toSorted()
    .map((file) => readVehicle(join(vehiclesFolder, file)));

/** The faults that are still there after some repairs. */
export const leftOf = ({ causes }: Script, mended: readonly string[]): readonly string[] =>
  causes.filter((cause) => !mended.includes(cause));

/** What a check shows after some repairs; undefined where nothing is said: it shows its first result. */
export function shownBy(
  script: Script,
  check: string,
  mended: readonly string[],
  tree?: Tree,
): string | undefined {
  const probed = tree && probedBy(script, check, leftOf(script, mended), tree);
  if (probed !== undefined) return probed;
  const shows = Object.hasOwn(script.shows, check) ? script.shows[check] : undefined;
  const sound = Object.hasOwn(script.sound, check) ? script.sound[check] : undefined;
  return (shows === undefined ? undefined : actsIn(shows, leftOf(script, mended))) ?? sound;
}

/** What a probe of some branches shows: a fault that is left is on one of those it parts, or is not. */
function probedBy(
  { on }: Script,
  check: string,
  left: readonly string[],
  tree: Tree,
): string | undefined {
  const block = blockOf(tree.written, check);
  const branches = block === undefined ? undefined : tree.written?.branches?.[block]?.of;
  const places = block === undefined ? undefined : on[block];
  const asked = tree.checks[check];
  if (branches === undefined || places === undefined || asked === undefined) return undefined;
  if (!asked.results.some(({ id }) => id === 'elsewhere')) return undefined;
  // What is parted is read in the step, as a mechanic reads it.
  const steps = asked.how.join(' ');
  const isParted = left.some((cause) => {
    const branch = branches[places[cause] ?? ''];
    return branch !== undefined && steps.includes(branch.name);
  });
  return isParted ? 'here' : 'elsewhere';
}

/** What the faults that are left make of it; undefined where none of them acts on the check. */
function actsIn(shows: Shows, left: readonly string[]): string | undefined {
  if (typeof shows === 'string') return left.length > 0 ? shows : undefined;
  if (!isWhile(shows)) {
    const acting = left.find((cause) => Object.hasOwn(shows, cause));
    return acting === undefined ? undefined : shows[acting];
  }
  const waits = [shows.while].flat();
  if (waits.some((cause) => left.includes(cause))) return actsIn(shows.then, left);
  // A text under `else` holds without a fault as well: a used part that is not new.
  if (typeof shows.else === 'string') return shows.else;
  return shows.else && actsIn(shows.else, left);
}

type While = Extract<Shows, { then: unknown }>;

export const isWhile = (shows: Exclude<Shows, string>): shows is While => 'while' in shows;
