import { at } from '../../at.ts';
import type { Finding, Repaired, Story } from '../../session/story.ts';
import type { Tree } from '../../tree/model.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { believe } from '../belief/posterior.ts';
import { inputOf, type CheckFinding, type RepairMade } from '../belief/evidence.ts';
import { makeModel, type Model } from '../belief/model.ts';
import { broughtFaults } from '../../session/contradiction.ts';
import { kinOf } from '../../tree/kin.ts';
import { findingIn } from './from-story.ts';

/** Chance of each cause by its id, `unlisted` among them; repaired ones stand at 0. */
export type ChanceMap = ReadonlyMap<string, number>;

/** What was believed before and after one finding or repair; undefined where nothing can explain it all. */
export type BeliefStep = {
  readonly n: number;
  readonly kind: 'finding' | 'repair';
  /** The check found, or the cause repaired. */
  readonly id: string;
  readonly leg: number;
  readonly before: ChanceMap | undefined;
  readonly after: ChanceMap | undefined;
  /** The chance of this very finding by all that was known before it; undefined where none can be told. */
  readonly expected: number | undefined;
};

/** Steps of a leg that are weighed at its beginning and at its end: of a longer one, not the middle. */
export const weighedFirst = 50;
export const weighedLast = 25;

/**
 * The belief along a whole session, in the order of its events and with every correction applied.
 * Each finding is weighed once; everything that tells of the session shares what comes out.
 * Steps up to event `since` are counted, not told.
 */
export function beliefHistory(story: Story, since = 0): readonly BeliefStep[] {
  return story.legs.flatMap((_, leg) => legHistory(story, leg, since));
}

type Done = Finding | Repaired;

const isRepair = (done: Done): done is Repaired => 'cause' in done;

const doneIn = ({ findings, repairs }: Story): readonly Done[] =>
  [...findings, ...repairs].toSorted((one, other) => one.n - other.n);

/** Whether a leg was walked without a tree: nobody gave odds, so nothing is believed of its causes. */
const hasNoOdds = ({ legs }: Story, leg: number): boolean => isOwn(at(legs, leg).tree);

/** The steps of a leg; findings and repairs of earlier legs count where this leg's tree knows them. */
function legHistory(story: Story, leg: number, since: number): readonly BeliefStep[] {
  if (hasNoOdds(story, leg)) return [];
  const weigher = new Weigher(story, leg);
  const done = doneIn(story);
  for (const one of done.filter((each) => each.leg < leg)) weigher.take(one);
  const own = done.filter((each) => each.leg === leg);
  return own.flatMap((one, index): readonly BeliefStep[] => {
    const middle = index >= weighedFirst && index < own.length - weighedLast;
    if (middle || one.n <= since) {
      weigher.take(one);
      return [];
    }
    const before = weigher.weighed();
    const fresh = weigher.take(one);
    const after = weigher.weighed();
    const kind = isRepair(one) ? 'repair' : 'finding';
    const id = isRepair(one) ? one.cause : one.check;
    const expected = fresh ? expectedOf(before, after) : undefined;
    return [{ n: one.n, kind, id, leg, before: before.chances, after: after.chances, expected }];
  });
}

/** What a finding adds to the evidence is its own chance by all that was found before it. */
const expectedOf = (before: WeighedAll, after: WeighedAll): number | undefined =>
  before.logEvidence === undefined || after.logEvidence === undefined
    ? undefined
    : Math.exp(after.logEvidence - before.logEvidence);

/** The chances of every cause of a leg before anything was found in the session. */
export function chancesAtFirst(story: Story, leg = 0): ChanceMap | undefined {
  return hasNoOdds(story, leg) ? undefined : new Weigher(story, leg).chances();
}

/** The chances of every cause of the leg being walked, after all that was found. */
export function chancesNow(story: Story): ChanceMap | undefined {
  if (hasNoOdds(story, story.legs.length - 1)) return undefined;
  const weigher = new Weigher(story, story.legs.length - 1);
  for (const one of doneIn(story)) weigher.take(one);
  return weigher.chances();
}

/** The likeliest cause, or `unlisted`; ties by name, and none where nothing can be there. */
export function leaderIn(chances: ChanceMap): string | undefined {
  const [first] = [...chances].toSorted(
    ([one, a], [other, b]) => b - a || (one < other ? -1 : Number(one > other)),
  );
  return first !== undefined && first[1] > 0 ? first[0] : undefined;
}

