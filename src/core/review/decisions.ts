import { isPartOfNext, spentOn } from '../account/blocks/ledger.ts';
import type { StepName } from '../reason/advice/minutes.ts';
import { chancesNow } from '../reason/history/belief-history.ts';
import { foreseenResults } from '../reason/history/foreseen.ts';
import { inputFrom } from '../reason/history/from-story.ts';
import type { Event, UnknownEvent } from '../session/event.ts';
import { expectedNow } from '../session/expecting/expected.ts';
import { awaitsProof } from '../session/proof.ts';
import { fold, type Recorded } from '../session/fold.ts';
import { currentLeg, workerAt, type Story } from '../session/story.ts';
import { isLook, lookAt } from '../tree/looked.ts';
import { isOwn } from '../tree/own/bare.ts';
import type { Decision, Moment } from './decision.ts';
import { kindOf, type Kinded } from './kinds.ts';
import { repeatedBy } from './verifying.ts';
import { nothingCharged, weighed, type Weighed } from './weighing.ts';

/** Every check and repair of a session, each weighed on the story as it stood before it. */
export function decisionsOf(recorded: Recorded): readonly Decision[] {
  return decisionEvents(recorded).map((index) => decisionAt(recorded, index));
}

/** Places of the events that are decisions; what was taken back as a slip is none. */
export function decisionEvents({ header, events }: Recorded): readonly number[] {
  const { entries } = fold(header, events);
  const kinds = new Map(events.map(({ n, kind }) => [n, kind]));
  return events.flatMap((event, index) => {
    const entry = entries[index];
    const slip =
      entry?.said === undefined &&
      entry?.correctedBy.some((n) => kinds.get(n) === 'corrected') === true;
    return stepOf(event) === undefined || slip ? [] : [index];
  });
}

/** A check that nobody could tell, or that was passed over. */
const isUntold = (
  event: Event | UnknownEvent | undefined,
): event is Extract<Event, { kind: 'unsure' | 'skipped' }> =>
  event?.kind === 'unsure' || event?.kind === 'skipped';

const stepOf = (event: Event | UnknownEvent | undefined): StepName | undefined => {
  if (event?.kind === 'found' || event?.kind === 'proved' || isUntold(event))
    return { do: 'check', id: event.check };
  if (event?.kind === 'not-this') return { do: 'check', id: lookAt(event.cause) };
  return event?.kind === 'repaired' ? { do: 'repair', id: event.cause } : undefined;
};

/** The decision whose answer stands at a place of the record. @throws RangeError where none does */
export function decisionAt({ header, events }: Recorded, index: number): Decision {
  const event = events[index];
  const step = stepOf(event);
  if (event === undefined || step === undefined) throw new RangeError(`no decision at ${index}`);
  const finished = fold(header, events);
  const before = fold(header, events.slice(0, startOf(finished, index)));
  const moment: Moment = {
    before,
    atAnswer: fold(header, events.slice(0, index)),
    after: fold(header, events.slice(0, index + 1)),
    finished,
    step,
    planned: plannedMinutes(before, step, event.kind === 'proved'),
    taken: spentOn(finished).steps.find(({ entry }) => entry.event.n === event.n)?.worked ?? 0,
  };
  const kind = kindOf(moment, event);
  return { ...told(moment, event), ...charge(moment, kind) };
}

/** Where a decision began: before what was only implied by it, so that its opening up is paid for. */
function startOf({ entries }: Story, index: number): number {
  let start = index;
  for (let entry = entries[start - 1]; entry !== undefined; entry = entries[start - 1]) {
    if (!isPartOfNext(entry)) break;
    start -= 1;
  }
  return start;
}

/** What the tree plans for a step alone; a job without a tree plans nothing. */
function plannedMinutes(story: Story, { do: kind, id }: StepName, proof: boolean) {
  const { tree } = currentLeg(story);
  if (isOwn(tree) || isLook(id)) return undefined;
  const minutes = kind === 'check' ? tree.checks[id]?.minutes : tree.causes[id]?.repair.minutes;
  return minutes === undefined ? undefined : minutes * (proof ? tree.complaint.tries : 1);
}

const charge = (moment: Moment, kind: Kinded): Weighed =>
  kind === 'weigh' ? weighed(moment) : { ...nothingCharged, kind };

function told(moment: Moment, event: Event | UnknownEvent): Omit<Decision, keyof Weighed> {
  const { before, after, finished, step, planned, taken } = moment;
  return {
    n: event.n,
    at: event.at,
    leg: before.legs.length - 1,
    who: workerAt(finished, event.n),
    step,
    planned,
    taken,
    before: chancesNow(before),
    after: chancesNow(after),
    ...(step.do === 'check' ? ofCheck(moment, event) : ofRepair(moment)),
  };
}

type OfStep = Pick<Decision, 'foreseen' | 'expected' | 'finding' | 'reason' | 'chance' | 'trial'>;

function ofCheck({ before, atAnswer, after, step }: Moment, event: Event | UnknownEvent): OfStep {
  const finding = after.findings.at(-1);
  // Nobody can say what the complaint's own test shows on a vehicle that nobody complains of.
  const first = step.id === currentLeg(before).tree.complaint.confirm && !awaitsProof(before);
  // The same check again shows the same again: no odds are told of that.
  const again = repeatedBy(atAnswer, step.id) !== undefined;
  const made = isLook(step.id) || first || again ? undefined : inputFrom(before);
  return {
    foreseen: made?.kind === 'good' ? foreseenResults(made.value, step.id) : new Map(),
    expected: expectedNow(atAnswer, step.id)?.result,
    finding: finding?.n === event.n ? finding : undefined,
    reason: event.kind === 'skipped' ? event.reason : undefined,
    chance: undefined,
    trial: false,
  };
}

const ofRepair = ({ before, step }: Moment): OfStep => ({
  foreseen: new Map(),
  expected: undefined,
  finding: undefined,
  reason: undefined,
  chance: chancesNow(before)?.get(step.id),
  trial: currentLeg(before).tree.causes[step.id]?.repair.try === true,
});
