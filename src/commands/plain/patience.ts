import type { Effect } from '../../app/effect.ts';
import type { Message } from '../../app/message.ts';
import type { Logic, Program } from '../../app/program.ts';
import { startAdvice, type Advising } from '../../core/reason/advice/advise.ts';

/** Effects that take their time, and what says that they are done. */
const answers: Partial<Readonly<Record<Effect['kind'], readonly Message['kind'][]>>> = {
  'write-account': ['account-written', 'failed'],
  'save-settings': ['settings-saved', 'failed'],
  'start-phone': ['phone-ready', 'phone-refused'],
};

/** Milliseconds that a question waits for better advice and for the disk: who is to read it waits no longer. */
const longest = 300;

/**
 * A line answers what was printed: before a question is told, what it waits for has come, and after it
 * nothing that was only thought out changes what stands there until the line is in.
 */
export class Patience {
  readonly #waiting = new Set<Effect['kind']>();
  #thinking: Advising | undefined;
  #held: Message | undefined;
  #holds = false;
  #wake: () => void = () => {};

  readonly around = ({ update, runner }: Logic): Logic => ({
    runner,
    update: (state, message, now) => {
      if (this.#holds && message.kind === 'advised') {
        this.#held = message;
        return { state, effects: [] };
      }
      const step = update(state, message, now);
      for (const kind of this.#waiting)
        if (answers[kind]?.includes(message.kind) === true) this.#waiting.delete(kind);
      for (const { kind } of step.effects) if (kind in answers) this.#waiting.add(kind);
      this.#wake();
      return step;
    },
  });

  /** The search for a better step, of which it is known when it has ended. */
  readonly startAdvice: typeof startAdvice = (input, options) => {
    const started = startAdvice(input, options);
    if (started.kind === 'bad') return started;
    const thinking = this.#told(started.value);
    this.#thinking = thinking;
    return { ...started, value: thinking };
  };

  *#told(advising: Advising): Advising {
    const thinking = this.#thinking;
    const advice = yield* advising;
    if (this.#thinking === thinking) this.#thinking = undefined;
    this.#wake();
    return advice;
  }

  /** From here on a line is waited for. */
  hold(): void {
    this.#holds = true;
  }

  /** The line is in and was taken: what was thought out meanwhile counts now. */
  letGo({ dispatch }: Program): void {
    this.#holds = false;
    const held = this.#held;
    this.#held = undefined;
    if (held !== undefined) dispatch(held);
  }

  /** Done when nothing is on its way that the next question would show. */
  async settled({ state }: Program): Promise<void> {
    const comes = () => {
      const { session } = state();
      if (session === undefined) return false;
      const thinks = session.story.closed === undefined && this.#thinking !== undefined;
      return (
        thinks || (session.trouble === undefined && session.kept < (session.events.at(-1)?.n ?? 0))
      );
    };
    let patient = true;
    const timer = setTimeout(() => {
      patient = false;
      this.#wake();
    }, longest);
    // What is on its way already arrives before it is looked at.
    await new Promise(setImmediate);
    while (this.#waiting.size > 0 || (patient && comes())) await this.#woken();
    clearTimeout(timer);
    this.#wake = () => {};
  }

  readonly #woken = (): Promise<void> =>
    new Promise((wake) => {
      this.#wake = wake;
    });
}
