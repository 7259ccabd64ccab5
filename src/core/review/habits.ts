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
import { holdsThen, reasonWords, stepThing } from '../account/clauses/safeguards.ts';

/** What stands in a record of how somebody worked, beside the choices, each by its name. */
export type Habits = {
  /** The complaint was made to show itself before anything was opened, taken off or repaired. */
  readonly confirmedFirst: boolean;
  readonly accessesTwice: readonly string[];
  /** Accesses open and parts off at the end of a closed job. */
  readonly leftOff: readonly string[];
  readonly cautionsPassedOver: readonly string[];
  /** Steps that went past a safeguard of the tree, each with what had not been shown and why. */
  readonly safeguardsPassed: readonly string[];
  /** Findings worse than the one before them of the same thing, left standing. */
  readonly contradictions: number;
  /** Contradictions that were asked about, each with its answer in words. */
  readonly settled: readonly string[];
};

/** The baseline of the tree, but what a safeguard held back to the end: that could not be taken. */
export const baselineAsked = (story: Story): readonly string[] =>
  firstLeg(story).tree.baseline.filter(
    (check) =>
      story.findings.some((one) => one.check === check) ||
      holdsBefore(story, { kind: 'check', check }).length === 0,
  );

export const habitsOf = (story: Story): Habits => ({
  confirmedFirst: confirmedFirst(story),
  accessesTwice: accessesTwice(story),
  leftOff:
    story.closed === undefined ? [] : apartNow(story).map((thing) => apartName(story, thing)),
  cautionsPassedOver: cautionsPassedOver(story),
  safeguardsPassed: story.passed.map(
    (one) =>
      `gone on ${stepThing(story, one)} although ${holdsThen(story, one)}. ${reasonWords(one)}`,
  ),
  contradictions: contradictions(story).length,
  settled: story.settled.map(
    ({ as, check }) => `${askedThing(story, check)}: ${settlingWords[as]}`,
  ),
});

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
  return shown <= (touched?.event.n ?? Infinity);
}

function accessesTwice(story: Story): readonly string[] {
  const opened = story.entries.flatMap(({ said }) =>
    said?.kind === 'access' && said.now === 'open' ? [said.access] : [],
  );
  const twice = opened.filter((id, index) => opened.indexOf(id) !== index);
  return [...new Set(twice)].map((id) => accessName(story, id));
}

/** A step with cautions that can maim, and those of them that nobody had said to have read. */
type Grave = { readonly n: number; readonly unread: readonly string[] };

/** Every check and repair done that has cautions which must be read. */
export function graveSteps(story: Story): readonly Grave[] {
  const grave = (leg: number, n: number, step: CautionedStep | undefined): readonly Grave[] => {
    const cautions = story.legs[leg]?.shop.cautions ?? {};
    const must = (ids: readonly string[]) => ids.filter((id) => cautions[id]?.acknowledge === true);
    if (step === undefined || must(step.cautions).length === 0) return [];
    const unread = must(unreadOf(story, step, n + 1));
    return [{ n, unread: unread.flatMap((id) => cautions[id]?.hazard ?? []) }];
  };
  return [
    ...story.findings.flatMap(({ n, check, leg }) => {
      const asked = checkIn(story, check, leg);
      return grave(leg, n, asked && stepOfCheck(check, asked));
    }),
    ...story.repairs.flatMap(({ n, cause, leg }) => {
      const repair = story.legs[leg]?.tree.causes[cause]?.repair;
      return grave(leg, n, repair && stepOfCause(cause, repair));
    }),
  ];
}

const cautionsPassedOver = (story: Story): readonly string[] => [
  ...new Set(graveSteps(story).flatMap(({ unread }) => unread)),
];
