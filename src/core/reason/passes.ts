import type { Compiled } from './compile.ts';
import type { Order, PlacedTouch, Step } from './order.ts';
import { applyTouch, closePlace, openTop, reopenPlace, returnTouch } from './tape.ts';
import type { States } from './tape.ts';

/** The run over the causes: the states before each cause, and the evidence as a logarithm. */
export type Forward = {
  readonly tape: readonly States[];
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

function withCause(
  states: States,
  touches: readonly PlacedTouch[],
  prior: number,
  base: number,
): States {
  const present = states.slice();
  for (const touch of touches) applyTouch(present, touch);
  const weight = prior * base;
  for (let index = 0; index < present.length; index += 1)
    present[index] = (1 - prior) * (states[index] ?? 0) + weight * (present[index] ?? 0);
  return present;
}

export function runForward(order: Order, compiled: Compiled, priors: readonly number[]): Forward {
  let states: States = new Float64Array([1]);
  let logScale = 0;
  const tape: States[] = [];
  const after = (step: Step): States => {
    switch (step.kind) {
      case 'open':
        return openTop(states);
      case 'background':
        applyTouch(states, step.touch);
        return states;
      case 'close': {
        const next = scaled(closePlace(states, step.place));
        logScale += next.log;
        return next.states;
      }
      case 'cause':
        tape.push(states);
        return withCause(
          states,
          step.touches,
          priors[step.cause] ?? 0,
          compiled.causes[step.cause]?.base ?? 1,
        );
    }
  };
  for (const step of order.steps) states = after(step);
  return { tape, end: states[0] ?? 0, logScale };
}

function dot(one: States, other: States): number {
  let sum = 0;
  for (let index = 0; index < one.length; index += 1)
    sum += (one[index] ?? 0) * (other[index] ?? 0);
  return sum;
}

/**
 * The run back: each cause's share of the evidence with it present, over the evidence with it
 * and without. The two parts are weighed against each other, so scaling cancels.
 */
export function runBack(
  order: Order,
  compiled: Compiled,
  priors: readonly number[],
  forward: Forward,
): Map<number, number> {
  let states: States = new Float64Array([1]);
  let position = forward.tape.length;
  const chances = new Map<number, number>();
  const before = (step: Step): States => {
    switch (step.kind) {
      case 'open':
        return states.slice(0, states.length / 2);
      case 'background':
        returnTouch(states, step.touch);
        return states;
      case 'close':
        return scaled(reopenPlace(states, step.place)).states;
      case 'cause': {
        position -= 1;
        const input = forward.tape[position] ?? states;
        const prior = priors[step.cause] ?? 0;
        const weight = prior * (compiled.causes[step.cause]?.base ?? 1);
        const back = states.slice();
        for (const touch of step.touches) returnTouch(back, touch);
        const present = weight * dot(back, input);
        const absent = (1 - prior) * dot(states, input);
        chances.set(step.cause, present / (present + absent));
        for (let index = 0; index < back.length; index += 1)
          back[index] = (1 - prior) * (states[index] ?? 0) + weight * (back[index] ?? 0);
        return back;
      }
    }
  };
  for (const step of order.steps.toReversed()) states = before(step);
  return chances;
}
