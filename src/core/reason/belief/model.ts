import { at } from '../../at.ts';
import { broughtPrior, isBrought } from '../../tree/brought.ts';
import { gatesOf, gatesOfRepair, type Gate as TreeGate } from '../../tree/way/gates.ts';
import { showsSame } from '../../tree/kin.ts';
import { unlisted, type Repair, type Standing, type Tree } from '../../tree/model.ts';
import { parseNext } from '../../tree/way/next.ts';
import { blockOf } from '../../tree/written/branches.ts';
import { neededBy, type Needed } from '../../tree/states.ts';
import { makePriors } from './priors.ts';
import { lastTotals, silentTotals, unlistedTotals } from './tables.ts';
import { backgroundTotals, floor, producedTotals, type Totals } from '../../tree/noisy-max.ts';

/** Minutes of looking further when none of the listed causes is there: common practice, no source. */
const lookFurtherMinutes = 120;

/** What mending a cause takes, and when it may be advised. */
type ModelRepair = {
  readonly minutes: number;
  readonly access: readonly string[];
  readonly standing: Standing;
  readonly spends: readonly string[];
  /** What has to be bought; undefined where the tree does not say. */
  readonly part: Repair['part'];
  /** It needs no part and can be taken back: it may be tried on a suspicion. */
  readonly trial: boolean;
  /** Least chance at which it is advised, where the tree asks for more than is usual. */
  readonly sureAt: number;
  readonly gates: readonly Gate[];
  /** Checks that it asks to have repeated before the proof, by index. */
  readonly repeats: readonly number[];
};

export type ModelCause = ModelRepair & {
  readonly id: string;
  readonly odds: number;
  readonly prior: number;
};

/** A step waits until check `check` has shown one of `results` (indexes). */
export type Gate = { readonly check: number; readonly results: readonly number[] };

export type ModelCheck = {
  readonly id: string;
  readonly results: readonly string[];
  readonly background: Totals;
  /** What each cause produces here, by cause index; undefined adds nothing. */
  readonly links: readonly (Totals | undefined)[];
  /** Checks with one number here show one and the same thing: the lowest index among them. */
  readonly group: number;
  readonly minutes: number;
  readonly access: readonly string[];
  readonly standing: Standing;
  readonly spends: readonly string[];
  readonly needs: Needed | undefined;
  /** What must be shown before: its safeguards, and what it means nothing without. */
  readonly gates: readonly Gate[];
  /** Of a block of branches: by result, the check that its way goes on with; of others nothing. */
  readonly goesOn: readonly (number | undefined)[];
};

/** A tree as the belief reads it: causes with priors, checks with running totals. */
export type Model = {
  readonly causes: readonly ModelCause[];
  readonly checks: readonly ModelCheck[];
  /** Index of the complaint's own check. */
  readonly complaint: number;
};

/** One finding that counts, with the check whose table it is read by: an interval of results. */
export type Observation = {
  readonly check: number;
  readonly group: number;
  readonly lo: number;
  readonly hi: number;
  /** How many repairs had been made before it. */
  readonly at: number;
};

/** The check that shows the complaint. */
export const complaintOf = ({ checks, complaint }: Model): ModelCheck => at(checks, complaint);

type TreeCheck = Tree['checks'][string];

function linkOf(check: TreeCheck, cause: string, complaint: boolean, background: Totals) {
  const row = Object.hasOwn(check.points, cause) ? check.points[cause] : undefined;
  const results = check.results.length;
  if (row !== undefined && row.length === results)
    return producedTotals(row, background, complaint ? 0 : floor);
  if (complaint) return lastTotals(results);
  return cause === unlisted ? unlistedTotals(results) : undefined;
}

function gatesIn({ checks }: Tree, gates: readonly TreeGate[]): Gate[] {
  const ids = Object.keys(checks);
  return gates.map(({ check, results: wanted }) => ({
    check: ids.indexOf(check),
    results: at(Object.values(checks), ids.indexOf(check)).results.flatMap(({ id }, index) =>
      wanted.includes(id) ? [index] : [],
    ),
  }));
}

