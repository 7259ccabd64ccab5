import { at } from '../../at.ts';
import { good } from '../../problem.ts';
import type { Parsed } from '../../problem.ts';
import { believe } from '../belief/posterior.ts';
import type { Belief } from '../belief/posterior.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import type { Why } from './explain.ts';
import { moveMinutes } from './minutes.ts';
import type { Move, MoveMinutes } from './minutes.ts';
import { complaintOf } from '../belief/model.ts';
import { unlisted } from '../../tree/model.ts';
import type { ModelCause, ModelCheck } from '../belief/model.ts';
import { startSearch } from './search-state.ts';
import { rounds, Search } from './search.ts';
import type { RankedMove, Round } from './search.ts';
import { faultSets, shortlist } from '../belief/fault-sets.ts';
import type { FaultSet } from '../belief/fault-sets.ts';

export type Suspect = { readonly cause: string; readonly chance: number };

export type NextStep = {
  readonly do: 'check' | 'repair';
  readonly id: string;
  /** What it takes from here, a repair with its proof. */
  readonly minutes: number;
  readonly parts: MoveMinutes;
  /** Expected minutes from now to a proven repair when this is done first. */
  readonly expectedLeft: number;
  /** Minutes saved on average against the tree's own next step; undefined without one. */
  readonly versusTree: number | undefined;
  readonly why: Why;
};

export type Advice = {
  /** 'proved': the complaint is gone. 'prove': its test comes first. 'go-on': see `next`. */
  readonly kind: 'go-on' | 'prove' | 'proved';
  /** Listed causes with a chance above zero, likeliest first. */
  readonly suspects: readonly Suspect[];
  readonly unlisted: number;
  /** Share of the evidence that the chances rest on: 1 when exact. */
  readonly coverage: number;
  /** Quickest first. */
  readonly next: readonly NextStep[];
  readonly because: {
    readonly leader: Suspect | undefined;
    /** None of the listed causes fits well. */
    readonly unlistedLeads: boolean;
    /** The best step; undefined when the complaint is gone. */
    readonly why: Why | undefined;
    readonly versusTree: number | undefined;
  };
  /** Whether anything better is still to come. */
  readonly final: boolean;
};

export type StepName = { readonly do: 'check' | 'repair'; readonly id: string };

export type AdviseOptions = {
  /** What the tree itself would do next. */
  readonly own?: StepName;
  /** Checks not to advise: what cannot be reached, or told nothing when tried. */
  readonly leaveOut?: readonly string[];
  /** How to look further after the first answer; none for the quick one. */
  readonly further?: readonly Round[];
};

/** The search works on fault sets down to this share of the evidence, and at most this many. */
const enoughMass = 0.98;
const mostSets = 60;

/** Advice that gets better: take the next value when there is time; `undefined` only gives way. */
export type Advising = Generator<Advice | undefined, Advice>;

function likeliest(sets: readonly FaultSet[]): FaultSet[] {
  const all = sets.reduce((sum, set) => sum + set.chance, 0);
  let held = 0;
  return sets.slice(0, mostSets).filter((set) => {
    const wanted = held < enoughMass * all;
    held += set.chance;
    return wanted;
  });
}

function tablesOf(input: ReasoningInput, belief: Belief) {
  const ids = input.model.causes.map((cause) => cause.id);
  const from = shortlist(belief.atFirst, ids);
  const known = belief.kind === 'exact' ? belief.logEvidence : undefined;
  const sets = likeliest(faultSets(input, from, known).sets);
  return startSearch(input, from, sets);
}

function moveOf(input: ReasoningInput, name: StepName | undefined): Move | undefined {
  if (name === undefined) return undefined;
  const from = name.do === 'check' ? input.model.checks : input.model.causes;
  const index = from.findIndex(({ id }) => id === name.id);
  return index < 0 ? undefined : { do: name.do, index };
}

type Rest = Pick<Advice, 'kind' | 'final'> & {
  readonly ranked: readonly RankedMove[];
  readonly own?: Move | undefined;
};

function adviceOf(
  input: ReasoningInput,
  belief: Belief,
  { kind, final, ranked, own }: Rest,
): Advice {
  const { causes, checks } = input.model;
  const suspects = causes
    .map(({ id }, cause) => ({ cause: id, chance: at(belief.chances, cause) }))
    .filter(({ cause, chance }) => cause !== unlisted && chance > 0)
    .toSorted((one, other) => other.chance - one.chance || (one.cause < other.cause ? -1 : 1));
  // A tree may hold that nothing is missing from its list.
  const other = belief.chances[causes.findIndex(({ id }) => id === unlisted)] ?? 0;
  const ownLeft = ranked.find(
    ({ move }) => move.do === own?.do && move.index === own.index,
  )?.expectedLeft;
  const next = ranked.map(({ move, expectedLeft, why }): NextStep => {
    const parts = moveMinutes(input, move);
    const { id } = at<ModelCheck | ModelCause>(move.do === 'check' ? checks : causes, move.index);
    const versusTree = ownLeft === undefined ? undefined : ownLeft - expectedLeft;
    return { do: move.do, id, minutes: parts.total, parts, expectedLeft, versusTree, why };
  });
  const because = {
    leader: suspects[0],
    unlistedLeads: other > (suspects[0]?.chance ?? 0),
    why: next[0]?.why,
    versusTree: next[0]?.versusTree,
  };
  return { kind, suspects, unlisted: other, coverage: belief.coverage, next, because, final };
}

