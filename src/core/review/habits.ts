import { contradictions } from '../session/contradiction.ts';
import { apartName, apartNow } from '../session/apart/apart.ts';
import { accessName, checkIn, firstLeg, type Story } from '../session/story.ts';
import { settlingWords } from '../account/clauses/settled.ts';
import { askedThing } from '../account/words/wording.ts';
import {
  stepOfCause,
  stepOfCheck,
  unreadOf,
  type CautionedStep,
} from '../session/rules/cautions.ts';
import { holdsBefore } from '../session/safeguard.ts';
import { kinOf } from '../tree/kin.ts';
import { holdsThen, reasonWords, stepThing } from '../account/clauses/safeguards.ts';
import { failedRepairs, repeatsOf } from '../account/blocks/ledger.ts';

/** What can be counted in a record of how somebody works. */
export type Habits = {
  /** The complaint was made to show itself before anything was opened, taken off or repaired. */
  readonly confirmedFirst: boolean;
  readonly baselineTaken: number;
  readonly baselineAsked: number;
  readonly repeats: number;
  readonly accessesTwice: readonly string[];
  /** Accesses open and parts off at the end. */
  readonly leftOff: readonly string[];
  readonly cautionsPassedOver: readonly string[];
  /** Steps that went past a safeguard of the tree, each with what had not been shown and why. */
  readonly safeguardsPassed: readonly string[];
  readonly unprovenRepairs: number;
  readonly failedRepairs: number;
  /** Repairs made before the one before them had been put to the proof. */
  readonly changesAtOnce: number;
  /** Findings worse than the one before them of the same thing, left standing. */
  readonly contradictions: number;
  /** Contradictions that were asked about, each with its answer in words. */
  readonly settled: readonly string[];
  /** Findings worse than the one before them, answered or not, and how many were looked at again. */
  readonly doubtful: number;
  readonly doubtfulRepeated: number;
  readonly corrections: number;
  readonly skipped: number;
};

export function habitsOf(story: Story): Habits {
  // What a safeguard held back to the end could not be taken.
  const asked = firstLeg(story).tree.baseline.filter(
    (check) =>
      story.findings.some((one) => one.check === check) ||
      holdsBefore(story, { kind: 'check', check }).length === 0,
  );
  return {
    confirmedFirst: confirmedFirst(story),
    baselineTaken: asked.filter((id) => story.findings.some(({ check }) => check === id)).length,
    baselineAsked: asked.length,
    repeats: repeatsOf(story).length,
    accessesTwice: accessesTwice(story),
    leftOff: apartNow(story).map((thing) => apartName(story, thing)),
    cautionsPassedOver: cautionsPassedOver(story),
    safeguardsPassed: story.passed.map(
      (one) =>
        `gone on ${stepThing(story, one)} although ${holdsThen(story, one)}. ${reasonWords(one)}`,
    ),
    unprovenRepairs: unproven(story),
    failedRepairs: failedRepairs(story).length,
    changesAtOnce: story.repairs.slice(1).filter((repair, index) => {
      const before = story.repairs[index]?.n ?? 0;
      return !story.proofs.some(({ n }) => n > before && n < repair.n);
    }).length,
    contradictions: contradictions(story).length,
    settled: story.settled.map(
      ({ as, check }) => `${askedThing(story, check)}: ${settlingWords[as]}`,
    ),
    ...doubtfulIn(story),
    corrections: correctedEntries(story),
    skipped: story.skipped.length,
  };
}

function confirmedFirst(story: Story): boolean {
  const { entries, findings } = story;
  const { confirm } = firstLeg(story).tree.complaint;
  const shown = findings.find(({ check }) => check === confirm)?.n ?? Infinity;
  const touched = entries.find(
    ({ said }) =>
      said?.kind === 'part-off' ||
      said?.kind === 'repaired' ||
      (said?.kind === 'access' && said.now === 'open'),
  );
  return shown < (touched?.event.n ?? Infinity);
}

/** Entries that were put right or withdrawn; a finding said to be misread is counted as settled. */
function correctedEntries({ entries }: Story): number {
  const corrections = new Set(
    entries.flatMap(({ event }) => (event.kind === 'corrected' ? [event.n] : [])),
  );
  return entries.filter(
    ({ event, correctedBy }) =>
      event.kind !== 'corrected' && correctedBy.some((n) => corrections.has(n)),
  ).length;
}

/** A doubtful finding is repeated when its check, or one of the same thing, is done again. */
function doubtfulIn(story: Story): Pick<Habits, 'doubtful' | 'doubtfulRepeated'> {
  const doubtful = new Set([
    ...contradictions(story).map(({ later }) => later.n),
    ...story.settled.map(({ later }) => later),
  ]);
  const written = story.entries.flatMap(({ event }) =>
    event.kind === 'found' || event.kind === 'proved' ? [event] : [],
  );
  const repeated = [...doubtful].filter((n) => {
    const check = written.find((event) => event.n === n)?.check;
    const kin = story.legs.flatMap(({ tree }) => (check === undefined ? [] : kinOf(tree, check)));
    return written.some((event) => event.n > n && kin.includes(event.check));
  });
  return { doubtful: doubtful.size, doubtfulRepeated: repeated.length };
}

function accessesTwice(story: Story): readonly string[] {
  const opened = story.entries.flatMap(({ said }) =>
    said?.kind === 'access' && said.now === 'open' ? [said.access] : [],
  );
  const twice = opened.filter((id, index) => opened.indexOf(id) !== index);
  return [...new Set(twice)].map((id) => accessName(story, id));
}

/** Steps done without phrasing that cautions which can maim had been read. */
function cautionsPassedOver(story: Story): readonly string[] {
  const missed = (leg: number, n: number, step: CautionedStep | undefined): readonly string[] => {
    const shop = story.legs[leg]?.shop;
    const ids = step === undefined ? [] : unreadOf(story, step, n + 1);
    return ids.flatMap((id) => {
      const caution = shop?.cautions[id];
      return caution?.acknowledge === true ? [caution.hazard] : [];
    });
  };
  const hazards = [
    ...story.findings.flatMap(({ n, check, leg }) => {
      const asked = checkIn(story, check, leg);
      return missed(leg, n, asked && stepOfCheck(check, asked));
    }),
    ...story.repairs.flatMap(({ n, cause, leg }) => {
      const repair = story.legs[leg]?.tree.causes[cause]?.repair;
      return missed(leg, n, repair && stepOfCause(cause, repair));
    }),
  ];
  return [...new Set(hazards)];
}

const unproven = (story: Story): number =>
  story.repairs.filter((repair, index) => {
    const next = story.repairs[index + 1]?.n ?? Infinity;
    return !story.proofs.some(({ n }) => n > repair.n && n < next);
  }).length;
