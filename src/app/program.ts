import type { Stamp } from '../core/session/kinds/shapes.ts';
import type { Settings } from '../core/settings.ts';
import type { Problem } from '../core/problem.ts';
import { object, type Effect, type Transition } from './effect.ts';
import type { Message } from './message.ts';
import type { SessionLine } from '../core/session/name.ts';
import { emptyState, type State } from './state.ts';

/** What the program thinks with, and what it does things with. Both come after the first frame. */
export type Logic = {
  readonly update: (state: State, message: Message, now: Stamp) => Transition;
  readonly runner: EffectRunner;
};

/** Does effects; what comes of them is dispatched as messages. */
export type EffectRunner = {
  readonly perform: (effect: Effect, program: Program) => void;
  /** Puts everything on the disk now and lets go of the session. */
  readonly shut: () => void;
  /** Lets go of the session without the disk, and hands over what it has not kept. */
  readonly abandon: () => void;
};

export type Beginning = {
  readonly clock: () => Stamp;
  readonly settings: Settings;
  readonly sessions: readonly SessionLine[];
  /** What is to be said on the first screen: that the settings cannot be read. */
  readonly trouble?: Problem | undefined;
};

/**
 * The program without a screen: messages in, states out, effects done on the way. It shows its
 * first state at once; messages wait until its logic is loaded.
 */
export class Program {
  readonly #clock: () => Stamp;
  readonly #listeners = new Set<() => void>();
  readonly #queue: Message[] = [];
  /** What the effects being done have to say: taken before anything that was waiting already. */
  #answers: Message[] | undefined;
  #state: State;
  #logic: Logic | undefined;
  #busy = false;

  constructor({ clock, settings, sessions, trouble }: Beginning) {
    this.#clock = clock;
    const first = { ...emptyState(clock(), settings), sessions };
    this.#state = trouble === undefined ? first : object(first, trouble).state;
  }

  readonly state = (): State => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Gives it its logic; what came meanwhile is taken in its order. */
  load(logic: Logic): void {
    this.#logic = logic;
    this.#drain();
  }

  /** Takes a message at once; one that comes up while another is being taken waits its turn. */
  readonly dispatch = (message: Message): void => {
    (this.#answers ?? this.#queue).push(message);
    this.#drain();
  };

  shut(): void {
    this.#logic?.runner.shut();
  }

  abandon(): void {
    this.#logic?.runner.abandon();
  }

  #drain(): void {
    if (this.#busy || this.#logic === undefined) return;
    this.#busy = true;
    try {
      for (let next = this.#queue.shift(); next !== undefined; next = this.#queue.shift())
        this.#take(this.#logic, next);
    } finally {
      this.#busy = false;
    }
    for (const listener of this.#listeners) listener();
  }

  #take({ update, runner }: Logic, message: Message): void {
    // That something was drawn is nothing that happened on the job: time does not go on with it.
    const now = message.kind === 'drawn' ? this.#state.now : this.#clock();
    const { state, effects } = update(this.#state, message, now);
    this.#state = state;
    this.#answers = [];
    for (const effect of effects) runner.perform(effect, this);
    this.#queue.unshift(...this.#answers);
    this.#answers = undefined;
  }
}
