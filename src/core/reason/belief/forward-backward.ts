import { at } from '../../at.ts';
import type { Compiled } from './compile.ts';
import type { Order, PlacedFactor, Operation } from './order.ts';
import { applyFactor, closePlace, openTop, reopenPlace, applyFactorBack } from './messages.ts';
import type { States } from './messages.ts';

/** The run over the causes: the states before each cause, and the evidence as a logarithm. */
export type Forward = {
  readonly messages: readonly States[];
  readonly end: number;
  readonly logScale: number;
};

/** Below this the states are scaled up, so that a long record never sinks to zero. */
const small = 1e-100;

function scaled(states: States): { readonly states: States; readonly log: number } {
  let most = 0;
  for (const weight of states) most = Math.max(most, weight);
  if (most === 0 || most > small) return { states, log: 0 };
  return { states: states.map((weight) => weight / most), log: Math.log(most) };
}

/** Prior weight of a cause being there, with the evidence on it alone, and of its absence. */
type Odds = { readonly present: number; readonly absent: number };

function oddsOf(compiled: Compiled, priors: readonly number[], cause: number): Odds {
  const prior = at(priors, cause);
  return { present: prior * at(compiled.causes, cause).base, absent: 1 - prior };
}

function withCause(states: States, factors: readonly PlacedFactor[], odds: Odds): States {
  const next = states.slice();
  for (const factor of factors) applyFactor(next, factor);
  for (let index = 0; index < next.length; index += 1)
    next[index] = odds.absent * (states[index] ?? 0) + odds.present * (next[index] ?? 0);
  return next;
}

export function runForward(order: Order, compiled: Compiled, priors: readonly number[]): Forward {
  let states: States = new Float64Array([1]);
  let logScale = 0;
  const messages: States[] = [];
  const after = (operation: Operation): States => {
    switch (operation.kind) {
      case 'open':
        return openTop(states);
      case 'background':
        applyFactor(states, operation.factor);
        return states;
      case 'close': {
        const next = scaled(closePlace(states, operation.place));
        logScale += next.log;
        return next.states;
      }
      case 'cause':
        messages.push(states);
        return withCause(states, operation.factors, oddsOf(compiled, priors, operation.cause));
    }
  };
  for (const operation of order.operations) states = after(operation);
  return { messages, end: states[0] ?? 0, logScale };
}

function dot(one: States, other: States): number {
  let sum = 0;
  for (let index = 0; index < one.length; index += 1)
    sum += (one[index] ?? 0) * (other[index] ?? 0);
  return sum;
}

type Share = { readonly states: States; readonly chance: number };

/** The transpose of `withCause`, and how much of the evidence has the cause present. */
function backOver(
  after: States,
  input: States,
  factors: readonly PlacedFactor[],
  odds: Odds,
): Share {
  const states = after.slice();
  for (const factor of factors) applyFactorBack(states, factor);
  const present = odds.present * dot(states, input);
  const absent = odds.absent * dot(after, input);
  for (let index = 0; index < states.length; index += 1)
    states[index] = odds.absent * (after[index] ?? 0) + odds.present * (states[index] ?? 0);
  return { states, chance: present / (present + absent) };
}

/**
 * The run back: each cause's share of the evidence with it present, over the evidence with it
 * and without. The two parts are weighed against each other, so scaling cancels.
 */
export function runBack(
  order: Order,
  compiled: Compiled,
  priors: readonly number[],
  messages: readonly States[],
): Map<number, number> {
  let states: States = new Float64Array([1]);
  let index = messages.length;
  const chances = new Map<number, number>();
  const before = (operation: Operation): States => {
    switch (operation.kind) {
      case 'open':
        return states.slice(0, states.length / 2);
      case 'background':
        applyFactorBack(states, operation.factor);
        return states;
      case 'close':
        return scaled(reopenPlace(states, operation.place)).states;
      case 'cause': {
        index -= 1;
        const odds = oddsOf(compiled, priors, operation.cause);
        const share = backOver(states, at(messages, index), operation.factors, odds);
        chances.set(operation.cause, share.chance);
        return share.states;
      }
    }
  };
  for (const operation of order.operations.toReversed()) states = before(operation);
  return chances;
}
