import { at } from '../../at.ts';
import { good } from '../../problem.ts';
import type { Parsed } from '../../problem.ts';
import { believe } from '../belief/posterior.ts';
import type { Belief } from '../belief/posterior.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import type { Why } from './explain.ts';
import { moveMinutes, moveNamed } from './minutes.ts';
import type { Move, StepName } from './minutes.ts';
import { asStillThere, complaintNow } from './complaint-now.ts';
import { adviceOf, type Advice } from './advice.ts';
import { isOpen, isUntold, startSearch } from './search-state.ts';
import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';
import { atOnce, rounds, Search } from './search.ts';
import type { Ranking, Round } from './search.ts';
import { faultSets, shortlist } from '../belief/fault-sets.ts';
import type { FaultSet } from '../belief/fault-sets.ts';

export type AdviseOptions = {
  /** What the tree itself would do next. */
  readonly own?: StepName | undefined;
  /** Steps not to advise: what cannot be reached, told nothing when tried, or must not be done yet. */
  readonly leaveOut?: readonly StepName[];
  /** How to look further after the first answer; none for the quick one. */
  readonly further?: readonly Round[];
  /** Whether the minutes of the first steps are walked out in the end: they are, unless nobody asks. */
  readonly reckon?: boolean;
};

/** The search works on fault sets down to this share of the evidence, and at most this many. */
const enoughMass = 0.98;
const mostSets = 40;

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

/** Steps from where the complaint is there now. */
function* search(input: ReasoningInput, belief: Belief, options: AdviseOptions): Advising {
  const { tables, at: now } = tablesOf(input, belief);
  yield undefined;
  const { leaveOut = [], further = rounds, reckon = true } = options;
  const own = options.own && moveNamed(input.model, options.own);
  const searching = new Search(tables, now, { own, leaveOut, chances: belief.chances });
  let round = 0;
  let last: Ranking = { ranked: [], held: [], own: undefined };
  for (const ranking of searching.run(further)) {
    if (ranking !== undefined) {
      last = ranking;
      const final = !reckon && round === further.length;
      yield adviceOf(input, belief, { kind: 'go-on', final, ...ranking });
      round += 1;
    } else yield undefined;
  }
  if (reckon) last = yield* searching.reckon(last);
  const advice = adviceOf(input, belief, { kind: 'go-on', final: true, ...last });
  yield advice;
  return advice;
}

/**
 * The check to make first where another is wanted: itself, or one that it waits for; undefined where
 * what was shown keeps it shut.
 */
function firstOf(tables: SearchTables, now: SearchState, wanted: number): number | undefined {
  const { checks } = tables.input.model;
  let check = wanted;
  for (let waiting = 0; waiting < checks.length; waiting += 1) {
    const gate = at(checks, check).gates.find((one) => !isOpen(tables, now, one));
    if (gate === undefined) return check;
    if (!isUntold(tables, now, gate.check)) return undefined;
    check = gate.check;
  }
  return undefined;
}

/** The complaint's test first; what follows it is weighed with "still there" taken as found. */
function* proofFirst(input: ReasoningInput, belief: Belief, options: AdviseOptions): Advising {
  const { complaint } = input.model;
  const failed = asStillThere(input);
  const then = believe(failed);
  const chance =
    then.kind === 'bad' ? 0 : Math.min(1, Math.exp(then.value.logEvidence - belief.logEvidence));
  const { tables, at: now } = tablesOf(input, belief);
  const first = firstOf(tables, now, complaint);
  if (first === undefined)
    return yield* search(failed, then.kind === 'good' ? then.value : belief, options);
  const move: Move = { do: 'check', index: first };
  const { total } = moveMinutes(input, move);
  const adviceWith = (left: number | undefined, final: boolean): Advice => {
    const why: Why = { kind: 'proof', cures: 1 - chance };
    const expectedLeft = left === undefined ? undefined : total + chance * left;
    const ranked = [{ move, cost: total, expectedLeft, why }];
    return adviceOf(input, belief, { kind: 'prove', final, ranked });
  };
  let advice = adviceWith(0, true);
  if (then.kind === 'bad') return advice;
  for (const one of search(failed, then.value, { ...options, own: undefined })) {
    if (one !== undefined) advice = adviceWith(one.next[0]?.expectedLeft, one.final);
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
      return good(proved(adviceOf(input, belief.value, { kind: 'proved', final: true })));
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

/** The answer that is quick enough to lead a walk: two steps ahead, no minutes walked out. */
export function quickAdvice(input: ReasoningInput, options: AdviseOptions = {}): Parsed<Advice> {
  const started = startAdvice(input, { further: atOnce, ...options, reckon: false });
  return started.kind === 'bad' ? started : good(finish(started.value));
}

/** The settled answer, in one go. */
export function refinedAdvice(input: ReasoningInput, options: AdviseOptions = {}): Parsed<Advice> {
  const started = startAdvice(input, options);
  return started.kind === 'bad' ? started : good(finish(started.value));
}
