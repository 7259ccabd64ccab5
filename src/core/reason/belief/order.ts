import { at } from '../../at.ts';
import type { Compiled, Factor } from './compile.ts';

/** A factor with its bits as places in the vector of states. */
export type PlacedFactor = {
  readonly places: readonly number[];
  readonly explains: readonly number[];
  readonly nothing: number;
};

/** The belief's run, step by step, over states "which open findings are explained already". */
export type Operation =
  | { readonly kind: 'open' }
  | { readonly kind: 'background'; readonly factor: PlacedFactor }
  | { readonly kind: 'cause'; readonly cause: number; readonly factors: readonly PlacedFactor[] }
  | { readonly kind: 'close'; readonly place: number };

export type Order = {
  readonly operations: readonly Operation[];
  /** Causes without a factor: they stand alone. */
  readonly alone: readonly number[];
  /** Most findings open at once. */
  readonly width: number;
};

/** Per bit: the causes that still have to be run over before it may close. */
type Waiting = Map<number, Set<number>>;

const bitsOf = (factors: readonly Factor[]): readonly number[] =>
  factors.flatMap((factor) => factor.bits);

function waitingFor(compiled: Compiled): Waiting {
  const waiting: Waiting = new Map();
  for (let bit = 0; bit < compiled.bits; bit += 1) waiting.set(bit, new Set());
  compiled.causes.forEach((cause, index) => {
    for (const bit of bitsOf(cause.factors)) waiting.get(bit)?.add(index);
  });
  return waiting;
}

class Run {
  readonly operations: Operation[] = [];
  readonly #open: number[] = [];
  readonly #waiting: Waiting;
  readonly #compiled: Compiled;
  width = 0;

  constructor(compiled: Compiled) {
    this.#compiled = compiled;
    this.#waiting = waitingFor(compiled);
  }

  /** The waiting bit whose causes open the fewest new bits; ties by number. */
  nextBit(): number | undefined {
    let best: number | undefined;
    let fewest = Infinity;
    for (const [bit, causes] of this.#waiting) {
      const opened = new Set([bit]);
      for (const cause of causes)
        for (const other of bitsOf(at(this.#compiled.causes, cause).factors)) opened.add(other);
      const fresh = [...opened].filter((other) => !this.#open.includes(other)).length;
      if (fresh < fewest) [best, fewest] = [bit, fresh];
    }
    return best;
  }

  finish(bit: number): void {
    this.open(bit);
    const causes = [...(this.#waiting.get(bit) ?? [])];
    const opens = (cause: number): number =>
      bitsOf(at(this.#compiled.causes, cause).factors).filter(
        (other) => !this.#open.includes(other),
      ).length;
    for (const cause of causes.toSorted((one, other) => opens(one) - opens(other))) this.add(cause);
    this.closeAll();
  }

  private add(cause: number): void {
    const { factors } = at(this.#compiled.causes, cause);
    for (const bit of bitsOf(factors)) this.open(bit);
    this.operations.push({
      kind: 'cause',
      cause,
      factors: factors.map((factor) => this.placed(factor)),
    });
    for (const bit of bitsOf(factors)) this.#waiting.get(bit)?.delete(cause);
    this.closeAll();
  }

  /** Opens a bit, with its check's other bits where the background may explain several at once. */
  private open(bit: number): void {
    if (this.#open.includes(bit)) return;
    const factor = this.#compiled.background.factors.find(({ bits }) => bits.includes(bit));
    for (const one of factor?.bits ?? [bit]) {
      this.#open.push(one);
      this.operations.push({ kind: 'open' });
    }
    this.width = Math.max(this.width, this.#open.length);
    if (factor !== undefined)
      this.operations.push({ kind: 'background', factor: this.placed(factor) });
  }

  private placed({ bits, explains, nothing }: Factor): PlacedFactor {
    return { places: bits.map((bit) => this.#open.indexOf(bit)), explains, nothing };
  }

  private closeAll(): void {
    for (const [bit, causes] of this.#waiting) {
      const place = this.#open.indexOf(bit);
      if (causes.size > 0 || place < 0) continue;
      this.#open.splice(place, 1);
      this.#waiting.delete(bit);
      this.operations.push({ kind: 'close', place });
    }
  }
}

/** Orders the causes so that the next finding to close is the one that opens fewest new ones. */
export function orderOf(compiled: Compiled): Order {
  const run = new Run(compiled);
  for (let bit = run.nextBit(); bit !== undefined; bit = run.nextBit()) run.finish(bit);
  const alone = compiled.causes.flatMap((cause, index) =>
    cause.factors.length === 0 ? [index] : [],
  );
  return { operations: run.operations, alone, width: run.width };
}
