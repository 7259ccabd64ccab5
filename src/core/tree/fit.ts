import { mapValues } from '../map-values.ts';
import { unlisted } from './model.ts';
import type { Problem } from '../problem.ts';
import type { When } from './basics.ts';
import type { Facts } from './facts.ts';
import type { Check, Lead, Result, Tree } from './model.ts';
import { fileOf, settle } from './written/settle.ts';

/** The fact that tells how many cylinders an engine has. */
const cylinderFact = 'cylinders';

/** The number that each value of that fact is. */
const cylinders: Readonly<Record<string, number>> = { four: 4, six: 6, eight: 8 };

/** How many cylinders the engine has; undefined where nobody knows. */
export const cylindersOf = (facts: Facts): number | undefined =>
  cylinders[facts[cylinderFact] ?? ''];

/** Whether something with this condition exists on the vehicle. Not known: it may, so it stays. */
export function exists(when: When | undefined, facts: Facts): boolean {
  return Object.entries(when ?? {}).every(([fact, wanted]) => {
    const known = facts[fact];
    return known === undefined || (Array.isArray(wanted) ? wanted : [wanted]).includes(known);
  });
}

/** Every condition in a part of a tree, wherever it stands. */
function conditionsIn(part: unknown): readonly When[] {
  if (typeof part !== 'object' || part === null) return [];
  return Object.entries(part).flatMap(([key, value]): readonly When[] =>
    key === 'when' ? [value as When] : conditionsIn(value),
  );
}

/** What a file holds of one tree is looked through once: the start page asks at every key. */
const asked = new WeakMap<object, readonly string[]>();

/** The facts that this tree asks for, in the order in which it first needs them. */
export function factsAsked(tree: Tree): readonly string[] {
  const file = fileOf(tree);
  const known = asked.get(file);
  if (known !== undefined) return known;
  const { causes, checks, branches, safeguards, feed } = file;
  const conditions = [causes, checks, branches, safeguards, feed].flatMap(conditionsIn);
  const perCylinder = Object.values(checks).some(({ each }) => each !== undefined);
  const facts = [
    ...conditions.flatMap((when) => Object.keys(when)),
    ...(perCylinder ? [cylinderFact] : []),
  ];
  const once = [...new Set(facts)];
  asked.set(file, once);
  return once;
}

/**
 * The facts to ask before a job is begun: those that the tree turns on, and the volts of the system
 * wherever it reads volts, so that a 6 V vehicle is never judged by the bands of 12 V.
 */
export function factsToAsk(tree: Tree): readonly string[] {
  const facts = factsAsked(tree);
  const readsVolts = Object.values(tree.checks).some(
    ({ reading }) => reading?.quantity === 'voltage',
  );
  return readsVolts && !facts.includes('volts') ? ['volts', ...facts] : facts;
}

/**
 * Why a tree is wrong for a vehicle: the bands of a tree that does not ask for the volts are those
 * of 12 V, and would call a full 6 V battery flat. Undefined where it fits.
 */
export function misfit(tree: Tree, facts: Facts): Problem | undefined {
  if (facts['volts'] !== '6-volt' || factsAsked(tree).includes('volts')) return undefined;
  return {
    code: 'tree-for-12-volts',
    value: '6-volt',
    message: 'Written for 12 V: it judges 6 V wrong.',
    mend: 'No job is begun on it.',
  };
}

/** The tree as this vehicle has it: causes, checks and results that it cannot have are gone. */
export function fitTree(tree: Tree, facts: Facts): Tree {
  if (factsAsked(tree).every((fact) => facts[fact] === undefined)) return tree;
  return withoutMissing(tree.written === undefined ? tree : settle(tree.written, facts), facts);
}