/** What the complaint's own test said last: still there, gone, or not asked since a repair. */
function complaintNow(input: ReasoningInput): 'there' | 'gone' | 'unknown' {
  const { group } = complaintOf(input.model);
  const last = input.evidence.findLast((finding) => finding.group === group);
  if (last === undefined || last.at < input.repairs || (last.lo === 0 && last.hi > 0))
    return 'unknown';
  return last.hi === 0 ? 'gone' : 'there';
}

/** Steps from where the complaint is there now. */
function* search(input: ReasoningInput, belief: Belief, options: AdviseOptions): Advising {
  const { tables, at } = tablesOf(input, belief);
  yield undefined;
  const own = moveOf(input, options.own);
  const further = options.further ?? rounds;
  let round = 0;
  let advice = adviceOf(input, belief, { kind: 'go-on', final: true, ranked: [] });
  for (const ranked of new Search(tables, at, options.leaveOut ?? []).run(own, further)) {
    if (ranked !== undefined) {
      advice = adviceOf(input, belief, {
        kind: 'go-on',
        final: round === further.length,
        ranked,
        own,
      });
      round += 1;
    }
    yield ranked === undefined ? undefined : advice;
  }
  return advice;
}

/** The complaint's test first; what follows it is weighed with "still there" taken as found. */
function* proofFirst(input: ReasoningInput, belief: Belief, options: AdviseOptions): Advising {
  const { complaint } = input.model;
  const { group, results } = complaintOf(input.model);
  const hi = results.length - 1;
  const still = { check: complaint, group, lo: 1, hi, at: input.repairs };
  const others = input.evidence.filter((one) => one.group !== group || one.at !== input.repairs);
  const evidence = [...others, still].toSorted(
    (one, other) => one.group - other.group || one.at - other.at,
  );
  const failed: ReasoningInput = {
    ...input,
    evidence,
    evidenceInOrder: [...input.evidenceInOrder, still],
  };
  const then = believe(failed);
  const chance =
    then.kind === 'bad' ? 0 : Math.min(1, Math.exp(then.value.logEvidence - belief.logEvidence));
  const move: Move = { do: 'check', index: complaint };
  const { total } = moveMinutes(input, move);
  const adviceWith = (left: number, final: boolean): Advice => {
    const why: Why = { kind: 'proof', cures: 1 - chance };
    const ranked = [{ move, expectedLeft: total + chance * left, depth: 1, why }];
    return adviceOf(input, belief, {
      kind: 'prove',
      final,
      ranked,
      own: moveOf(input, options.own),
    });
  };
  let advice = adviceWith(0, true);
  if (then.kind === 'bad') return advice;
  for (const one of search(failed, then.value, options)) {
    if (one !== undefined) advice = adviceWith(one.next[0]?.expectedLeft ?? 0, one.final);
    yield one === undefined ? undefined : advice;
  }
  return advice;
}

/** Starts advising: nothing is searched until the first value is asked for. */
export function startAdvice(input: ReasoningInput, options: AdviseOptions = {}): Parsed<Advising> {
  const belief = believe(input);
  if (belief.kind === 'bad') return belief;
  switch (complaintNow(input)) {
    case 'gone':
      return good(
        proved(adviceOf(input, belief.value, { kind: 'proved', final: true, ranked: [] })),
      );
    case 'unknown':
      return good(proofFirst(input, belief.value, options));
    case 'there':
      return good(search(input, belief.value, options));
  }
}

function* proved(advice: Advice): Advising {
  yield advice;
  return advice;
}

function finish(advising: Advising): Advice {
  for (;;) {
    const step = advising.next();
    if (step.done === true) return step.value;
  }
}

/** The answer of one step ahead, at once. */
export function quickAdvice(input: ReasoningInput, options: AdviseOptions = {}): Parsed<Advice> {
  const started = startAdvice(input, { ...options, further: [] });
  return started.kind === 'bad' ? started : good(finish(started.value));
}

/** The answer of the whole search, in one go. */
export function refinedAdvice(input: ReasoningInput, options: AdviseOptions = {}): Parsed<Advice> {
  const started = startAdvice(input, options);
  return started.kind === 'bad' ? started : good(finish(started.value));
}
