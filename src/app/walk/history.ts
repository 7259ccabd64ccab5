import { clauseOf } from '../../core/account/clauses/clauses.ts';
import { accountContext, type AccountContext } from '../../core/account/context.ts';
import { clockTime } from '../../core/session/clock.ts';
import { payloadOf, type Entry } from '../../core/session/correct.ts';
import { leftLines } from '../../core/session/rules/left-open.ts';
import { canTakeBack } from '../../core/session/rules/take-back.ts';
import type { Story } from '../../core/session/story.ts';
import { inform, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved } from '../keys/cursor.ts';
import type { Page } from '../page.ts';
import { home, ready, walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { afterAction } from './answer.ts';

/** One line of the history. */
export type HistoryLine = {
  /** The event that it tells; undefined for what is left open now. */
  readonly n: number | undefined;
  readonly time: string;
  readonly words: string;
  /** What can be done about it from here. */
  readonly mend: 'nothing' | 'take back' | 'take back or answer anew';
};

/** All that was done, as it stands and as it was taken back or put right; then what is left open. */
export function historyLines(story: Story): readonly HistoryLine[] {
  const context = accountContext(story, {}, []);
  return [
    ...story.entries.filter(isTold).map((entry) => lineOf(context, entry)),
    ...leftLines(story).map((words) => ({
      n: undefined,
      time: 'now',
      words,
      mend: 'nothing' as const,
    })),
  ];
}

/** Corrections stand beside what they correct, and what was only implied belongs to its step. */
const isTold = ({ event }: Entry): boolean =>
  event.kind !== 'corrected' && !('implied' in event && event.implied === true);

function lineOf(context: AccountContext, entry: Entry): HistoryLine {
  const { event, said } = entry;
  const told = said !== undefined && 'told' in said ? said.told : undefined;
  const answer = event.kind === 'found' || event.kind === 'proved';
  const can = canTakeBack(entry);
  return {
    n: event.n,
    time: clockTime(told ?? event.at),
    words: wordsOf(context, entry),
    mend: !can ? 'nothing' : answer ? 'take back or answer anew' : 'take back',
  };
}

/** What an entry says, or said before it was taken back. */
function wordsOf(context: AccountContext, entry: Entry): string {
  const clause = clauseOf(context, entry);
  const words = clause?.phrase({ when: '' }) ?? 'An entry that cannot be read.';
  const { said, event, correctedBy } = entry;
  if (said !== undefined) return correctedBy.length === 0 ? words : `${words} [put right]`;
  if (clause?.kind !== 'aside') return words;
  const first = { event, said: payloadOf(event), correctedBy: [] };
  const written = clauseOf(context, first)?.phrase({ when: '' });
  return written === undefined ? words : `${written} [taken back]`;
}

export const historyPage: Page<'history'> = {
  mode: () => 'history',
  open: (state) => {
    const lines = state.session === undefined ? [] : historyLines(state.session.story);
    const last = lines.findLastIndex(({ mend }) => mend !== 'nothing');
    return last < 0
      ? inform(state, 'Nothing was written yet.')
      : show(state, { kind: 'history', cursor: last });
  },
  update,
};

/** Lines that a page key goes on by. */
const leap = 10;

function update(state: State, screen: At<'history'>, press: KeyPress): Transition {
  const { session } = state;
  if (session === undefined) return show(state, home);
  const lines = historyLines(session.story);
  const line = lines[screen.cursor];
  switch (press.command) {
    case 'go-back':
      return show(state, walk);
    case 'read-on':
    case 'read-back': {
      const to = screen.cursor + (press.command === 'read-on' ? leap : -leap);
      return show(state, { ...screen, cursor: Math.max(0, Math.min(lines.length - 1, to)) });
    }
    case 'confirm':
      return takeBack(state, screen, line);
    case 'answer-anew':
      return line?.n === undefined || line.mend !== 'take back or answer anew'
        ? inform(state, 'This is no answer that stands.')
        : show(state, { kind: 'walk', input: ready, correcting: line.n });
    default:
      return show(state, { ...screen, cursor: moved(screen.cursor, press.command, lines.length) });
  }
}

function takeBack(state: State, screen: At<'history'>, line: HistoryLine | undefined): Transition {
  if (line?.n === undefined || line.mend === 'nothing')
    return inform(state, 'There is nothing of this to take back.');
  const acted = takeAction(state, { do: 'correct', n: line.n, withdraw: true });
  if (acted.outcome.kind === 'refused') return acted;
  const after = afterAction(acted);
  const { state: now } = inform(after.state, `Taken back: ${line.words}`);
  return transition(now.screen.kind === 'walk' ? { ...now, screen } : now, ...after.effects);
}
