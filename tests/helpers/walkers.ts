import { ledStory } from '../../src/app/leading-step.ts';
import { refinedAdvice } from '../../src/core/reason/advice/advise.ts';
import type { StepName } from '../../src/core/reason/advice/minutes.ts';
import { chancesNow } from '../../src/core/reason/history/belief-history.ts';
import { inputFrom, leftOut, ownStep } from '../../src/core/reason/history/from-story.ts';
import { makeModel } from '../../src/core/reason/belief/model.ts';
import type { Random } from '../../src/core/reason/plan/random.ts';
import { hideVehicle, type HiddenVehicle } from '../../src/core/reason/plan/vehicle.ts';
import type { Action } from '../../src/core/session/action.ts';
import { contradictions } from '../../src/core/session/contradiction.ts';
import { fold, type Recorded } from '../../src/core/session/fold.ts';
import { newHeader } from '../../src/core/session/header/new-header.ts';
import { newEvent } from '../../src/core/session/read-event.ts';
import { decide } from '../../src/core/session/rules/rules.ts';
import { currentLeg, type Story } from '../../src/core/session/story.ts';
import { defaultSettings } from '../../src/core/settings.ts';
import { unlisted, type Tree } from '../../src/core/tree/model.ts';
import type { Shop } from '../../src/core/tree/shop.ts';
import { opened } from './drive/opened.ts';

/**
 * Who walks a made-up vehicle: by the step on screen (the tree's own way, or the quicker lead), by the
 * first line of the advice, by mending the likeliest cause at once, or by anything at all.
 */
export const walkers = ['tree', 'quicker', 'advise', 'odds', 'random'] as const;
export type Walker = (typeof walkers)[number];

const mostSteps = 40;
const noOtherTree = { tree: () => undefined };

type Walking = {
  readonly walker: Walker;
  readonly random: Random;
  /** Steps after which it ends, whatever was found. */
  readonly most?: number;
};

type Walk = { readonly recorded: Recorded; readonly story: Story; readonly seconds: number };

/** Time as a machine tells it that was switched on an hour before. */
const stampAfter = (seconds: number) => ({
  at: new Date(Date.UTC(2026, 3, 11, 8) + seconds * 1000).toISOString().replace('Z', '+00:00'),
  run: 'run-1',
  mono: seconds * 1000,
  up: 3600 + seconds,
});

/** One job on a vehicle whose faults are drawn; it ends where it is proven, or where nothing leads on. */
export function walkOn(
  { tree, shop }: { readonly tree: Tree; readonly shop: Shop },
  { walker, random, most = mostSteps }: Walking,
): Recorded {
  const about = { tree, shop, vehicle: { name: 'Orchard van', facts: {} }, who: 'JB' };
  const header = newHeader({ ...about, conditions: {}, units: 'us' }, stampAfter(0).at);
  const recorded = { header, events: [] };
  let walk: Walk = { recorded, story: fold(header, []), seconds: 0 };
  const vehicle = hideVehicle(makeModel(currentLeg(walk.story).tree), random);
  for (let steps = 0; steps < most; steps += 1) {
    const step = nextStep(walk.story, walker, random);
    const next = step && done(walk, step, { vehicle, random, walker });
    if (next === undefined) break;
    walk = next;
  }
  return walk.recorded;
}

function nextStep(story: Story, walker: Walker, random: Random): StepName | undefined {
  if (story.due.kind === 'proven') return undefined;
  switch (walker) {
    case 'tree':
    case 'quicker':
      return stepDue(ledStory(story, { ...defaultSettings, lead: walker }).story);
    case 'advise':
      return firstAdvised(story);
    case 'odds':
      return story.findings.length === 0 || story.due.kind === 'proof'
        ? { do: 'check', id: currentLeg(story).tree.complaint.confirm }
        : likeliest(story);
    case 'random':
      return anything(story, random);
  }
}

const stepDue = (story: Story): StepName | undefined =>
  story.due.kind === 'proof'
    ? { do: 'check', id: currentLeg(story).tree.complaint.confirm }
    : ownStep(story);

