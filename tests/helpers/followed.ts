import { quickAdvice } from '../../src/core/reason/advice/advise.ts';
import type { Advice, NextStep } from '../../src/core/reason/advice/advice.ts';
import { asStillThere } from '../../src/core/reason/advice/complaint-now.ts';
import { exactMovement } from '../../src/core/reason/advice/condemning.ts';
import { moveNamed } from '../../src/core/reason/advice/minutes.ts';
import type { ReasoningInput } from '../../src/core/reason/belief/evidence.ts';
import { beginEpisode, doneIn, findIn, workOn } from '../../src/core/reason/plan/episode.ts';
import type { Environment, Episode } from '../../src/core/reason/plan/episode.ts';
import { inputAt } from '../../src/core/reason/plan/policies.ts';
import type { Random } from '../../src/core/reason/plan/random.ts';
import { hideVehicle, type HiddenVehicle } from '../../src/core/reason/plan/vehicle.ts';
import { gatesOf, gatesOfRepair, shut } from '../../src/core/tree/way/gates.ts';
import { knownAfter } from '../../src/core/tree/way/known.ts';
import { nextOnWay } from '../../src/core/tree/way/way.ts';
import type { Tree } from '../../src/core/tree/model.ts';

/** What may not happen to somebody who only follows the first line of the advice. */
export type Fault = 'no next step' | 'behind a shut gate' | 'repair against the rule' | 'no end';

const mostSteps = 80;
/** Chance that a check shows something else than the vehicle would: a slip, or a meter's whim. */
const stray = 0.03;

/** A vehicle with at least so many faults. */
function vehicleWith(faults: number, { input }: Environment, random: Random): HiddenVehicle {
  for (let tries = 0; tries < 2000; tries += 1) {
    const vehicle = hideVehicle(input.model, random);
    if (vehicle.causes.length >= faults) return vehicle;
  }
  throw new Error(`no vehicle with ${faults} faults`);
}

/** The gates before a step that are shut, by all that was done; asked of the tree, not of the advice. */
function shutBefore(tree: Tree, { state }: Episode, { do: kind, id }: NextStep): number {
  const known = knownAfter(tree, doneIn(state));
  const gates = kind === 'check' ? gatesOf(tree, id) : gatesOfRepair(tree, id);
  return shut(gates, (check) => {
    const place = known(check);
    return typeof place === 'number' ? tree.checks[check]?.results[place]?.id : undefined;
  }).length;
}

function againstTheRule(input: ReasoningInput, advice: Advice, step: NextStep): boolean {
  const { causes, checks } = input.model;
  const index = causes.findIndex(({ id }) => id === step.id);
  const cause = causes[index];
  const chance = advice.suspects.find((one) => one.cause === step.id)?.chance ?? advice.unlisted;
  if (cause === undefined || cause.trial || chance >= input.prudence.sure) return false;
  const weighed = asStillThere(input);
  return advice.next.some(
    (other) =>
      other.do === 'check' &&
      other.minutes <= 15 &&
      exactMovement(
        weighed,
        checks.findIndex(({ id }) => id === other.id),
        index,
      ) >= 0.1,
  );
}

/** The first line of the advice, or what is wrong with it. */
function firstLine(
  tree: Tree,
  environment: Environment,
  episode: Episode,
): NextStep | Fault | 'proved' | 'led on' {
  const input = inputAt(environment.input.model, episode.state);
  const made = quickAdvice(input);
  if (made.kind === 'bad') return 'no next step';
  const advice = made.value;
  if (advice.kind === 'proved') return 'proved';
  const [step] = advice.next;
  if (step === undefined) return 'no next step';
  if (step.do === 'repair' && tree.causes[step.id]?.tree !== undefined) return 'led on';
  if (shutBefore(tree, episode, step) > 0) return 'behind a shut gate';
  const wrong = step.do === 'repair' && againstTheRule(input, advice, step);
  return wrong ? 'repair against the rule' : step;
}

/** Whether the way goes on in the tree of another complaint. */
const isLedOn = (tree: Tree, { state }: Episode): boolean =>
  nextOnWay(tree, doneIn(state)).kind === 'tree';

/**
 * Follows the first line of the advice on one vehicle, and tells what went wrong; nothing when it was
 * mended, or led on to the tree of another complaint.
 */
export function follow(tree: Tree, environment: Environment, random: Random): Fault | undefined {
  const vehicle = vehicleWith(2, environment, random);
  const { model } = environment.input;
  const mended: number[] = [];
  let episode = beginEpisode(environment);
  for (let steps = 0; steps < mostSteps; steps += 1) {
    const step = firstLine(tree, environment, episode);
    if (step === 'proved' || step === 'led on') return undefined;
    if (typeof step === 'string') return step;
    const move = moveNamed(model, step);
    if (move === undefined) return 'no next step';
    const { index } = move;
    episode = workOn(episode, move, environment);
    if (step.do === 'repair') {
      mended.push(index);
      continue;
    }
    const results = model.checks[index]?.results.length ?? 2;
    const whim = index !== model.complaint && random() < stray;
    const result = whim ? Math.floor(random() * results) : vehicle.show(index, mended);
    episode = findIn(episode, { check: index, result }, environment);
    if (isLedOn(tree, episode)) return undefined;
  }
  return 'no end';
}
