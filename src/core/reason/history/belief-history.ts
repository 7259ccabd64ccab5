import type { Finding, Repaired, Story } from '../../session/story.ts';
import { believe } from '../belief/posterior.ts';
import { caseOf, type CheckFinding, type RepairMade } from '../belief/evidence.ts';
import { makeModel, type Model } from '../belief/model.ts';

/** Chance of each cause by its id, `unlisted` among them; repaired ones stand at 0. */
export type ChanceMap = ReadonlyMap<string, number>;

/** What was believed before and after one finding or repair; undefined where nothing can explain it all. */
export type TrailStep = {
  readonly n: number;
  readonly kind: 'finding' | 'repair';
  /** The check found, or the cause repaired. */
  readonly id: string;
  readonly leg: number;
  readonly before: ChanceMap | undefined;
  readonly after: ChanceMap | undefined;
};

/** Steps of a leg that are weighed at its beginning and at its end: of a longer one, not the middle. */
export const weighedFirst = 120;
export const weighedLast = 60;

/**
 * The belief along a whole session, in the order of its events and with every correction applied.
 * Each finding is weighed once; everything that tells of the session shares what comes out.
 */
export function trailOf(story: Story): readonly TrailStep[] {
  return story.legs.flatMap((_, leg) => legTrail(story, leg));
}

type Done = Finding | Repaired;

const isRepair = (done: Done): done is Repaired => 'cause' in done;

/** Findings and repairs in order; those of earlier legs count where this leg's tree knows them. */
function legTrail(story: Story, leg: number): readonly TrailStep[] {
  const weigher = new Weigher(story, leg);
  const done: readonly Done[] = [...story.findings, ...story.repairs].toSorted(
    (one, other) => one.n - other.n,
  );
  for (const one of done.filter((each) => each.leg < leg)) weigher.take(one);
  const own = done.filter((each) => each.leg === leg);
  return own.flatMap((one, index): readonly TrailStep[] => {
    if (index >= weighedFirst && index < own.length - weighedLast) {
      weigher.take(one);
      return [];
    }
    const before = weigher.chances();
    weigher.take(one);
    const kind = isRepair(one) ? 'repair' : 'finding';
    const id = isRepair(one) ? one.cause : one.check;
    return [{ n: one.n, kind, id, leg, before, after: weigher.chances() }];
  });
}

/** The chances of every cause of a leg before anything was found in the session. */
export function chancesAtFirst(story: Story, leg = 0): ChanceMap | undefined {
  return new Weigher(story, leg).chances();
}

/** Keeps what counts so far of one leg: the last finding of each check between two repairs. */
class Weigher {
  readonly #story: Story;
  readonly #leg: number;
  readonly #model: Model;
  readonly #findings = new Map<string, CheckFinding>();
  readonly #repairs: RepairMade[] = [];
  /** Nothing until it is asked for, and again after whatever changes it. */
  #weighed: { readonly chances: ChanceMap | undefined } | undefined;

  constructor(story: Story, leg: number) {
    const found = story.legs[leg];
    if (found === undefined) throw new RangeError(`leg ${leg} is outside the session`);
    this.#story = story;
    this.#leg = leg;
    this.#model = makeModel(found.tree);
  }

  take(done: Done): void {
    if (isRepair(done)) this.#takeRepair(done);
    else this.#takeFinding(done);
  }

  #takeRepair({ cause }: Repaired): void {
    if (!this.#model.causes.some(({ id }) => id === cause)) return;
    this.#repairs.push({ cause, at: this.#repairs.length });
    this.#weighed = undefined;
  }

  #takeFinding({ check, result, orResult }: Finding): void {
    const found = this.#story.legs[this.#leg]?.tree.checks[check];
    const results = found?.results.map(({ id }) => id) ?? [];
    const lo = results.indexOf(result);
    const hi = orResult === undefined ? lo : results.indexOf(orResult);
    if (lo < 0 || hi < 0) return;
    const key = `${check} ${this.#repairs.length}`;
    const last = this.#findings.get(key);
    // A repeat with the same result is the same evidence, unless another check shows the same thing.
    if (last?.lo === lo && last.hi === hi && found?.same === undefined) return;
    this.#findings.delete(key);
    this.#findings.set(key, { check, lo, hi, at: this.#repairs.length });
    this.#weighed = undefined;
  }

  chances(): ChanceMap | undefined {
    this.#weighed ??= { chances: this.#weigh([...this.#findings.values()]) };
    return this.#weighed.chances;
  }

  #weigh(findings: readonly CheckFinding[]): ChanceMap | undefined {
    const made = caseOf(this.#model, { findings, repairs: this.#repairs });
    const belief = made.kind === 'good' ? believe(made.value) : made;
    if (belief.kind === 'bad') return undefined;
    return new Map(
      this.#model.causes.map(({ id }, index) => [id, belief.value.chances[index] ?? 0]),
    );
  }
}
