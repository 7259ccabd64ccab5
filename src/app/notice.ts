import type { OpenSession, State } from './state.ts';
import { timerLine } from './timed.ts';

/** What stands in the notice row, and at its right end. */
export type Notice = {
  readonly left: string;
  readonly right: string;
  readonly as: 'problem' | 'plain';
};

/** What stands in the notice row: what was just said, and whether all is kept. */
export function noticeNow(state: State): Notice {
  const { notice, session } = state;
  const trouble = session?.trouble;
  const right = session === undefined ? '' : keptWords(session);
  if (trouble !== undefined)
    return { left: `NOT KEPT: ${trouble.message} ${trouble.mend}`, right, as: 'problem' };
  const timers = timerLine(state);
  return {
    left: [...(notice === undefined ? [] : [notice.text]), ...(timers === '' ? [] : [timers])].join(
      '  |  ',
    ),
    right,
    as: notice?.kind === 'problem' ? 'problem' : 'plain',
  };
}

/** Says `kept` only when everything shown is on the disk. */
function keptWords({ events, kept, keptAt, trouble }: OpenSession): string {
  if (trouble !== undefined) return 'not kept';
  return (events.at(-1)?.n ?? 0) === kept ? `kept ${keptAt}` : 'keeping...';
}
