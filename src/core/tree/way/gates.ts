import type { Known } from './known.ts';
import type { Safeguard, Standing, Tree } from '../model.ts';

/** A check that must have shown one of some results before a step, and why. */
export type Gate =
  | {
      /** The step means nothing before. */
      readonly kind: 'after';
      readonly check: string;
      readonly results: readonly string[];
    }
  | {
      /** The step can hurt before. */
      readonly kind: 'safeguard';
      readonly check: string;
      readonly results: readonly string[];
      readonly otherwise: string;
    };

const running: ReadonlySet<string> = new Set(['idling', 'fast-idle', 'revved', 'road']);

/**
 * Whether a step with this standing is one that the safeguard comes before. A key turned to START is
 * an engine cranked, whatever it is meant to show.
 */
function guards({ before }: Safeguard, { engine, key, battery }: Standing): boolean {
  const byEngine = before.engine?.some(
    (one) =>
      one === engine ||
      (one === 'running' && engine !== undefined && running.has(engine)) ||
      (one === 'cranking' && key === 'start'),
  );
  return (
    byEngine === true ||
    (key !== undefined && before.key?.includes(key) === true) ||
    (battery !== undefined && before.battery?.includes(battery) === true)
  );
}

/** The safeguards of a tree that hold a step back, as its gates. */
const gatesWhere = (tree: Tree, holds: (safeguard: Safeguard) => boolean): readonly Gate[] =>
  (tree.safeguards ?? [])
    .filter((safeguard) => holds(safeguard) && Object.hasOwn(tree.checks, safeguard.check))
    .map(({ check, shows, else: otherwise }) => ({
      kind: 'safeguard',
      check,
      results: shows,
      otherwise,
    }));

/** All safeguards of a tree, as gates, whatever they come before. */
export const safeguardGates = (tree: Tree): readonly Gate[] => gatesWhere(tree, () => true);

/** What the safeguards of a tree ask before the vehicle is put so. */
export const gatesOfStanding = (tree: Tree, standing: Standing): readonly Gate[] =>
  gatesWhere(tree, (safeguard) => guards(safeguard, standing));

/**
 * Everything that must have been shown before a check: its safeguards first, then its own `after`.
 * A safeguard's check does not wait for itself, nor for one that waits for it.
 */
export function gatesOf(tree: Tree, id: string): readonly Gate[] {
  const check = tree.checks[id];
  if (check === undefined) return [];
  const guarded = gatesOfStanding(tree, check.standing).filter(
    (gate) => !waitsFor(tree, gate.check, id),
  );
  return [...guarded, ...gatesAfter(tree, id)];
}

/** What a check itself says must have been shown, for it means nothing before. */
const gatesAfter = ({ checks }: Tree, id: string): readonly Gate[] =>
  Object.entries(checks[id]?.after ?? {})
    .filter(([before]) => Object.hasOwn(checks, before))
    .map(([before, results]) => ({ kind: 'after', check: before, results }));

/** Whether a check is the other one, or waits for it, over however many between. */
function waitsFor(tree: Tree, id: string, other: string, met: readonly string[] = []): boolean {
  if (id === other) return true;
  const standing = tree.checks[id]?.standing;
  if (standing === undefined || met.includes(id)) return false;
  return [...gatesOfStanding(tree, standing), ...gatesAfter(tree, id)].some(
    (gate) => gate.check !== id && waitsFor(tree, gate.check, other, [...met, id]),
  );
}

/** Everything that must have been shown before a repair is begun, by its standing and by its cause. */
export function gatesOfRepair(tree: Tree, cause: string): readonly Gate[] {
  const repair = tree.causes[cause]?.repair;
  return repair === undefined
    ? []
    : gatesWhere(
        tree,
        (one) => guards(one, repair.standing) || one.before.repair?.includes(cause) === true,
      );
}

/** The gates that are still shut. `shown` tells what a check shows now, or nothing. */
export const shut = (
  gates: readonly Gate[],
  shown: (check: string) => string | undefined,
): readonly Gate[] => gates.filter(({ check, results }) => !results.includes(shown(check) ?? ''));

/**
 * Whether a gate is shut by what is known, at each end of what may be one of several; a check passed
 * over counts as healthy for what it explains, never for what can hurt.
 */
export const isShut = (
  { checks }: Tree,
  gate: Gate,
  ways: readonly ((check: string) => Known)[],
): boolean =>
  ways.some(
    (known) =>
      shut([gate], (check) => {
        const place = known(check) === 'passed' && gate.kind === 'after' ? 0 : known(check);
        return typeof place === 'number' ? checks[check]?.results[place]?.id : undefined;
      }).length > 0,
  );