function repairOf(tree: Tree, cause: string, repair: Repair): ModelRepair {
  const checks = Object.keys(tree.checks);
  const repeats = repair.then.filter((id) => id !== tree.complaint.confirm && checks.includes(id));
  return {
    minutes: repair.minutes,
    access: repair.access,
    standing: repair.standing,
    spends: repair.spends ?? [],
    part: repair.part,
    trial: repair.try === true,
    sureAt: repair['sure-at'] ?? 0,
    gates: gatesIn(tree, gatesOfRepair(tree, cause)),
    repeats: repeats.map((id) => checks.indexOf(id)),
  };
}

/** Looking further where nothing listed is there: not a part, and nothing to be sure of. */
const lookFurther: ModelRepair = {
  minutes: lookFurtherMinutes,
  access: [],
  standing: {},
  spends: [],
  part: 'none',
  trial: false,
  sureAt: 0,
  gates: [],
  repeats: [],
};

/** The rows of one check as running totals: of the background, and of what each of some causes produces. */
export function rowsOfCheck(
  tree: Tree,
  id: string,
  causes: readonly string[],
): Pick<ModelCheck, 'background' | 'links'> {
  const check = tree.checks[id];
  if (check === undefined) throw new RangeError(`the tree has no check ${id}`);
  const complaint = id === tree.complaint.confirm;
  const results = check.results.length;
  const background = complaint
    ? silentTotals(results)
    : backgroundTotals(check.background, results);
  const links = causes.map((cause) => linkOf(check, cause, complaint, background));
  return { background, links };
}

function checksOf(tree: Tree, causes: readonly string[]): ModelCheck[] {
  const entries = Object.entries(tree.checks);
  return entries.map(([id, check]) => ({
    id,
    results: check.results.map((result) => result.id),
    ...rowsOfCheck(tree, id, causes),
    group: entries.findIndex(([, other]) => showsSame(check, other)),
    minutes: check.minutes,
    access: check.access,
    standing: check.standing,
    spends: check.spends ?? [],
    needs: neededBy(tree, check),
    gates: gatesIn(tree, gatesOf(tree, id)),
    goesOn: blockOf(tree.written, id) === undefined ? [] : nextChecks(tree, check),
  }));
}

/** By result, the check that the tree names next. */
function nextChecks({ checks }: Tree, { results }: TreeCheck): (number | undefined)[] {
  const ids = Object.keys(checks);
  return results.map(({ next }) => {
    const to = next === undefined ? undefined : parseNext(next);
    const place = to?.kind === 'check' ? ids.indexOf(to.check) : -1;
    return place < 0 ? undefined : place;
  });
}

/** The model of a tree whose complaint names one of its own checks. */
export function makeModel(tree: Tree): Model {
  const listed = Object.entries(tree.causes).map(([id, cause]) => ({
    id,
    odds: cause.odds,
    ...repairOf(tree, id, cause.repair),
  }));
  const other = { id: unlisted, odds: tree.unlisted, ...lookFurther };
  const all = tree.unlisted > 0 ? [...listed, other] : listed;
  const checks = checksOf(
    tree,
    all.map((cause) => cause.id),
  );
  const complaint = checks.findIndex((check) => check.id === tree.complaint.confirm);
  if (complaint < 0)
    throw new RangeError(`complaint.confirm is ${tree.complaint.confirm}, which is no check here`);
  const own = all.flatMap(({ id, odds }, index) =>
    // The complaint's check has a link to every cause: see `linkOf`.
    isBrought(id) ? [] : [{ id, odds, shows: 1 - at(at(at(checks, complaint).links, index), 0) }],
  );
  const priors = makePriors(own, tree.alsoLikely);
  const priorOf = (id: string): number =>
    isBrought(id)
      ? broughtPrior
      : at(
          priors,
          own.findIndex((one) => one.id === id),
        );
  return {
    causes: all.map((cause) => ({ ...cause, prior: priorOf(cause.id) })),
    checks,
    complaint,
  };
}
