import type { State } from '../../app/state.ts';
import { timerLine } from '../../app/timed.ts';
import { noticeNow } from '../../app/notice.ts';
import { headLeft, headWord } from '../../app/walk/head.ts';
import { footLines } from '../../screens/foot.ts';
import { endless } from '../../screens/plain/no-window.ts';
import { bodyLines, foldedText } from '../../screens/plain/as-lines.tsx';
import { allWays, shortWays } from './ways.ts';

/** Columns that are folded to at the least. */
const least = 20;

/**
 * What the program says, line by line: what is new of the head, of the notices and of the foot, then
 * the question, whole. It remembers what was said last, so that nothing is said twice without being asked.
 */
export class Teller {
  readonly #columns: () => number;
  #before: State | undefined;
  #head = '';
  #foot: ReadonlySet<string> = new Set();
  #mode = '';

  constructor(columns: () => number) {
    this.#columns = columns;
  }

  /** Whether something would be said of this state. */
  hasNews(state: State): boolean {
    return this.#isOther(state) || state.notice !== this.#before?.notice || this.#trouble(state);
  }

  /** The news of a state. */
  tell(state: State): readonly string[] {
    const other = this.#isOther(state);
    const said = [
      ...this.#headLines(state),
      ...this.#noticeLines(state),
      ...(other ? this.#footLines(state) : []),
      ...(other ? this.#question(state) : []),
    ];
    this.#before = state;
    return said;
  }

  /** The question again, whole, with how it can be answered. */
  again(state: State): readonly string[] {
    this.#mode = '';
    const said = [...this.#fold(footOf(state, this.#width())), ...this.#question(state)];
    this.#before = state;
    return said;
  }

  /** All that can be typed now. */
  ways(state: State): readonly string[] {
    return this.#fold(allWays(state));
  }

  notTaken(line: string, state: State): readonly string[] {
    const short = Array.from(line.trim()).slice(0, 40).join('');
    return this.#fold([`"${short}" means nothing here.`, ...shortWays(state)]);
  }

  fold(text: string): readonly string[] {
    return foldedText(text, this.#width());
  }

  readonly #fold = (texts: readonly string[]): readonly string[] =>
    texts.flatMap((text) => this.fold(text));

  readonly #width = (): number => Math.max(least, this.#columns());

  readonly #isOther = ({ question, screen }: State): boolean =>
    question !== this.#before?.question || screen !== this.#before.screen;

  readonly #trouble = ({ session }: State): boolean =>
    session?.trouble !== this.#before?.session?.trouble;

  #headLines(state: State): readonly string[] {
    const { session, screen } = state;
    const onWalk = session !== undefined && screen.kind !== 'home' && screen.kind !== 'settings';
    const head = onWalk ? headLeft(state, session, endless) : headWord(session);
    if (head === this.#head) return [];
    this.#head = head;
    return this.#fold([head]);
  }

  /** What was just said, and that it is kept, where something was written. */
  #noticeLines(state: State): readonly string[] {
    const { session, notice } = state;
    const before = this.#before;
    const trouble = this.#trouble(state) ? session?.trouble : undefined;
    return this.#fold([
      ...(trouble === undefined ? [] : [`NOT KEPT: ${trouble.message} ${trouble.mend}`]),
      ...(notice === undefined || notice === before?.notice ? [] : [notice.text]),
      ...(session?.kept === before?.session?.kept ? [] : keptWords(state)),
    ]);
  }

  /** Under the step itself: pages that are opened from it say nothing of it again. */
  #footLines(state: State): readonly string[] {
    if (state.screen.kind !== 'walk' || state.screen.input.kind !== 'ready') return [];
    const foot = footOf(state, this.#width());
    const news = foot.filter((line) => !this.#foot.has(line));
    this.#foot = new Set(foot);
    return this.#fold(news);
  }

  #question(state: State): readonly string[] {
    const { mode } = state.question;
    const ways = mode === this.#mode ? [] : shortWays(state);
    this.#mode = mode;
    return ['', ...bodyLines(state, this.#width()), ...this.#fold(ways)];
  }
}

/** That what was written is kept; a replay writes nothing. */
function keptWords(state: State): readonly string[] {
  const { right } = noticeNow(state);
  return right === '' || state.screen.kind === 'replay' ? [] : [`(${right})`];
}

/** What stands under every step, and the timers that run. */
function footOf(state: State, columns: number): readonly string[] {
  const { session, screen } = state;
  const timers = timerLine(state);
  const onWalk = session !== undefined && screen.kind !== 'home' && screen.kind !== 'settings';
  const foot = onWalk ? footLines(state, session, { rows: endless, columns }) : [];
  return [...foot, ...(timers === '' ? [] : [`TIMERS    ${timers}`])];
}
