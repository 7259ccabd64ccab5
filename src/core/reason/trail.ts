import type { Finding, Repaired, Story } from '../session/story.ts';
import { believe } from './belief.ts';
import { caseOf, type CheckFinding, type RepairMade } from './case.ts';
import { makeModel, type Model } from './model.ts';

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
  const steps: TrailStep[] = [];
  for (const one of done.filter((each) => each.leg <= leg)) {
    if (one.leg < leg) {
      weigher.take(one);
      continue;
    }
    const before = weigher.chances();
    weigher.take(one);
    const kind = isRepair(one) ? 'repair' : 'finding';
    const id = isRepair(one) ? one.cause : one.check;
    steps.push({ n: one.n, kind, id, leg, before, after: weigher.chances() });
  }
  return steps;
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
  readonly #known = new Map<string, ChanceMap | undefined>();

  constructor(story: Story, leg: number) {
    const found = story.legs[leg];
    if (found === undefined) throw new RangeError(`leg ${leg} is outside the session`);
    this.#story = story;
    this.#leg = leg;
    this.#model = makeModel(found.tree);
  }

  take(done: Done): void {
    const tree = this.#story.legs[this.#leg]?.tree;
    if (isRepair(done)) {
      if (tree !== undefined && Object.hasOwn(tree.causes, done.cause))
        this.#repairs.push({ cause: done.cause, at: this.#repairs.length });
      return;
    }
    const results = tree?.checks[done.check]?.results.map(({ id }) => id) ?? [];
    const lo = results.indexOf(done.result);
    const hi = done.orResult === undefined ? lo : results.indexOf(done.orResult);
    if (lo < 0 || hi < 0) return;
    const key = `${done.check} ${this.#repairs.length}`;
    this.#findings.delete(key);
    this.#findings.set(key, { check: done.check, lo, hi, at: this.#repairs.length });
  }

  chances(): ChanceMap | undefined {
    const findings = [...this.#findings.values()];
    const key = JSON.stringify([findings, this.#repairs.length]);
    if (!this.#known.has(key)) this.#known.set(key, this.#weigh(findings));
    return this.#known.get(key);
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
