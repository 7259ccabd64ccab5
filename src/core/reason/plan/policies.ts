import { at } from '../../at.ts';
import type { Tree } from '../../tree/model.ts';
import { nextOnWay } from '../../tree/way/way.ts';
import { quickAdvice } from '../advice/advise.ts';
import type { AdviseOptions } from '../advice/advise.ts';
import { atOnce } from '../advice/search.ts';
import { believe } from '../belief/posterior.ts';
import { inputOf } from '../belief/evidence.ts';
import type { ReasoningInput, JobState } from '../belief/evidence.ts';
import { moveMinutes, moveNamed } from '../advice/minutes.ts';
import type { Move } from '../advice/minutes.ts';
import type { Model } from '../belief/model.ts';
import { checkIndex, doneIn } from './episode.ts';

/** Chooses the next step of a simulated job; it sees what a mechanic would have seen. */
export type Policy = (model: Model, state: JobState) => Move;

/** The input of a model as an episode stands; findings that are none of the model's are our fault. */
export function inputAt(model: Model, state: JobState): ReasoningInput {
  const input = inputOf(model, state);
  if (input.kind === 'bad') throw new RangeError(input.problems[0]?.message ?? 'no input');
  return input.value;
}

/** The unrepaired cause with the highest score per minute of repair and proof. */
function bestPerMinute(input: ReasoningInput, scores: readonly number[]): Move {
  const rates = input.model.causes.map((_, index) =>
    input.repairedAt[index] === Infinity
      ? at(scores, index) / Math.max(moveMinutes(input, { do: 'repair', index }).total, 1e-9)
      : -1,
  );
  return { do: 'repair', index: rates.indexOf(Math.max(...rates)) };
}

/** Repairs by odds per minute, no checks at all. */
export const oddsOnly: Policy = (model, state) =>
  bestPerMinute(
    inputAt(model, state),
    model.causes.map(({ odds }) => odds),
  );

/** Mends what is likeliest for its minutes by all that was found: what to do off the tree's way. */
function likeliest(model: Model, state: JobState): Move {
  const input = inputAt(model, state);
  const belief = believe(input);
  return belief.kind === 'bad'
    ? oddsOnly(model, state)
    : bestPerMinute(input, belief.value.chances);
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
  const advised = advisedPolicy();
  return remembering((model, state) => {
    const to = nextOnWay(tree, doneIn(state));
    if (to.kind === 'check') return { do: 'check', index: checkIndex(model, to.check) };
    return to.kind === 'cause'
      ? { do: 'repair', index: model.causes.findIndex(({ id }) => id === to.cause) }
      : advised(model, state);
  });
}

/**
 * Follows the advice that leads the screens, two steps ahead.
 * @param further how far to look instead; none for one step
 */
export const advisedPolicy = (further: AdviseOptions['further'] = atOnce): Policy =>
  remembering((model, state) => {
    const advice = quickAdvice(inputAt(model, state), { further });
    const best = advice.kind === 'good' ? advice.value.next[0] : undefined;
    return (best && moveNamed(model, best)) ?? likeliest(model, state);
  });
