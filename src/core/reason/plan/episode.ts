import type { Done } from '../../tree/way/known.ts';
import type { Tree } from '../../tree/model.ts';
import { nextAfterRepair } from '../../tree/way/after-repair.ts';
import { nextOnWay } from '../../tree/way/way.ts';
import { freshInput } from '../belief/evidence.ts';
import type { AccessMinutes, ReasoningInput, JobState } from '../belief/evidence.ts';
import { parked, placeAfter, placeOf, workMinutes } from '../advice/minutes.ts';
import type { Move } from '../advice/minutes.ts';
import { makeModel } from '../belief/model.ts';
import type { Model } from '../belief/model.ts';

/** What episodes are lived in: a tree, filled, and the input of it when only the complaint is known. */
export type Environment = { readonly tree: Tree; readonly input: ReasoningInput };

export const environmentOf = (
  tree: Tree,
  accesses: Readonly<Record<string, AccessMinutes>>,
): Environment => ({
  tree,
  input: freshInput(makeModel(tree), { accesses, tries: tree.complaint.tries }),
});

/** A job under way: what the mechanic knows of it, and the minutes it has cost so far. */
export type Episode = { readonly state: JobState; readonly minutes: number };

/** A job on a parked vehicle, begun. */
export const beginEpisode = ({ input: { accesses } }: Environment): Episode => ({
  state: { findings: [], repairs: [], openAccess: [], standing: parked, accesses },
  minutes: 0,
});

/** What was done in an episode, in its order. */
export function doneIn({ findings, repairs }: JobState): readonly Done[] {
  const made = repairs.map(({ cause }): Done => ({ kind: 'repaired', cause }));
  return [...Array(made.length + 1).keys()].flatMap((at): readonly Done[] => [
    ...(at === 0 ? [] : made.slice(at - 1, at)),
    ...findings
      .filter((finding) => finding.at === at)
      .map(({ check, lo }): Done => ({ kind: 'shown', check, result: lo })),
  ]);
}

/** Index of a check of the model. @throws RangeError for one that it has not */
export function checkIndex({ checks }: Model, check: string): number {
  const index = checks.findIndex(({ id }) => id === check);
  if (index < 0) throw new RangeError(`the model has no check ${check}`);
  return index;
}

/**
 * The check that is asked whoever chooses the steps, as the screens ask it: the complaint's own test
 * at the start, or what it waits for; after a repair what it asks to repeat, and the proof. Undefined where there is a choice.
 */
export function forcedCheck({ tree, input }: Environment, { state }: Episode): number | undefined {
  const { confirm } = tree.complaint;
  const done = doneIn(state);
  const repair = state.repairs.at(-1);
  const toldOf = state.findings.some(
    ({ check, at }) => check === confirm && at === state.repairs.length,
  );
  if (toldOf) return undefined;
  const next =
    repair === undefined ? nextOnWay(tree, done) : nextAfterRepair(tree, done, repair.cause);
  if (next.kind === 'check') return checkIndex(input.model, next.check);
  // What forbids the test may lead on by itself; where it ends the way here, for good or with another
  // tree, the test is made in the end.
  const endsHere = next.kind === 'stop' || next.kind === 'tree';
  return endsHere ? checkIndex(input.model, confirm) : undefined;
}

/** The episode once the work of a move is done: a check before its result, a repair before its proof. */
export function workOn({ state, minutes }: Episode, move: Move, { input }: Environment): Episode {
  const { repairs, openAccess = [], standing = {}, over = [] } = state;
  const { causes, checks } = input.model;
  const work = (move.do === 'check' ? checks : causes)[move.index];
  if (work === undefined) throw new RangeError(`the model has no ${move.do} ${move.index}`);
  const place = placeOf(openAccess, standing, over);
  const { total } = workMinutes(input, work, place);
  const left = placeAfter(place, work);
  return {
    state: {
      ...state,
      repairs: move.do === 'check' ? repairs : [...repairs, { cause: work.id, at: repairs.length }],
      openAccess: [...left.open],
      standing: left.standing,
      over: left.over,
    },
    minutes: minutes + total,
  };
}

/** The episode once a check has shown a result; a proof is tried as often as the tree asks. */
export function findIn(
  { state, minutes }: Episode,
  shown: { readonly check: number; readonly result: number },
  { tree, input }: Environment,
): Episode {
  const check = input.model.checks[shown.check];
  if (check === undefined) throw new RangeError(`the model has no check ${shown.check}`);
  const finding = {
    check: check.id,
    lo: shown.result,
    hi: shown.result,
    at: state.repairs.length,
  };
  const again = isProof(input.model, shown) ? tree.complaint.tries - 1 : 0;
  return {
    state: { ...state, findings: [...state.findings, finding] },
    minutes: minutes + again * check.minutes,
  };
}

/** Whether a result proves the job done: the complaint no longer shows. */
export const isProof = (
  { complaint }: Model,
  { check, result }: { readonly check: number; readonly result: number },
): boolean => check === complaint && result === 0;
