import { describe, expect, test } from 'vitest';
import { waySteps } from '../../../../src/core/drawing/way-steps.ts';
import type { Move } from '../../../../src/core/reason/advice/minutes.ts';
import { makeModel, type Model } from '../../../../src/core/reason/belief/model.ts';
import {
  beginEpisode,
  checkIndex,
  environmentOf,
  findIn,
  isProof,
  workOn,
  type Environment,
  type Episode,
} from '../../../../src/core/reason/plan/episode.ts';
import { advisedPolicy, ownWay } from '../../../../src/core/reason/plan/policies.ts';
import { makeRandom, type Random } from '../../../../src/core/reason/plan/random.ts';
import { nextOnRoute, OwnRoutes, type Route } from '../../../../src/core/reason/plan/routes.ts';
import { runEpisode } from '../../../../src/core/reason/plan/simulate.ts';
import { hideVehicle, type HiddenVehicle } from '../../../../src/core/reason/plan/vehicle.ts';
import type { Event, Payload } from '../../../../src/core/session/event.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import type { Due, Story } from '../../../../src/core/session/story.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';
import { headerFor, stampAt } from '../../../helpers/story.ts';

/*
 * The tree's own way is one rule with several users: the screens (what is due), the picture of the
 * way, the routes that the lint judges and the policy that `trees plan` prices. Walks that take only
 * the step on screen must be the same to all of them.
 */

const shop = shippedShop();
const trees = shippedTrees().map((tree) => [tree.id, tree] as const);

/** A walk that grows by one event at a time. */
class Walk {
  readonly #header: ReturnType<typeof headerFor>;
  #events: readonly Event[] = [];
  story: Story;