function firstAdvised(story: Story): StepName | undefined {
  const made = inputFrom(story);
  if (made.kind === 'bad') return undefined;
  const own = ownStep(story);
  const advice = refinedAdvice(made.value, {
    leaveOut: leftOut(story),
    reckon: false,
    ...(own !== undefined && { own }),
  });
  return advice.kind === 'good' ? advice.value.next.at(0) : undefined;
}

function likeliest(story: Story): StepName | undefined {
  const [first] = [...(chancesNow(story) ?? [])]
    .filter(([id]) => id !== unlisted && !story.repairs.some(({ cause }) => cause === id))
    .toSorted(([, one], [, other]) => other - one);
  return first && { do: 'repair', id: first[0] };
}

function anything(story: Story, random: Random): StepName {
  const { causes, checks } = currentLeg(story).tree;
  const one = (ids: readonly string[]): string => ids[Math.floor(random() * ids.length)] ?? '';
  return random() < 0.15
    ? { do: 'repair', id: one(Object.keys(causes)) }
    : { do: 'check', id: one(Object.keys(checks)) };
}

/** The word with which a shut safeguard is gone past. */
const despite = 'to see what a review makes of it';

type Bench = {
  readonly vehicle: HiddenVehicle;
  readonly random: Random;
  readonly walker: Walker;
};

/** The walk with a step done, about as long as it is planned; undefined where nothing can be done. */
function done(walk: Walk, step: StepName, bench: Bench): Walk | undefined {
  if (step.id === unlisted) return undefined;
  const { tree } = currentLeg(walk.story);
  const proof = step.id === tree.complaint.confirm;
  const ready = proof
    ? opened(walk.story).reduce(
        (now, close) => taken(now, { do: 'access', close }, 10) ?? now,
        walk,
      )
    : walk;
  const planned =
    step.do === 'check' ? tree.checks[step.id]?.minutes : tree.causes[step.id]?.repair.minutes;
  const seconds = 60 * (planned ?? 0) * (0.4 + 1.2 * bench.random()) + 5;
  const named =
    step.do === 'repair'
      ? taken(ready, { do: 'condemn', cause: step.id, acknowledged: true, despite }, 5)
      : undefined;
  const action = actionOf(ready.story, step, bench);
  const next = taken(named ?? ready, action, seconds);
  // Whoever walks by anything at all meets refusals, and tries another thing.
  return next ?? (step.do === 'check' && !proof ? { ...ready, seconds: ready.seconds + 1 } : next);
}

function actionOf(
  story: Story,
  { do: kind, id }: StepName,
  { vehicle, random, walker }: Bench,
): Action {
  if (kind === 'repair') return { do: 'repair', cause: id, acknowledged: true, despite };
  const { tree } = currentLeg(story);
  const model = makeModel(tree);
  const index = (list: readonly { readonly id: string }[], one: string): number =>
    list.findIndex((each) => each.id === one);
  const mended = story.repairs.map(({ cause }) => index(model.causes, cause));
  const results = tree.checks[id]?.results ?? [];
  const shown = results[vehicle.show(index(model.checks, id), mended)]?.id ?? '';
  return random() < 0.02
    ? { do: 'unsure', check: id }
    : {
        do: 'find',
        check: id,
        result: shown,
        acknowledged: true,
        ...((walker === 'odds' || walker === 'random') && { despite }),
      };
}

function taken(walk: Walk, action: Action, seconds: number): Walk | undefined {
  const ruling = decide(walk.story, action, noOtherTree);
  if (ruling.kind === 'refused') return undefined;
  const { header, events } = walk.recorded;
  const at = walk.seconds + seconds;
  const added = ruling.payloads.map((payload, index) =>
    newEvent(events.length + 1 + index, stampAfter(Math.round(at)), payload),
  );
  const recorded = { header, events: [...events, ...added] };
  const story = fold(header, recorded.events);
  const next = { recorded, story, seconds: at };
  return contradictions(story).length === 0
    ? next
    : (taken(next, { do: 'settle', as: 'comes-and-goes' }, 5) ?? next);
}
