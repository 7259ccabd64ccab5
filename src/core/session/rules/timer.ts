import type { ActionOf } from '../action.ts';
import type { Story } from '../story.ts';
import { accept, refuse, type Ruling } from './ruling.ts';

/** Stops a timer or puts it away: the one named by its event, or the one that was set last. */
export function timerOff({ n }: ActionOf<'timer-off'>, { timers }: Story): Ruling {
  const timer = timers.findLast((one) => n === undefined || one.n === n);
  if (timer !== undefined) return accept([{ kind: 'timer-off', of: timer.n }]);
  const named = timers.map((one) => `${one.n} (${one.label})`).join(', ');
  return refuse(
    'no-timer',
    'There is no such timer.',
    named === '' ? 'None was set, or all are put away.' : `Give the number of one: ${named}.`,
    n === undefined ? undefined : String(n),
  );
}
