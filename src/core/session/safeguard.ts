import {
  gatesOf,
  gatesOfRepair,
  gatesOfStanding,
  isShut,
  safeguardGates,
  type Gate,
} from '../tree/way/gates.ts';
import { kinOf } from '../tree/kin.ts';
import { knownAfter, knownAtEnds, type Done } from '../tree/way/known.ts';
import type { Standing, Tree } from '../tree/model.ts';
import { doneIn, inHand } from './due.ts';
import { currentLeg, type Guarded, type Hold, type Standpoint, type Story } from './story.ts';

type Safeguarding = Extract<Gate, { kind: 'safeguard' }>;

/** The safeguards that a tree puts before a step, shown or not. */
const safeguardsOf = (tree: Tree, step: Guarded): readonly Safeguarding[] =>
  gatesBefore(tree, step).filter((gate) => gate.kind === 'safeguard');

function gatesBefore(tree: Tree, step: Guarded): readonly Gate[] {
  switch (step.kind) {
    case 'check':
      return gatesOf(tree, step.check);
    case 'repair':
      return gatesOfRepair(tree, step.cause);
    case 'standing':
      return gatesOfStanding(tree, step.set);
  }
}

/** The safeguards that are shut before a step where a story stands, whatever was said of them. */
function shutBefore(story: Standpoint, step: Guarded): readonly Hold[] {
  const { tree } = currentLeg(story);
  const gates = safeguardsOf(tree, step);
  if (gates.length === 0) return [];
  const done = doneIn(story);
  const ways = [knownAfter(tree, done), ...knownAtEnds(tree, done)];
  return gates.filter((gate) => isShut(tree, gate, ways)).map((gate) => asHold(tree, done, gate));
}

/**
 * The safeguards that hold a step back now: those that have not been shown, were shown otherwise, or
 * were made stale by a repair. An own word opens them for the step in hand that it was given for;
 * what that step wants of the vehicle may then be set.
 */
export function holdsBefore(story: Story, step: Guarded): readonly Hold[] {
  if (step.kind !== 'standing') return unanswered(story, step);
  const wanted = inHandNow(story);
  const asked = wanted && standingOf(currentLeg(story).tree, wanted);
  if (wanted === undefined || asked === undefined || unanswered(story, wanted).length > 0)
    return shutBefore(story, step);
  const rest = Object.entries(step.set).filter(
    ([part, value]) => asked[part as keyof Standing] !== value,
  );
  return shutBefore(story, { kind: 'standing', set: Object.fromEntries(rest) });
}

/** Whether a safeguard's check shows now what forbids; one that was not made, or is stale, shows nothing. */
export function showsDanger(story: Standpoint): boolean {
  const { tree } = currentLeg(story);
  const done = doneIn(story);
  const known = knownAfter(tree, done);
  const ways = [known, ...knownAtEnds(tree, done)];
  return safeguardGates(tree).some(
    (gate) => typeof known(gate.check) === 'number' && isShut(tree, gate, ways),
  );
}

/** The holds on a check or a repair that no own word was given for since it came to hand. */
function unanswered(story: Standpoint, step: Guarded): readonly Hold[] {
  const holds = shutBefore(story, step);
  if (holds.length === 0) return holds;
  const { begun, condemned } = inHand(story);
  const words = story.passed.filter(
    ({ n, step: one }) =>
      (step.kind === 'check' &&
        one.kind === 'check' &&
        n === begun?.n &&
        one.check === step.check) ||
      (step.kind === 'repair' &&
        one.kind === 'repair' &&
        n === condemned?.n &&
        one.cause === step.cause),
  );
  return holds.filter(
    ({ check }) => !words.some((word) => word.holds.some((hold) => hold.check === check)),
  );
}

/** The check or the repair that is to be done now. */
function inHandNow(story: Story): Guarded | undefined {
  const { due } = story;
  if (due.kind === 'check') return { kind: 'check', check: due.check };
  if (due.kind === 'proof')
    return { kind: 'check', check: currentLeg(story).tree.complaint.confirm };
  return due.kind === 'repair' ? { kind: 'repair', cause: due.cause } : undefined;
}

function standingOf({ checks, causes }: Tree, step: Guarded): Standing | undefined {
  if (step.kind === 'standing') return step.set;
  return step.kind === 'check' ? checks[step.check]?.standing : causes[step.cause]?.repair.standing;
}

/** Safeguards that a record says were passed, by their checks, as they stood before the step. */
export function passedAt(
  story: Standpoint,
  step: Guarded,
  checks: readonly string[],
): readonly Hold[] {
  const { tree } = currentLeg(story);
  const done = doneIn(story);
  return safeguardsOf(tree, step)
    .filter(({ check }) => checks.includes(check))
    .map((gate) => asHold(tree, done, gate));
}

function asHold(tree: Tree, done: readonly Done[], { check, otherwise }: Safeguarding): Hold {
  return { check, seen: seenOf(tree, done, check), otherwise };
}

function seenOf(tree: Tree, done: readonly Done[], check: string): Hold['seen'] {
  const known = knownAfter(tree, done)(check);
  if (known === 'passed') return { kind: 'passed over' };
  const last = done.findLast(
    (one) => one.kind === 'shown' && kinOf(tree, check).includes(one.check),
  );
  if (last?.kind !== 'shown') return { kind: 'nothing' };
  if (known === undefined) return { kind: 'stale' };
  const { results } = tree.checks[check] ?? { results: [] };
  const [low, high] = last.ends ?? [known, known];
  const labels = [...new Set([low, high])].flatMap((place) => results[place]?.label ?? []);
  return { kind: 'shown', label: labels.join(' or ') };
}

/** What is known of a safeguard's check: `has not been made yet`, or as it was `then`. */
export function seenWords({ seen }: Hold, time: 'now' | 'then'): string {
  const has = time === 'now' ? 'has' : 'had';
  switch (seen.kind) {
    case 'nothing':
      return `${has} not been made yet`;
    case 'passed over':
      return time === 'now' ? 'was passed over' : 'had been passed over';
    case 'stale':
      return `${has} not been made again since the repair`;
    case 'shown':
      return `${time === 'now' ? 'showed' : 'had shown'} "${seen.label}"`;
  }
}
