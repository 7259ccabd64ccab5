import { createHash } from 'node:crypto';
import { serialize } from 'node:v8';
import { startAdvice, type Advising } from '../../src/core/reason/advice/advise.ts';
import type { Advice } from '../../src/core/reason/advice/advice.ts';
import { good } from '../../src/core/problem.ts';

/** By all that the advice rests on: every piece of it that was told, the last one settled. */
const kept = new Map<string, readonly Advice[]>();

/**
 * `startAdvice`, worked out once for the same input and options: programs of many tests stand at
 * the same place. Each piece is told again in its order.
 */
export const keptAdvice: typeof startAdvice = (input, options) => {
  const key = createHash('sha256')
    .update(serialize([input, options]))
    .digest('hex');
  const told = kept.get(key);
  if (told !== undefined) return good(retold(told));
  const started = startAdvice(input, options);
  return started.kind === 'bad' ? started : good(keeping(key, started.value));
};

function* keeping(key: string, advising: Advising): Advising {
  const told: Advice[] = [];
  for (;;) {
    const { done, value } = advising.next();
    if (value !== undefined) told.push(value);
    if (done === true) {
      kept.set(key, told);
      return value;
    }
    yield value;
  }
}

function* retold(told: readonly Advice[]): Advising {
  yield* told.slice(0, -1);
  const last = told.at(-1);
  if (last === undefined) throw new RangeError('advice was kept that never came');
  return last;
}
