import type { Case } from '../belief/evidence.ts';
import { changed, changeMinutes, parked } from './minutes.ts';
import type { WholeStanding } from './minutes.ts';

/** Accesses are kept as bits of one whole number; a tree has far fewer than this. */
const mostAccesses = 30;

type Row = { readonly minutes: Float64Array; readonly to: Int32Array };

/** Standings met so far, numbered, with the way from each to every step worked out once. */
class Standings {
  readonly #numberOf = new Map<string, number>();
  readonly #known: WholeStanding[] = [];
  readonly #rows: Row[] = [];
  readonly #given: Case;

  constructor(given: Case) {
    this.#given = given;
  }

  number(standing: WholeStanding): number {
    const key = `${standing.battery} ${standing.key} ${standing.engine} ${standing.heat}`;
    const known = this.#numberOf.get(key);
    if (known !== undefined) return known;
    this.#numberOf.set(key, this.#known.length);
    this.#known.push(standing);
    return this.#known.length - 1;
  }

  /** Checks first, then repairs; each with its own minutes, access left out. */
  row(from: number): Row {
    const kept = this.#rows[from];
    if (kept !== undefined) return kept;
    const { checks, causes, complaint } = this.#given.model;
    const standing = this.#known[from] ?? parked;
    const proof = checks[complaint];
    const minutes = new Float64Array(checks.length + causes.length);
    const to = new Int32Array(checks.length + causes.length);
    checks.forEach((check, index) => {
      const tries = index === complaint ? this.#given.tries : 1;
      minutes[index] = check.minutes * tries + changeMinutes(standing, check.standing);
      to[index] = this.number(changed(standing, check.standing));
    });
    causes.forEach((cause, index) => {
      const mended = changed(standing, cause.standing);
      const asked = proof?.standing ?? {};
      minutes[checks.length + index] =
        cause.minutes +
        changeMinutes(standing, cause.standing) +
        changeMinutes(mended, asked) +
        (proof?.minutes ?? 0) * this.#given.tries;
      to[checks.length + index] = this.number(changed(mended, asked));
    });
    this.#rows[from] = { minutes, to };
    return { minutes, to };
  }
}

/** Minutes of every step from any place on the way, quick enough to ask thousands of times. */
export class Costs {
  readonly standing: number;
  readonly opened: number;
  /** Accesses of each check, then of each repair with its proof. */
  readonly masks: Int32Array;
  readonly #access: number[] = [];
  readonly #standings: Standings;
  readonly #checks: number;

  constructor(given: Case) {
    const { checks, causes, complaint } = given.model;
    const ids = [...new Set([...checks, ...causes].flatMap(({ access }) => access))];
    const bits = (access: readonly string[]): number =>
      access.reduce((mask, id) => mask | this.#bit(ids.indexOf(id)), 0);
    this.#access = ids.slice(0, mostAccesses).map((id) => {
      const known = Object.hasOwn(given.accesses, id) ? given.accesses[id] : undefined;
      return (known?.open ?? 0) + (known?.close ?? 0);
    });
    const proof = bits(checks[complaint]?.access ?? []);
    this.masks = Int32Array.from([
      ...checks.map(({ access }) => bits(access)),
      ...causes.map(({ access }) => bits(access) | proof),
    ]);
    this.opened = bits(given.openAccess.filter((id) => ids.includes(id)));
    this.#checks = checks.length;
    this.#standings = new Standings(given);
    this.standing = this.#standings.number(changed(parked, given.standing));
  }

  #bit(index: number): number {
    return index < mostAccesses ? 1 << index : 0;
  }

  /** Index of a repair among the steps. */
  repair(cause: number): number {
    return this.#checks + cause;
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
