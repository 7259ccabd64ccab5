import { at } from '../../at.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import {
  accessMinutes,
  accessOf,
  moveMinutes,
  movePrice,
  placeAfterMove,
  placeOf,
} from './minutes.ts';
import type { Move, Place } from './minutes.ts';

/**
 * Accesses are kept as bits of one whole number. A tree has far fewer than this; of one that has
 * more, the rest are paid for at each step.
 */
const mostAccesses = 30;

/** By place in the short list. */
type RepairCosts = { readonly cost: Float64Array; readonly minutes: Float64Array };

type Row = { readonly minutes: Float64Array; readonly to: Int32Array };

type Left = Pick<Place, 'standing' | 'over'>;

/** Standings met so far, with the states that are over in them, numbered, and the way from each to every step worked out once. */
class Standings {
  readonly #numberOf = new Map<string, number>();
  readonly #known: Left[] = [];
  readonly #rows: Row[] = [];
  readonly #input: ReasoningInput;
  readonly #moves: readonly Move[];
  readonly #open: ReadonlySet<string>;

  constructor(input: ReasoningInput, moves: readonly Move[], open: ReadonlySet<string>) {
    this.#input = input;
    this.#moves = moves;
    this.#open = open;
  }

  number({ standing, over }: Left): number {
    const { battery, key: ignition, engine, heat } = standing;
    const key = `${battery} ${ignition} ${engine} ${heat} ${over.toSorted().join(' ')}`;
    const known = this.#numberOf.get(key);
    if (known !== undefined) return known;
    this.#numberOf.set(key, this.#known.length);
    this.#known.push({ standing, over });
    return this.#known.length - 1;
  }

  /** By move: its minutes with all that the bits name open, and the standing that it leaves behind. */
  row(from: number): Row {
    const kept = this.#rows[from];
    if (kept !== undefined) return kept;
    const left = this.#known[from];
    if (left === undefined) throw new RangeError(`standing ${from} was never met`);
    const place: Place = { open: this.#open, ...left };
    const row = {
      minutes: Float64Array.from(
        this.#moves,
        (move) => moveMinutes(this.#input, move, place).total,
      ),
      to: Int32Array.from(this.#moves, (move) =>
        this.number(placeAfterMove(this.#input, move, place)),
      ),
    };
    this.#rows[from] = row;
    return row;
  }
}

/**
 * `moveMinutes` kept in tables, quick enough to be asked thousands of times: what is open is a
 * set of bits, and a standing, with what has passed, is a number.
 */
export class Costs {
  readonly standing: number;
  readonly opened: number;
  /** Accesses of each check, then of each repair with its proof. */
  readonly masks: Int32Array;
  /** Price of what each step has to buy, in minutes. */
  readonly #prices: Float64Array;
  readonly #access: readonly number[];
  readonly #standings: Standings;
  readonly #checks: number;

  readonly #causes: readonly number[];
  readonly #repairs = new Map<number, RepairCosts>();

  /** @param short the causes whose repairs are asked for together, by index in the model */
  constructor(input: ReasoningInput, short: readonly number[] = []) {
    this.#causes = short;
    const { checks, causes } = input.model;
    const moves = [
      ...checks.map((_, index): Move => ({ do: 'check', index })),
      ...causes.map((_, index): Move => ({ do: 'repair', index })),
    ];
    const now = placeOf(input.openAccess, input.standing, input.over);
    const all = new Set(moves.flatMap((move) => accessOf(input, move)));
    const ids = [...all].slice(0, mostAccesses);
    const bits = (access: readonly string[]): number =>
      ids.reduce((mask, id, index) => (access.includes(id) ? mask | (1 << index) : mask), 0);
    this.#access = ids.map((id) => accessMinutes(input, id));
    this.masks = Int32Array.from(moves, (move) => bits(accessOf(input, move)));
    this.#prices = Float64Array.from(moves, (move) => movePrice(input, move));
    this.opened = bits(input.openAccess);
    this.#checks = checks.length;
    this.#standings = new Standings(input, moves, now.open.union(new Set(ids)));
    this.standing = this.#standings.number(now);
  }

  /** Index of a repair among the steps. */
  repair(cause: number): number {
    return this.#checks + cause;
  }

  /** What the search weighs: the minutes of a step, and the price of its part. */
  cost(step: number, opened: number, standing: number): number {
    return this.minutes(step, opened, standing) + at(this.#prices, step);
  }

  /** Cost and minutes of mending each cause of the short list, from a place. */
  repairs(opened: number, standing: number): RepairCosts {
    const key = standing * 2 ** mostAccesses + opened;
    const known = this.#repairs.get(key);
    if (known !== undefined) return known;
    const steps = this.#causes.map((cause) => this.repair(cause));
    const prices = {
      // A repair that takes no time at all still comes after one that gains more.
      cost: Float64Array.from(steps, (step) => Math.max(1e-9, this.cost(step, opened, standing))),
      minutes: Float64Array.from(steps, (step) => this.minutes(step, opened, standing)),
    };
    this.#repairs.set(key, prices);
    return prices;
  }

  minutes(step: number, opened: number, standing: number): number {
    return (
      (this.#standings.row(standing).minutes[step] ?? 0) +
      this.unopened(this.masks[step] ?? 0, opened)
    );
  }

  /** Minutes to open, and close again, what is still shut of these accesses. */
  unopened(wanted: number, opened: number): number {
    let total = 0;
    let shut = wanted & ~opened;
    for (let index = 0; shut !== 0; index += 1, shut >>>= 1)
      if ((shut & 1) === 1) total += this.#access[index] ?? 0;
    return total;
  }

  standingAfter(step: number, standing: number): number {
    return this.#standings.row(standing).to[step] ?? standing;
  }
}
