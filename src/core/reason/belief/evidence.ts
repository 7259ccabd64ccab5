import { at as entry } from '../../at.ts';
import { bad, good } from '../../problem.ts';
import type { Parsed, Problem } from '../../problem.ts';
import type { Standing, Tree } from '../../tree/model.ts';
import { usualPrudence, type Prudence } from '../prudence.ts';
import { complaintOf, makeModel } from './model.ts';
import { possible } from './possible.ts';
import type { Model, Observation } from './model.ts';

/** What a check showed: one result, or "not sure which of these" as an interval of indexes. */
export type CheckFinding = {
  readonly check: string;
  readonly lo: number;
  readonly hi: number;
  /** How many repairs had been made before it. */
  readonly at: number;
};

/** `at` is how many repairs had been made before this one. */
export type RepairMade = { readonly cause: string; readonly at: number };

export type AccessMinutes = { readonly open: number; readonly close: number };

/** Where a vehicle stands: everything the belief and the advice need beside the tree. */
export type JobState = {
  /** In the order made. Proofs are findings of the complaint's check. */
  readonly findings: readonly CheckFinding[];
  readonly repairs: readonly RepairMade[];
  /** Checks whose findings come and go: each is a draw of its own. */
  readonly comesAndGoes?: readonly string[];
  /** Faults that a repair brought; `at` is how many repairs had been made when it was there. */
  readonly brought?: readonly RepairMade[];
  readonly openAccess?: readonly string[];
  readonly standing?: Standing;
  /** Passing states that are over: a step that needs one must bring it back. */
  readonly over?: readonly string[];
  /** Minutes of every access the tree names; one that is missing costs nothing. */
  readonly accesses?: Readonly<Record<string, AccessMinutes>>;
  /** Tries a proof needs, as the tree says: one where a single try shows the complaint or does not. */
  readonly tries?: number;
  /** What the advice is weighed by; as usual where nobody says. */
  readonly prudence?: Prudence;
};

/** All that the belief and the advice rest on; made by `makeInput` or `inputOf`, never by hand. */
export type ReasoningInput = {
  readonly model: Model;
  /** Every finding in the order made, the owner's word about the complaint first. */
  readonly evidenceInOrder: readonly Observation[];
  /** The findings that count: a repeat has replaced the one before it. */
  readonly evidence: readonly Observation[];
  /** Findings that cannot be true beside the others: the belief rests on newer ones. */
  readonly setAside: readonly Observation[];
  /** By cause: how many repairs came before its own; Infinity while it is not repaired. */
  readonly repairedAt: readonly number[];
  /** By cause: how many repairs had been made when it came; 0 for what was there from the first. */
  readonly arrivedAt: readonly number[];
  readonly repairs: number;
  readonly openAccess: readonly string[];
  readonly standing: Standing;
  readonly over: readonly string[];
  readonly accesses: Readonly<Record<string, AccessMinutes>>;
  readonly tries: number;
  readonly prudence: Prudence;
};

const freshState: JobState = { findings: [], repairs: [] };

function findingProblem(model: Model, finding: CheckFinding, index: number): Problem | undefined {
  const results = model.checks.find((check) => check.id === finding.check)?.results.length;
  const path = `findings[${index}]`;
  if (results === undefined)
    return {
      code: 'case-unknown-check',
      message: `The finding names a check that this tree does not have.`,
      mend: 'Name one of the checks of the tree.',
      path: `${path}.check`,
      value: finding.check,
    };
  const whole = [finding.lo, finding.hi, finding.at].every((part) => Number.isInteger(part));
  if (
    whole &&
    finding.lo >= 0 &&
    finding.lo <= finding.hi &&
    finding.hi < results &&
    finding.at >= 0
  )
    return undefined;
  return {
    code: 'case-result-range',
    message: `The finding's results are outside this check's list.`,
    mend: `Give whole numbers with 0 <= lo <= hi <= ${results - 1}, and "at" from 0.`,
    path,
    value: `${finding.lo}..${finding.hi} at ${finding.at}`,
  };
}

function repairProblem(model: Model, repair: RepairMade, index: number): Problem | undefined {
  if (model.causes.some((cause) => cause.id === repair.cause)) return undefined;
  return {
    code: 'case-unknown-cause',
    message: 'The repair names a cause that this tree does not have.',
    mend: 'Name one of the causes of the tree.',
    path: `repairs[${index}].cause`,
    value: repair.cause,
  };
}

/**
 * The owner said that the complaint is there; the confirming check replaces that once it is
 * done. Findings of things that show the same, with no repair between, leave only the last.
 */
