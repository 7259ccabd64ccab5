import type { Tree } from '../../tree/model.ts';
import { nextOnWay } from '../../tree/way.ts';
import { quickAdvice, refinedAdvice } from '../advice/advise.ts';
import type { AdviseOptions } from '../advice/advise.ts';
import { believe } from '../belief/posterior.ts';
import { caseOf } from '../belief/evidence.ts';
import type { Case, CaseState } from '../belief/evidence.ts';
import { moveMinutes } from '../advice/minutes.ts';
import type { Move } from '../advice/minutes.ts';
import type { Model } from '../belief/model.ts';
import { checkIndex, doneIn } from './episode.ts';

/** Chooses the next step of a simulated job; it sees what a mechanic would have seen. */
export type Policy = (model: Model, state: CaseState) => Move;

/** The case of a model as an episode stands; findings that are none of the model's are our fault. */
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

/** Repairs by odds per minute, no checks at all. */
export const oddsOnly: Policy = (model, state) =>
  bestPerMinute(
    caseAt(model, state),
    model.causes.map(({ odds }) => odds),
  );

/** Mends what is likeliest for its minutes by all that was found: what to do off the tree's way. */
function likeliest(model: Model, state: CaseState): Move {
  const given = caseAt(model, state);
  const belief = believe(given);
  return belief.kind === 'bad'
    ? oddsOnly(model, state)
    : bestPerMinute(given, belief.value.chances);
}

/** A policy that remembers what it chose: many vehicles begin alike. */
function remembering(policy: Policy): Policy {
  const remembered = new Map<string, Move>();
  return (model, state) => {
    const key = JSON.stringify([state.findings, state.repairs]);
    const known = remembered.get(key) ?? policy(model, state);
    remembered.set(key, known);
    return known;
  };
}

/** The tree's own way, and the advice where that ends: what a mechanic does who follows the screens. */
export function ownWay(tree: Tree): Policy {
  const advised = advisedPolicy([]);
  return remembering((model, state) => {
    const to = nextOnWay(tree, doneIn(state));
    if (to.kind === 'check') return { do: 'check', index: checkIndex(model, to.check) };
    return to.kind === 'cause'
      ? { do: 'repair', index: model.causes.findIndex(({ id }) => id === to.cause) }
      : advised(model, state);
  });
}

/** Follows the advice. `further` as in the advice; none for the one-step advice. */
export const advisedPolicy = (further?: AdviseOptions['further']): Policy =>
  remembering((model, state) => {
    const given = caseAt(model, state);
    const advice =
      further?.length === 0
        ? quickAdvice(given)
        : refinedAdvice(given, further === undefined ? {} : { further });
    const best = advice.kind === 'good' ? advice.value.next[0] : undefined;
    if (best === undefined) return likeliest(model, state);
    const from = best.do === 'check' ? model.checks : model.causes;
    return { do: best.do, index: from.findIndex(({ id }) => id === best.id) };
  });
