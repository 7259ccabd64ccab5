import type { ReasoningInput } from '../belief/evidence.ts';
import { unlisted } from '../../tree/model.ts';
import { Costs } from './costs.ts';
import type { FaultSet } from '../belief/fault-sets.ts';

/**
 * What a search for the next step works on: a list of fault sets over a short list of causes,
 * with every table it needs. Sets are bits of one number, by place in the short list.
 */
export class SearchTables {
  readonly input: ReasoningInput;
  readonly costs: Costs;
  /** Causes of the short list, by index in the model. */
  readonly causes: readonly number[];
  readonly sets: Int32Array;
  /** First place of each check in a row of totals. */
  readonly offsets: readonly number[];
  readonly groups: Int32Array;
  /** By check: the causes that take part in it, as a set. */
  readonly linked: Int32Array;
  /** The same without the unlisted cause, which takes a weak part in every check. */
  readonly tellsOf: Int32Array;
  /** By set of causes: chance that none of them shows the complaint. */
  readonly silent: Float64Array;
  readonly #rows: (Float64Array | undefined)[] = [];
  readonly #length: number;

  constructor(input: ReasoningInput, causes: readonly number[], sets: readonly FaultSet[]) {
    this.input = input;
    this.costs = new Costs(input, causes);
    this.causes = causes;
    this.sets = Int32Array.from(sets, (set) =>
      set.causes.reduce((mask, cause) => mask | (1 << causes.indexOf(cause)), 0),
    );
    let length = 0;
    this.offsets = input.model.checks.map(
      ({ results }) => (length += results.length) - results.length,
    );
    this.#length = length;
    this.groups = Int32Array.from(input.model.checks, ({ group }) => group);
    this.linked = Int32Array.from(input.model.checks, ({ links }) =>
      causes.reduce((mask, cause, place) => (links[cause] ? mask | (1 << place) : mask), 0),
    );
    const other = causes.findIndex((cause) => input.model.causes[cause]?.id === unlisted);
    this.tellsOf = this.linked.map((set) => (other < 0 ? set : set & ~(1 << other)));
    this.silent = this.#silentSets();
  }

  #silentSets(): Float64Array {
    const { evidence, model } = this.input;
    const links = model.checks[model.complaint]?.links ?? [];
    const group = model.checks[model.complaint]?.group;
    const hi = evidence.findLast((finding) => finding.group === group)?.hi ?? Infinity;
    const alone = this.causes.map((cause) => {
      const most = links[cause]?.[hi] ?? 1;
      return most > 0 ? Math.min(1, (links[cause]?.[0] ?? 1) / most) : 0;
    });
    const silent = new Float64Array(2 ** this.causes.length).fill(1);
    for (let mask = 1; mask < silent.length; mask += 1) {
      const low = 31 - Math.clz32(mask & -mask);
      silent[mask] = (silent[mask & (mask - 1)] ?? 1) * (alone[low] ?? 1);
    }
    return silent;
  }

  /** Chance that the complaint is gone once `cause` of the set is mended, given that it is there. */
  gain(set: number, cause: number): number {
    const without = this.silent[set & ~(1 << cause)] ?? 1;
    const whole = this.silent[set] ?? 1;
    return whole < 1 ? (without - whole) / (1 - whole) : 0;
  }

  /** Running totals of every check on a vehicle with exactly this set, one after the other. */
  row(set: number): Float64Array {
    const known = this.#rows[set];
    if (known !== undefined) return known;
    const row = new Float64Array(this.#length);
    if (set === 0) {
      for (const [index, check] of this.input.model.checks.entries())
        row.set(check.background, this.offsets[index]);
    } else {
      row.set(this.row(set & (set - 1)));
      this.#multiply(row, this.causes[31 - Math.clz32(set & -set)] ?? 0);
    }
    this.#rows[set] = row;
    return row;
  }

  #multiply(row: Float64Array, cause: number): void {
    for (const [index, check] of this.input.model.checks.entries()) {
      const offset = this.offsets[index] ?? 0;
      check.links[cause]?.forEach((total, result) => {
        row[offset + result] = (row[offset + result] ?? 1) * total;
      });
    }
  }
}
