import { mayLead } from '../../../src/app/leading-step.ts';
import { quickAdvice } from '../../../src/core/reason/advice/advise.ts';
import { inputFrom, leftOut, ownStep } from '../../../src/core/reason/history/from-story.ts';
import { vehicleAnswer } from '../../../src/core/reason/practice/answer.ts';
import { stampOf } from '../../../src/core/reason/practice/minutes.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { contradictionOf } from '../../../src/core/session/contradiction.ts';
import type { Event } from '../../../src/core/session/event.ts';
import { fold, step, type Recorded } from '../../../src/core/session/fold.ts';
import { newEvent } from '../../../src/core/session/read-event.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import { holdsBefore } from '../../../src/core/session/safeguard.ts';
import { triageOf, triageOfCause } from '../../../src/core/session/triage.ts';
import { currentLeg, nextNumber, type Due, type Story } from '../../../src/core/session/story.ts';
import { unlisted } from '../../../src/core/tree/model.ts';
import { neededBy } from '../../../src/core/tree/states.ts';
import { opened } from '../drive/opened.ts';
import { stampAt } from '../story.ts';
import type { Begun } from './begun.ts';

/** How somebody plays: as the tree leads, as the advice leads, or by repairing what is likeliest beforehand. */
export type Policy = 'own way' | 'advice' | 'odds';

/**
 * How it ended. What the tree itself ends without a repair is no failure of whoever follows it: it hands
 * the job to another tree, or stops it, or says that none of the listed causes fits.
 */
type Outcome = 'proven' | 'handed over' | 'stopped' | 'unlisted' | 'refused' | 'no end';

export type Played = {
  readonly outcome: Outcome;
  /** Why, where it was not proven. */
  readonly why: string;
  readonly minutes: number;
  readonly checks: number;
  readonly repairs: number;
  /** Repairs of what was not hidden. */
  readonly needless: number;
  /** Steps that the advice led after the tree's own way had ended. */
  readonly beyond: number;
  readonly recorded: Recorded;
};

type Play = { readonly story: Story; readonly events: readonly Event[]; readonly beyond: number };
type End = { readonly outcome: Outcome; readonly why: string };

const mostSteps = 500;

/** Plays a practice to its end through the same rules as the screens and `enter`. */
export function play({ header, secret }: Begun, policy: Policy): Played {
  const practice = {
    secret,
    answer: (story: Story, check: string) => vehicleAnswer(story, secret, check),
  };
  const take = (play: Play, action: Action): Play | End => {
    const ruling = decide(play.story, action, { tree: () => undefined, practice });
    if (ruling.kind === 'refused')
      return { outcome: 'refused', why: `${ruling.problem.code}: ${ruling.problem.message}` };
    let { story } = play;
    const added = ruling.payloads.map((said) => {
      const event = newEvent(nextNumber(story), stampOf(story, said, stampAt(0)), said);
      story = step(story, event);
      return event;
    });
    const next = { ...play, story, events: [...play.events, ...added] };
    return contradictionOf(story, added.at(-1)) === undefined
      ? next
      : take(next, { do: 'settle', as: 'new-since' });
  };
  let now: Play = { story: fold(header, []), events: [], beyond: 0 };
  const first = take(now, { do: 'conditions', notKnown: ['altitude'] });
  if ('story' in first) now = first;
  let end: End = { outcome: 'no end', why: `${mostSteps} steps` };
  for (let steps = 0; steps < mostSteps; steps += 1) {
    const led = ledBy(policy, now);
    if ('outcome' in led) {
      end = led;
      break;
    }
    const done = actionsFor(now.story, led.due).reduce<Play | End>(
      (play, action) => ('outcome' in play ? play : take(play, action)),
      { ...now, beyond: now.beyond + (led.beyond ? 1 : 0) },
    );
    if ('outcome' in done) {
      end = done;
      break;
    }
    now = done;
  }
  return told(now, end, { header, secret });
}

function told({ story, events, beyond }: Play, end: End, { header, secret }: Begun): Played {
  const mended = story.repairs.map(({ cause }) => cause);
  return {
    ...end,
    minutes: story.minutes,
    checks: story.findings.length,
    repairs: mended.length,
    needless: mended.filter((cause) => !secret.causes.includes(cause)).length,
    beyond,
    recorded: { header, events },
  };
}

type Led = { readonly due: Due; readonly beyond: boolean } | End;

