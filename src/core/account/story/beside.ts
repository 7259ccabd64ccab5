import type { Block } from '../block.ts';

/** A picture or a word in the margin, with the number of the event beside which it belongs. */
export type Beside = { readonly at: number; readonly block: Block };

/** Hands out what belongs beside a story, in its order, as the story comes by. */
export class BesideStory {
  #left: readonly Beside[];

  constructor(all: readonly Beside[]) {
    this.#left = all.toSorted((one, other) => one.at - other.at);
  }

  /** All that belongs up to an event, and was not handed out. */
  upTo(n: number): readonly Block[] {
    const now = this.#left.filter(({ at }) => at <= n);
    this.#left = this.#left.filter(({ at }) => at > n);
    return now.map(({ block }) => block);
  }
}