function lastWords(
  { checks, complaint }: Model,
  all: readonly Observation[],
  loose: ReadonlySet<number>,
): Observation[] {
  const tableOf = new Map<number, number>();
  const evidenceInOrder = copied(checks.length, withoutWord(all, loose), loose);
  for (const finding of evidenceInOrder)
    if (tableOf.get(finding.group) !== complaint) tableOf.set(finding.group, finding.check);
  // One whole number a group and repair: a text for each would cost more than all the rest.
  const most = evidenceInOrder.reduce((all, { at }) => Math.max(all, at), 0) + 1;
  const last = new Map<number, Observation>();
  for (const finding of evidenceInOrder) {
    const check = tableOf.get(finding.group) ?? finding.check;
    last.set(finding.group * most + finding.at, { ...finding, check });
  }
  return [...last.values()].toSorted((one, other) => one.group - other.group || one.at - other.at);
}

/** The owner's word is replaced by the confirming check, also where that comes and goes. */
const withoutWord = (all: readonly Observation[], loose: ReadonlySet<number>) =>
  all.filter(
    ({ group }, index) =>
      index > 0 ||
      !loose.has(group) ||
      !all.some((one, other) => other > 0 && one.group === group && one.at === 0),
  );

/**
 * Each finding of what comes and goes as one of a check of its own, with the same rows; the last
 * keeps the place of its check.
 */
function copied(
  groups: number,
  all: readonly Observation[],
  loose: ReadonlySet<number>,
): readonly Observation[] {
  return all.map((one, index) => {
    const again = all.slice(index + 1).some(({ group }) => group === one.group);
    return loose.has(one.group) && again ? { ...one, group: groups + index } : one;
  });
}

/** The input from a model that was made before: what `makeInput` does after reading the tree. */
export function inputOf(model: Model, state: JobState): Parsed<ReasoningInput> {
  const problems = [
    ...state.findings.map((finding, index) => findingProblem(model, finding, index)),
    ...state.repairs.map((repair, index) => repairProblem(model, repair, index)),
  ].filter((problem) => problem !== undefined);
  if (problems.length > 0) return bad(...problems);
  const ids = model.checks.map(({ id }) => id);
  const place = (check: number) => ({ check, group: entry(model.checks, check).group });
  const last = complaintOf(model).results.length - 1;
  const evidenceInOrder = [
    { ...place(model.complaint), lo: 1, hi: last, at: 0 },
    ...state.findings.map(({ check, lo, hi, at }) => ({
      ...place(ids.indexOf(check)),
      lo,
      hi,
      at,
    })),
  ];
  const repairedAt = model.causes.map((cause) =>
    Math.min(...state.repairs.filter((repair) => repair.cause === cause.id).map(({ at }) => at)),
  );
  const arrivedAt = model.causes.map(
    ({ id }) => state.brought?.find(({ cause }) => cause === id)?.at ?? 0,
  );
  const loose = new Set(state.comesAndGoes?.map((id) => place(ids.indexOf(id)).group));
  const evidence = lastWords(model, evidenceInOrder, loose);
  return good({
    model,
    evidenceInOrder,
    arrivedAt,
    ...possible({ model, evidence, repairedAt, arrivedAt }),
    repairs: state.repairs.length,
    openAccess: state.openAccess ?? [],
    standing: state.standing ?? {},
    over: state.over ?? [],
    accesses: state.accesses ?? {},
    tries: state.tries ?? 1,
    prudence: state.prudence ?? usualPrudence,
  });
}

/** The input once one more thing was found: it takes the place of what was found of it since the last repair. */
export function withFinding(input: ReasoningInput, found: Omit<Observation, 'at'>): ReasoningInput {
  const shown = { ...found, at: input.repairs };
  const others = input.evidence.filter(({ group, at }) => group !== shown.group || at !== shown.at);
  return {
    ...input,
    evidenceInOrder: [...input.evidenceInOrder, shown],
    evidence: [...others, shown].toSorted(
      (one, other) => one.group - other.group || one.at - other.at,
    ),
  };
}

/** The input when only the complaint is known. */
export function freshInput(
  model: Model,
  state: Omit<JobState, 'findings' | 'repairs'> = {},
): ReasoningInput {
  const input = inputOf(model, { ...freshState, ...state });
  if (input.kind === 'bad') throw new RangeError('a model without findings is always an input');
  return input.value;
}

/** The input from a tree already pruned of what this vehicle does not have. */
export function makeInput(tree: Tree, state: JobState = freshState): Parsed<ReasoningInput> {
  if (!Object.hasOwn(tree.checks, tree.complaint.confirm))
    return bad({
      code: 'case-no-complaint',
      message: 'The check that shows the complaint is not in this tree.',
      mend: 'Name one of the checks of the tree.',
      path: 'complaint.confirm',
      value: tree.complaint.confirm,
    });
  return inputOf(makeModel(tree), state);
}