  constructor(tree: Tree) {
    this.#header = headerFor(tree, shop);
    this.story = fold(this.#header, []);
  }

  take(said: Payload): void {
    const n = this.#events.length + 1;
    this.#events = [...this.#events, { n, ...stampAt(n), ...said }];
    this.story = fold(this.#header, this.#events);
  }

  find(check: string, place: number, proof = false): void {
    const result = treeOf(this.story).checks[check]?.results[place]?.id;
    if (result === undefined) throw new Error(`${check} shows no result ${place}`);
    this.take(
      proof
        ? { kind: 'proved', check, result, good: place === 0 }
        : { kind: 'found', check, result },
    );
  }
}

const walksATree = 40;
const mostSteps = 14;

/** Takes the step on screen as long as it is a check; whatever the check is, it shows any result. */
function onScreen(tree: Tree, random: Random): Walk {
  const walk = new Walk(tree);
  for (let step = 0; step < mostSteps; step += 1) {
    const { due } = walk.story;
    if (due.kind !== 'check') break;
    const count = treeOf(walk.story).checks[due.check]?.results.length ?? 0;
    // The complaint is there: a walk without it ends before it has begun. A safeguard may come first.
    const least = due.check === treeOf(walk.story).complaint.confirm ? 1 : 0;
    walk.find(due.check, least + Math.floor(random() * (count - least)));
  }
  return walk;
}

const treeOf = ({ legs }: Story): Tree => {
  const [leg] = legs;
  if (leg === undefined) throw new Error('a story has a tree');
  return leg.tree;
};

describe('a walk that takes only the step on screen', () => {
  test.each(trees)('is the own way of %s to its picture', (_, tree) => {
    const random = makeRandom(1955);
    const walks = Array.from({ length: walksATree }, () => onScreen(tree, random).story);

    const chosen = walks.flatMap((story) => waySteps(story).filter(({ own }) => !own));

    expect(walks.reduce((all, { findings }) => all + findings.length, 0)).toBeGreaterThan(80);
    expect(chosen).toEqual([]);
  });

  test.each(trees)('is a route of the lint, and every route of %s is such a walk', (_, tree) => {
    const random = makeRandom(1956);
    const walks = Array.from({ length: walksATree }, () => onScreen(tree, random).story);
    const filled = treeOf(new Walk(tree).story);
    const { routes } = new OwnRoutes(filled, makeModel(filled), 0.004).run();

    const offRoute = walks.filter((story) => {
      const shown = shownIn(story);
      return shown.some(({ check }, at) => {
        const to = nextOnRoute(filled, shown.slice(0, at));
        return to.kind !== 'check' || to.check !== check;
      });
    });
    const notOnScreen = routes.filter(({ shown, end }) => {
      const walk = new Walk(tree);
      const led = shown.every(({ check, result }) => {
        const { due } = walk.story;
        walk.find(check, result);
        return due.kind === 'check' && due.check === check;
      });
      return !led || !endsAlike(walk.story.due, end);
    });

    expect(offRoute).toEqual([]);
    expect(routes.length).toBeGreaterThan(5);
    expect(notOnScreen).toEqual([]);
  });
});

const shownIn = (story: Story) =>
  story.findings.map(({ check, result }) => {
    const results = treeOf(story).checks[check]?.results ?? [];
    return { check, result: results.findIndex(({ id }) => id === result) };
  });

function endsAlike(due: Due, end: Route['end']): boolean {
  if (end.kind === 'cause') return due.kind === 'named' && due.cause === end.cause;
  if (end.kind === 'tree') return due.kind === 'leg' && due.tree === end.tree;
  return due.kind === (end.kind === 'stop' ? 'stop' : 'exhausted');
}

const vehiclesATree = 20;
const mostMoves = 300;

/** Minutes of a job on a hidden vehicle as the screens lead it; where they lead nowhere, by the advice. */
function minutesOnScreen(tree: Tree, environment: Environment, vehicle: HiddenVehicle): number {
  const advised = advisedPolicy();
  const { model } = environment.input;
  const walk = new Walk(tree);
  const mended: number[] = [];
  let episode = beginEpisode(environment);
  for (let step = 0; step < mostMoves; step += 1) {
    const { due } = walk.story;
    const move =
      moveDue(due, model) ?? untestedStop(due, episode, model) ?? advised(model, episode.state);
    episode = workOn(episode, move, environment);
    if (move.do === 'repair') {
      mended.push(move.index);
      const cause = model.causes[move.index]?.id ?? '';
      walk.take({ kind: 'repaired', cause, parts: [], acknowledged: [] });
      continue;
    }
    const shown = { check: move.index, result: vehicle.show(move.index, mended) };
    episode = findIn(episode, shown, environment);
    if (isProof(model, shown)) return episode.minutes;
    const check = model.checks[move.index]?.id ?? '';
    walk.find(check, shown.result, due.kind === 'proof');
  }
  throw new Error('the screens lead round in circles');
}

function moveDue(due: Due, model: Model): Move | undefined {
  if (due.kind === 'check') return { do: 'check', index: checkIndex(model, due.check) };
  if (due.kind === 'proof') return { do: 'check', index: model.complaint };
  if (due.kind !== 'named') return undefined;
  return { do: 'repair', index: model.causes.findIndex(({ id }) => id === due.cause) };
}

/** Where a safeguard stops the job or hands it over before the complaint's own test, the test is made in the end. */
function untestedStop(due: Due, { state }: Episode, model: Model): Move | undefined {
  const tested = state.findings.some(
    ({ check, at }) => checkIndex(model, check) === model.complaint && at === state.repairs.length,
  );
  return (due.kind === 'stop' || due.kind === 'leg') && !tested
    ? { do: 'check', index: model.complaint }
    : undefined;
}

describe('what the plan prices', () => {
  test.each(trees)('is what the screens walk on hidden vehicles of %s', (_, tree) => {
    const environment = environmentOf(treeOf(new Walk(tree).story), shop.accesses);
    const policy = ownWay(environment.tree);
    const random = makeRandom(1957);
    const vehicles = Array.from({ length: vehiclesATree }, () =>
      hideVehicle(environment.input.model, random),
    );

    const more = vehicles.map(
      (vehicle) =>
        runEpisode(environment, vehicle, policy).minutes -
        minutesOnScreen(tree, environment, vehicle),
    );

    // The same sums in the same order: to the last bit.
    expect(more).toEqual(vehicles.map(() => 0));
  });
});
