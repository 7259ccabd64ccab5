import { startAdvice, type Advising } from '../core/reason/advice/advise.ts';
import { inputFrom, leftOut, ownStep } from '../core/reason/history/from-story.ts';
import type { Problem } from '../core/problem.ts';
import { prudenceOf } from '../core/reason/prudence.ts';
import { hidesAdvice } from './practice-rules.ts';
import type { Program } from './program.ts';
import type { OpenSession } from './state.ts';

/** Milliseconds of thinking before keys get their turn again. */
const slice = 8;

/**
 * Works the advice out behind the keys: a first answer at once, better ones as they come. A
 * new event makes it begin anew; what it was thinking about until then is dropped.
 */
export class Advisor {
  readonly #start: typeof startAdvice;
  #thinking: Advising | undefined;

  constructor(start = startAdvice) {
    this.#start = start;
  }

  /** Drops what it was thinking about. */
  stop(): void {
    this.#thinking = undefined;
  }

  begin(program: Program): void {
    this.stop();
    const { session, settings } = program.state();
    if (session === undefined || session.story.closed !== undefined) return;
    if (hidesAdvice(session.story)) return;
    const story = { ...session.story, due: session.own };
    const made = inputFrom(story, prudenceOf(settings));
    if (made.kind === 'bad') return cannot(program, session, made.problems);
    const own = ownStep(story);
    const started = this.#start(made.value, { leaveOut: leftOut(story), ...(own && { own }) });
    if (started.kind === 'bad') return cannot(program, session, started.problems);
    this.#thinking = started.value;
    setImmediate(() => this.#think(program, started.value, session.events.length));
  }

  #think(program: Program, thinking: Advising, events: number): void {
    if (this.#thinking !== thinking) return;
    const until = performance.now() + slice;
    while (performance.now() < until) {
      const { done, value } = thinking.next();
      if (value !== undefined) program.dispatch({ kind: 'advised', events, advice: value });
      if (done === true) return;
    }
    setImmediate(() => this.#think(program, thinking, events));
  }
}

/** Says why there is no advice, so that no page goes on promising it. */
function cannot(program: Program, { events }: OpenSession, problems: readonly Problem[]): void {
  const why = problems.map(({ message }) => message).join(' ');
  setImmediate(() => program.dispatch({ kind: 'not-advised', events: events.length, why }));
}