function withoutMissing(tree: Tree, facts: Facts): Tree {
  const causes = pick(tree.causes, ({ when }) => exists(when, facts));
  const checks = pick(tree.checks, ({ when }) => exists(when, facts));
  return {
    ...tree,
    causes,
    start: ledStart(tree, facts),
    baseline: tree.baseline.filter((id) => Object.hasOwn(checks, id)),
    ...(tree.safeguards && {
      safeguards: tree.safeguards.filter(
        ({ check, when }) => exists(when, facts) && Object.hasOwn(checks, check),
      ),
    }),
    checks: mapValues(checks, (check) => ({
      ...fitCheck(check, facts, causes),
      results: check.results
        .filter(({ when }) => exists(when, facts))
        .map((result) => leadOn(result, tree, facts)),
    })),
  };
}

/** The start, or where it would have led on a vehicle that has not that check. */
const ledStart = (tree: Tree, facts: Facts): string =>
  whereTo(tree.start, tree, facts).next ?? tree.start;

/** Where a result leads: the leads that hold by what is known, then the plain one. */
type Leading = { readonly leads: readonly Lead[]; readonly next: string | undefined };

/** A result that leads to a check which the vehicle has not leads where that check's healthy result would. */
function leadOn(result: Result, tree: Tree, facts: Facts): Result {
  const { next: _next, leads: _leads, ...rest } = result;
  const { leads, next } = leading(result, tree, facts);
  return {
    ...rest,
    ...(leads.length > 0 && { leads }),
    ...(next !== undefined && { next }),
  };
}

function leading(
  { next, leads = [] }: Pick<Result, 'next' | 'leads'>,
  tree: Tree,
  facts: Facts,
  passed: readonly string[] = [],
): Leading {
  const held = leads.flatMap((lead) => {
    const to = whereTo(lead.go, tree, facts, passed);
    const plain: readonly Lead[] = to.next === undefined ? [] : [{ if: {}, go: to.next }];
    return [...to.leads, ...plain].flatMap((one) => both(lead, one));
  });
  if (next === undefined) return { leads: held, next };
  const to = whereTo(next, tree, facts, passed);
  return { leads: [...held, ...to.leads], next: to.next };
}

/** Where a lead comes to, past checks that the vehicle has not, with what their own leads hang on. */
function whereTo(go: string, tree: Tree, facts: Facts, passed: readonly string[] = []): Leading {
  const check: Check | undefined = tree.checks[go];
  if (check === undefined || exists(check.when, facts)) return { leads: [], next: go };
  if (passed.includes(go)) return { leads: [], next: undefined };
  return leading(check.results[0] ?? {}, tree, facts, [...passed, go]);
}

/** A lead behind another holds where both do; nowhere, where they ask one check for different results. */
function both(before: Lead, behind: Lead): readonly Lead[] {
  const asks = { ...behind.if };
  for (const [check, results] of Object.entries(before.if)) {
    const shared = results.filter((result) => behind.if[check]?.includes(result) ?? true);
    if (shared.length === 0) return [];
    asks[check] = shared;
  }
  return [{ if: asks, go: behind.go }];
}

function fitCheck(check: Check, facts: Facts, causes: Tree['causes']): Check {
  const stays = check.results.map(({ when }) => exists(when, facts));
  const points = Object.fromEntries(
    Object.entries(check.points)
      .filter(([cause]) => cause === unlisted || Object.hasOwn(causes, cause))
      .map(([cause, row]) => [cause, shareOut(row, stays)]),
  );
  const background = check.background && shareOut(check.background, stays);
  return {
    ...check,
    points,
    ...(background && { background }),
  };
}

/** Leaves out what cannot be shown and lets the rest share its chance in proportion. */
function shareOut(row: readonly number[], stays: readonly boolean[]): number[] {
  const left = row.filter((_, index) => stays[index]);
  const total = left.reduce((sum, chance) => sum + chance, 0);
  return total > 0 ? left.map((chance) => chance / total) : left.map(() => 1 / left.length);
}

const pick = <T>(from: Readonly<Record<string, T>>, keep: (one: T) => boolean): Record<string, T> =>
  Object.fromEntries(Object.entries(from).filter(([, one]) => keep(one)));