/** The chances of all causes, and the logarithm of the chance of all that was found, where it is exact. */
type WeighedAll = {
  readonly chances: ChanceMap | undefined;
  readonly logEvidence: number | undefined;
};

/**
 * Keeps what counts so far of one leg: the last finding of each check between two repairs. What the
 * mechanic said of a contradiction counts from the later finding on, whenever it was said.
 */
class Weigher {
  readonly #settled: Story['settled'];
  readonly #brought: readonly { readonly cause: string; readonly n: number }[];
  readonly #tree: Tree;
  readonly #model: Model;
  readonly #findings = new Map<string, CheckFinding>();
  readonly #repairs: RepairMade[] = [];
  readonly #comesAndGoes: string[] = [];
  readonly #arrived: RepairMade[] = [];
  /** Nothing until it is asked for, and again after whatever changes it. */
  #weighed: WeighedAll | undefined;

  constructor(story: Story, leg: number) {
    const found = story.legs[leg];
    if (found === undefined) throw new RangeError(`leg ${leg} is outside the session`);
    this.#tree = found.tree;
    this.#model = makeModel(found.tree);
    this.#settled = story.settled;
    this.#brought = broughtFaults(story);
  }

  /** @returns whether it is a finding that only adds to what was found before */
  take(done: Done): boolean {
    if (!isRepair(done)) return this.#takeFinding(done);
    this.#takeRepair(done);
    return false;
  }

  #takeRepair({ cause }: Repaired): void {
    if (!Object.hasOwn(this.#tree.causes, cause)) return;
    this.#repairs.push({ cause, at: this.#repairs.length });
    this.#weighed = undefined;
  }

  #takeFinding(finding: Finding): boolean {
    const found = findingIn(this.#tree, finding, this.#repairs.length);
    if (found === undefined) return false;
    this.#settle(finding, found.at);
    const kin = kinOf(this.#tree, found.check);
    const loose = this.#settled.some(
      ({ as, check }) => as === 'comes-and-goes' && kin.includes(check),
    );
    const key = loose ? `${finding.n}` : `${found.check} ${found.at}`;
    const last = this.#findings.get(key);
    const alone = this.#tree.checks[found.check]?.same === undefined;
    // A repeat with the same result is the same evidence, unless another check shows the same thing.
    if (alone && last?.lo === found.lo && last.hi === found.hi) return false;
    this.#findings.delete(key);
    this.#findings.set(key, found);
    this.#weighed = undefined;
    return last === undefined && !this.#settled.some(({ later }) => later === finding.n);
  }

  /** What was said of a contradiction that this finding makes. */
  #settle({ n, check }: Finding, at: number): void {
    const said = this.#settled.find(({ later }) => later === n);
    if (said?.as === 'comes-and-goes') this.#comesAndGoes.push(check);
    if (said?.as !== 'new-since') return;
    const kin = kinOf(this.#tree, check);
    for (const [key, one] of this.#findings)
      if (kin.includes(one.check)) this.#findings.delete(key);
    for (const { cause, n: later } of this.#brought)
      if (later === n) this.#arrived.push({ cause, at });
  }

  chances(): ChanceMap | undefined {
    return this.weighed().chances;
  }

  weighed(): WeighedAll {
    this.#weighed ??= this.#weigh([...this.#findings.values()]);
    return this.#weighed;
  }

  #weigh(findings: readonly CheckFinding[]): WeighedAll {
    const made = inputOf(this.#model, {
      findings,
      repairs: this.#repairs,
      comesAndGoes: this.#comesAndGoes,
      // What is still to come is not there yet.
      brought: [...this.#arrived, ...this.#brought.map(({ cause }) => ({ cause, at: Infinity }))],
    });
    const belief = made.kind === 'good' ? believe(made.value) : made;
    if (belief.kind === 'bad') return { chances: undefined, logEvidence: undefined };
    const { value } = belief;
    return {
      chances: new Map(this.#model.causes.map(({ id }, index) => [id, at(value.chances, index)])),
      logEvidence: value.kind === 'exact' ? value.logEvidence : undefined,
    };
  }
}