function ledBy(policy: Policy, { story }: Play): Led {
  const { due } = story;
  if (due.kind === 'proven') return { outcome: 'proven', why: '' };
  if (policy === 'odds') return byOdds(story);
  // The advice goes on where the tree's own way ends, whatever it ends with but the inspection.
  const ends = (due.kind === 'stop' && triageOf(story) === undefined) || due.kind === 'leg';
  if (ends && policy === 'advice') return byAdvice(story, true);
  if (due.kind === 'leg') return { outcome: 'handed over', why: `to ${due.tree}` };
  if (due.kind === 'stop') return { outcome: 'stopped', why: due.reason };
  if (due.kind === 'exhausted') return byAdvice(story, true);
  return policy === 'advice' && mayLead(story) ? byAdvice(story, false) : { due, beyond: false };
}

/** Many practices begin alike: what the advice said of the same findings and repairs is remembered. */
const remembered = new Map<string, Led>();

function byAdvice(story: Story, beyond: boolean): Led {
  const { findings, repairs, standing, open, over } = story;
  const known = [
    currentLeg(story).tree.id,
    ...findings.map(({ n: _, stamp: __, ...finding }) => finding),
    ...repairs.map(({ cause }) => cause),
  ];
  const key = JSON.stringify([known, standing, open, over, story.due, beyond]);
  const led = remembered.get(key) ?? advised(story, beyond);
  remembered.set(key, led);
  return led;
}

function advised(story: Story, beyond: boolean): Led {
  const input = inputFrom(story);
  if (input.kind === 'bad') return { outcome: 'refused', why: input.problems[0]?.code ?? '' };
  const own = ownStep(story);
  const made = quickAdvice(input.value, { leaveOut: leftOut(story), ...(own && { own }) });
  const [next] = made.kind === 'good' ? made.value.next : [];
  if (next === undefined)
    return beyond ? { outcome: 'unlisted', why: 'no step left' } : { due: story.due, beyond };
  if (next.id === unlisted) return { outcome: 'unlisted', why: 'none of the listed fits' };
  const due: Due =
    next.do === 'check'
      ? { kind: 'check', check: next.id, why: 'advised' }
      : { kind: 'named', cause: next.id };
  return { due, beyond };
}

/** The complaint's own test with what comes before it; then what is likeliest for its minutes, without a look. */
function byOdds(story: Story): Led {
  const { due } = story;
  const { tree } = currentLeg(story);
  const { confirm } = tree.complaint;
  if (due.kind === 'repair' || due.kind === 'proof') return { due, beyond: false };
  if (due.kind === 'check' && !story.findings.some(({ check }) => check === confirm))
    return { due, beyond: false };
  const waits = due.kind === 'check' && due.why === 'repeat';
  if (waits) return { due, beyond: false };
  const mended = story.repairs.map(({ cause }) => cause);
  const left = Object.entries(tree.causes)
    .filter(
      ([id, one]) =>
        !mended.includes(id) && triageOfCause(tree, id) === undefined && one.tree === undefined,
    )
    .toSorted(
      ([, one], [, other]) =>
        other.odds / (other.repair.minutes + 1) - one.odds / (one.repair.minutes + 1),
    );
  for (const [cause] of left) {
    const [hold] = holdsBefore(story, { kind: 'repair', cause });
    if (hold === undefined) return { due: { kind: 'named', cause }, beyond: false };
    if (hold.seen.kind === 'nothing')
      return {
        due: { kind: 'check', check: firstOf(story, hold.check), why: 'chosen' },
        beyond: false,
      };
  }
  return { outcome: 'stopped', why: 'a safeguard stands before every cause left' };
}

/** What a check waits for and nobody has looked at yet, else the check. */
function firstOf(story: Story, check: string): string {
  const waits = Object.keys(currentLeg(story).tree.checks[check]?.after ?? {});
  return waits.find((id) => !story.findings.some((one) => one.check === id)) ?? check;
}

function actionsFor(story: Story, due: Due): readonly Action[] {
  const { tree } = currentLeg(story);
  if (due.kind === 'named') return [{ do: 'condemn', cause: due.cause, acknowledged: true }];
  if (due.kind === 'repair') return [{ do: 'repair', cause: due.cause, acknowledged: true }];
  if (due.kind !== 'check' && due.kind !== 'proof') throw new Error(`nobody plays ${due.kind}`);
  const check = due.kind === 'check' ? due.check : tree.complaint.confirm;
  const put = due.kind === 'proof' ? opened(story) : [];
  const asked = tree.checks[check];
  const needed = asked && neededBy(tree, asked);
  const brought = needed !== undefined && story.over.includes(needed.state);
  return [
    ...put.map((close): Action => ({ do: 'access', close })),
    ...(brought ? [{ do: 'begin', check, acknowledged: true, brought: true } as const] : []),
    { do: 'make', check, acknowledged: true },
  ];
}
