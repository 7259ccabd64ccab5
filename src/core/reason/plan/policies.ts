import type { Tree } from '../../tree/model.ts';
import { isStale, nextOnWay, type Knowledge } from '../../tree/way.ts';
import { quickAdvice, refinedAdvice } from '../advice/advise.ts';
import type { AdviseOptions } from '../advice/advise.ts';
import { believe } from '../belief/posterior.ts';
import { caseOf } from '../belief/evidence.ts';
import type { Case, CaseState } from '../belief/evidence.ts';
import { moveMinutes } from '../advice/minutes.ts';
import type { Move } from '../advice/minutes.ts';
import type { Model } from '../belief/model.ts';

/** Chooses the next step of a simulated episode; it sees what a mechanic would have seen. */
export type Policy = (model: Model, state: CaseState) => Move;

export function caseAt(model: Model, state: CaseState): Case {
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

/** The complaint's own test comes first, whoever chooses what follows: the screens ask for it. */
const afterTheTest =
  (policy: Policy): Policy =>
  (model, state) =>
    state.findings.length === 0 ? { do: 'check', index: model.complaint } : policy(model, state);

/** Repairs by odds per minute, no checks at all but the complaint's own test. */
export const oddsOnly: Policy = afterTheTest((model, state) =>
  bestPerMinute(
    caseAt(model, state),
    model.causes.map(({ odds }) => odds),
  ),
);

/** The last finding of a check, or of one that shows the same thing. */
export function lastOf({ checks }: Model, state: CaseState, check: number) {
  const group = checks[check]?.group;
  const kin = checks.filter((one) => one.group === group).map(({ id }) => id);
  return state.findings.findLast((finding) => kin.includes(finding.check));
}

/** Mends what is likeliest for its minutes by all that was found: where no advice can be had. */
function likeliest(model: Model, state: CaseState): Move {
  const given = caseAt(model, state);
  const belief = believe(given);
  return belief.kind === 'bad'
    ? oddsOnly(model, state)
    : bestPerMinute(given, belief.value.chances);
}

/**
 * The tree's own way, as the screens walk it; at a cause it mends. Where the way ends, or names
 * no cause, the one-step advice goes on, as it does on the screens.
 */
export function ownWay(tree: Tree): Policy {
  const advised = advisedPolicy([]);
  return (model, state) => {
    const next = nextOnWay(tree, knowledgeOf(tree, model, state));
    if (next.kind === 'check')
      return { do: 'check', index: model.checks.findIndex(({ id }) => id === next.check) };
    if (next.kind === 'cause')
      return { do: 'repair', index: model.causes.findIndex(({ id }) => id === next.cause) };
    return advised(model, state);
  };
}

/** What is known on a simulated episode, in the terms of the way. */
function knowledgeOf(tree: Tree, model: Model, state: CaseState): Knowledge {
  const { confirm } = tree.complaint;
  return {
    knownOf: (check) => {
      const index = model.checks.findIndex(({ id }) => id === check);
      const last = lastOf(model, state, index);
      if (last === undefined) return undefined;
      const since = state.repairs.filter(({ at }) => at >= last.at).map(({ cause }) => cause);
      const stale = check !== confirm && isStale(tree, last.check, last.lo, since);
      return stale ? undefined : last.lo;
    },
    last: state.findings.at(-1)?.check,
    isMended: (cause) => state.repairs.some((repair) => repair.cause === cause),
  };
}

/**
 * Follows the advice. One policy remembers what it was advised: many vehicles begin alike.
 * `further` as in the advice; none for the one-step advice.
 */
export function advisedPolicy(further?: AdviseOptions['further']): Policy {
  const remembered = new Map<string, Move>();
  return afterTheTest((model, state) => {
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
  });
}
