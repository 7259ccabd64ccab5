import type { Tree } from '../../tree/model.ts';
import { parseNext } from '../../tree/next.ts';
import { along } from '../../tree/way.ts';
import { quickAdvice, refinedAdvice } from '../advice/advise.ts';
import type { AdviseOptions } from '../advice/advise.ts';
import { believe } from '../belief/posterior.ts';
import { caseOf } from '../belief/evidence.ts';
import type { Case, CaseState } from '../belief/evidence.ts';
import { moveMinutes } from '../advice/minutes.ts';
import type { Move } from '../advice/minutes.ts';
import type { Model } from '../belief/model.ts';
import { atMost } from '../belief/tables.ts';

/** Chooses the next step of a simulated job; it sees what a mechanic would have seen. */
export type Policy = (model: Model, state: CaseState) => Move;

function caseAt(model: Model, state: CaseState): Case {
  const given = caseOf(model, state);
  if (given.kind === 'bad') throw new RangeError(given.problems[0]?.message ?? 'no case');
  return given.value;
}

/** The unrepaired cause with the highest score per minute of repair and proof. */
function bestPerMinute(given: Case, scores: readonly number[]): Move {
  const rates = given.model.causes.map((_, index) =>
    given.repairedAt[index] === Infinity
      ? (scores[index] ?? 0) / Math.max(moveMinutes(given, { do: 'repair', index }).total, 1e-9)
      : -1,
  );
  return { do: 'repair', index: rates.indexOf(Math.max(...rates)) };
}

/** Repairs by odds per minute, no checks at all. */
export const oddsOnly: Policy = (model, state) =>
  bestPerMinute(
    caseAt(model, state),
    model.causes.map(({ odds }) => odds),
  );

/** The last finding of a check, or of one that shows the same thing. */
function lastOf({ checks }: Model, state: CaseState, check: number) {
  const group = checks[check]?.group;
  const kin = checks.filter((one) => one.group === group).map(({ id }) => id);
  return state.findings.findLast((finding) => kin.includes(finding.check));
}

const ready = (model: Model, state: CaseState, check: number): boolean =>
  (model.checks[check]?.after ?? []).every((gate) => {
    const found = lastOf(model, state, gate.check);
    return found !== undefined && gate.results.includes(found.lo);
  });

/** Checks in their listed order; the first abnormal result is mended by what it points to. */
export const fixedChart: Policy = (model, state) => {
  const given = caseAt(model, state);
  const last = state.findings.findLast(({ check }) => check !== model.checks[model.complaint]?.id);
  if (last !== undefined && last.lo > 0 && last.at === state.repairs.length) {
    const check = model.checks.find(({ id }) => id === last.check);
    const scores = model.causes.map(({ odds }, cause) => {
      const totals = check?.links[cause];
      const open = given.repairedAt[cause] === Infinity && totals !== undefined;
      return open ? odds * (atMost(totals, last.lo) - atMost(totals, last.lo - 1)) : 0;
    });
    const most = Math.max(...scores);
    if (most > 0) return { do: 'repair', index: scores.indexOf(most) };
  }
  const next = model.checks.findIndex(
    (_, index) =>
      index !== model.complaint &&
      lastOf(model, state, index) === undefined &&
      ready(model, state, index),
  );
  return next < 0 ? oddsOnly(model, state) : { do: 'check', index: next };
};

/** Whether a check has to be made (again): a cause it shows was mended since it was abnormal. */
function stale(model: Model, state: CaseState, index: number): boolean {
  const last = lastOf(model, state, index);
  if (last === undefined) return true;
  return (
    last.lo > 0 &&
    state.repairs.some(({ cause, at }) => {
      const mended = model.causes.findIndex(({ id }) => id === cause);
      return at >= last.at && model.checks[index]?.links[mended] !== undefined;
    })
  );
}

/** Mends what is likeliest for its minutes by all that was found: what to do off the tree's way. */
function likeliest(model: Model, state: CaseState): Move {
  const given = caseAt(model, state);
  const belief = believe(given);
  return belief.kind === 'bad'
    ? oddsOnly(model, state)
    : bestPerMinute(given, belief.value.chances);
}

/**
 * The tree's own way: from its start along `next`, with what is known already taken as read.
 * At a cause it mends; where the way ends, or names what is mended already, the likeliest
 * cause for its minutes follows.
 */
export function ownWay(tree: Tree): Policy {
  const start = { next: parseNext(tree.start) };
  return (model, state) => {
    const placeOf = (check: string) => model.checks.findIndex(({ id }) => id === check);
    const knownOf = (check: string) => {
      const index = placeOf(check);
      const fresh = index === model.complaint || !stale(model, state, index);
      return fresh ? lastOf(model, state, index)?.lo : undefined;
    };
    const to = along(tree, start, knownOf)?.next;
    if (to?.kind === 'check') return { do: 'check', index: placeOf(to.check) };
    const mended = state.repairs.map(({ cause }) => cause);
    const index =
      to?.kind === 'cause' && !mended.includes(to.cause)
        ? model.causes.findIndex(({ id }) => id === to.cause)
        : -1;
    return index < 0 ? likeliest(model, state) : { do: 'repair', index };
  };
}

/**
 * Follows the advice. One policy remembers what it was advised: many vehicles begin alike.
 * `further` as in the advice; none for the one-step advice.
 */
export function advisedPolicy(further?: AdviseOptions['further']): Policy {
  const remembered = new Map<string, Move>();
  return (model, state) => {
    const key = JSON.stringify([state.findings, state.repairs]);
    const known = remembered.get(key);
    if (known !== undefined) return known;
    const given = caseAt(model, state);
    const advice =
      further?.length === 0
        ? quickAdvice(given)
        : refinedAdvice(given, further === undefined ? {} : { further });
    const best = advice.kind === 'good' ? advice.value.next[0] : undefined;
    const from = best?.do === 'check' ? model.checks : model.causes;
    const move =
      best === undefined
        ? likeliest(model, state)
        : { do: best.do, index: from.findIndex(({ id }) => id === best.id) };
    remembered.set(key, move);
    return move;
  };
}
