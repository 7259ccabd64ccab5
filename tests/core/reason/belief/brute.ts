import type { JobState } from '../../../../src/core/reason/belief/evidence.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';

/**
 * The belief by counting everything: every set of causes and, check by check, every way the
 * present causes and the background can produce results. Written from the tree format alone;
 * it shares no code with src/core/reason.
 */
export type Counted = {
  readonly evidence: number;
  readonly atFirst: Readonly<Record<string, number>>;
};

type Producer = {
  readonly id: string;
  readonly odds: readonly number[];
  /** It is there in findings made after this many repairs and more. */
  readonly came: number;
  readonly gone: number;
};

const differences = (totals: readonly number[]): number[] =>
  totals.map((total, index) => total - (index === 0 ? 0 : totals[index - 1]!));

/** What a cause adds of its own, from what a vehicle with it alone shows. */
function ownResults(row: readonly number[], background: readonly number[]): number[] {
  const totals: number[] = [];
  let rowTotal = 0;
  let backgroundTotal = 0;
  for (let result = 0; result < row.length; result += 1) {
    rowTotal += row[result]!;
    backgroundTotal += background[result]!;
    const ratio = result === row.length - 1 ? 1 : Math.min(1, rowTotal / backgroundTotal);
    totals.push(Math.max(ratio, totals.at(-1) ?? 0));
  }
  return differences(totals);
}

function causesOf(tree: Tree): { id: string; odds: number }[] {
  const listed = Object.entries(tree.causes).flatMap(([id, { odds }]) =>
    id.startsWith('brought-') ? [] : [{ id, odds }],
  );
  return tree.unlisted > 0 ? [...listed, { id: 'unlisted', odds: tree.unlisted }] : listed;
}

/** Own results of a cause in a check, or undefined where it takes no part. */
function produced(tree: Tree, checkId: string, cause: string): number[] | undefined {
  const check = tree.checks[checkId]!;
  const length = check.results.length;
  const isComplaint = checkId === tree.complaint.confirm;
  const healthyOnly = Array.from({ length }, (_, index) => (index === 0 ? 1 : 0));
  const row = check.points[cause];
  if (row !== undefined) return ownResults(row, isComplaint ? healthyOnly : check.background!);
  if (isComplaint) return healthyOnly.toReversed();
  if (cause !== 'unlisted') return undefined;
  return Array.from({ length }, (_, index) => (index === 0 ? 0.9 : 0.1 / (length - 1)));
}

/** P(two or more | complaint) over all sets, with each cause's own chance of showing it. */
function severalGivenComplaint(chances: readonly number[], shows: readonly number[]): number {
  let complaint = 0;
  let several = 0;
  for (let set = 0; set < 2 ** chances.length; set += 1) {
    let weight = 1;
    let silent = 1;
    let size = 0;
    chances.forEach((chance, index) => {
      const present = Math.floor(set / 2 ** index) % 2 === 1;
      weight *= present ? chance : 1 - chance;
      if (present) {
        silent *= 1 - shows[index]!;
        size += 1;
      }
    });
    complaint += weight * (1 - silent);
    if (size > 1) several += weight * (1 - silent);
  }
  return several / complaint;
}

function countedPriors(tree: Tree): number[] {
  const causes = causesOf(tree);
  const total = causes.reduce((sum, { odds }) => sum + odds, 0);
  const shows = causes.map(({ id }) => 1 - produced(tree, tree.complaint.confirm, id)![0]!);
  const at = (s: number) => causes.map(({ odds }) => Math.min(0.95, (s * odds) / total));
  let low = 0;
  let high = 1000 * total;
  for (let step = 0; step < 90; step += 1) {
    const middle = (low + high) / 2;
    if (severalGivenComplaint(at(middle), shows) < tree.alsoLikely) low = middle;
    else high = middle;
  }
  return at(low);
}

type Seen = { readonly lo: number; readonly hi: number; readonly at: number };

/** Chance of all that one check showed, by running through every way it can come about. */
function chanceOfSeen(producers: readonly Producer[], seen: readonly Seen[]): number {
  let sum = 0;
  const drawn: number[] = [];
  const draw = (weight: number): void => {
    if (weight === 0) return;
    const next = producers[drawn.length];
    if (next === undefined) {
      const fits = seen.every(({ lo, hi, at }) => {
        const shown = Math.max(
          ...drawn.filter((_, index) => {
            const { came, gone } = producers[index]!;
            return came <= at && at <= gone;
          }),
        );
        return shown >= lo && shown <= hi;
      });
      if (fits) sum += weight;
      return;
    }
    next.odds.forEach((chance, result) => {
      drawn.push(result);
      draw(weight * chance);
      drawn.pop();
    });
  };
  draw(1);
  return sum;
}

/**
 * What was seen, by check: no repeat without a repair between counts twice. A check that comes and
 * goes stands there once for each of its findings, each by itself.
 */
function seenByCheck(tree: Tree, state: JobState): (readonly [string, Seen[]])[] {
  const seen = new Map<string, Seen[]>();
  const { confirm } = tree.complaint;
  const last = tree.checks[confirm]!.results.length - 1;
  const told = [{ check: confirm, lo: 1, hi: last, at: 0 }, ...state.findings];
  const loose = new Set(state.comesAndGoes);
  const byWord = state.findings.every(({ check, at }) => check !== confirm || at > 0);
  const alone = told.filter(({ check }, i) => loose.has(check) && (i > 0 || byWord));
  for (const { check, lo, hi, at } of told.filter((one) => !loose.has(one.check))) {
    const others = (seen.get(check) ?? []).filter((one) => one.at !== at);
    seen.set(check, [...others, { lo, hi, at }]);
  }
  return [...seen, ...alone.map(({ check, ...one }) => [check, [one]] as [string, Seen[]])];
}

/** Chance that a repair brings a fault: common practice, no source. */
const broughtChance = 0.02;

export function count(tree: Tree, state: JobState, own = countedPriors(tree)): Counted {
  const brought = state.brought ?? [];
  const causes = [...causesOf(tree), ...brought.map(({ cause: id }) => ({ id }))];
  const priors = [...own, ...brought.map(() => broughtChance)];
  const cameAt = (id: string) => brought.find(({ cause }) => cause === id)?.at ?? 0;
  const goneAt = (id: string) =>
    state.repairs.find(({ cause }) => cause === id)?.at ?? Number.POSITIVE_INFINITY;
  const checks = seenByCheck(tree, state).map(([id, seen]) => ({
    seen,
    known: new Map<string, number>(),
    background: Array.from(tree.checks[id]!.results, (_, index) =>
      id === tree.complaint.confirm ? Number(index === 0) : tree.checks[id]!.background![index]!,
    ),
    producers: causes.map((cause) => produced(tree, id, cause.id)),
  }));
  let evidence = 0;
  const withCause = causes.map(() => 0);
  for (let set = 0; set < 2 ** causes.length; set += 1) {
    const present = causes.map((_, index) => Math.floor(set / 2 ** index) % 2 === 1);
    let weight = priors.reduce((all, prior, i) => all * (present[i] ? prior : 1 - prior), 1);
    for (const check of checks) {
      const taking = causes.flatMap(({ id }, index) => {
        const odds = check.producers[index];
        return present[index] && odds ? [{ id, odds, came: cameAt(id), gone: goneAt(id) }] : [];
      });
      const key = taking.map(({ id }) => id).join(' ');
      const always = { came: 0, gone: Number.POSITIVE_INFINITY };
      const background = { id: '', odds: check.background, ...always };
      const chance = check.known.get(key) ?? chanceOfSeen([background, ...taking], check.seen);
      check.known.set(key, chance);
      weight *= chance;
    }
    evidence += weight;
    present.forEach((there, index) => {
      if (there) withCause[index]! += weight;
    });
  }
  const atFirst = causes.map(({ id }, index) => [id, withCause[index]! / evidence] as const);
  return { evidence, atFirst: Object.fromEntries(atFirst) };
}
