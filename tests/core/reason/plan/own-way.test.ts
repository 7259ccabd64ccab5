import { describe, expect, test } from 'vitest';
import { waySteps } from '../../../../src/core/drawing/way-steps.ts';
import type { CaseState } from '../../../../src/core/reason/belief/evidence.ts';
import { makeModel, type Model } from '../../../../src/core/reason/belief/model.ts';
import { ownWay } from '../../../../src/core/reason/plan/policies.ts';
import { makeRandom, type Random } from '../../../../src/core/reason/plan/random.ts';
import { OwnRoutes } from '../../../../src/core/reason/plan/routes.ts';
import { hideVehicle } from '../../../../src/core/reason/plan/vehicle.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import type { Event } from '../../../../src/core/session/event.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { currentLeg, type Story } from '../../../../src/core/session/story.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';
import { headerFor, stampAt } from '../../../helpers/story.ts';

/*
 * The tree's own way stands in one place (core/tree/way.ts). These walks take only the step on
 * screen; the picture, the plan and the lint have to agree that this is the tree's own way.
 */

const walksOfATree = 40;
const longest = 14;
const shop = shippedShop();
const trees = shippedTrees().map((tree) => [tree.id, tree] as const);

/** A session that takes actions one by one. */
class Session {
  story: Story;
  #events: readonly Event[] = [];
  readonly #header;

  constructor(tree: Tree) {
    this.#header = headerFor(tree, shop);
    this.story = fold(this.#header, []);
  }

  take(action: Action): void {
    const decision = decide(this.story, action, { tree: () => undefined });
    if (decision.kind === 'refused') throw new Error(decision.problem.message);
    const first = this.#events.length + 1;
    const added = decision.payloads.map((payload, at) => ({
      n: first + at,
      ...stampAt(first + at),
      ...payload,
    }));
    this.#events = [...this.#events, ...added];
    this.story = fold(this.#header, this.#events);
  }
}

/** Takes the step on screen as often as it is a check, with results drawn evenly. */
function evenWalk(tree: Tree, random: Random): Story {
  const session = new Session(tree);
  for (let step = 0; step < longest && session.story.due.kind === 'check'; step += 1) {
    const { check } = session.story.due;
    const results = currentLeg(session.story).tree.checks[check]?.results ?? [];
    const drawn = results[Math.floor(random() * results.length)]?.id;
    session.take({ do: 'find', check, ...(drawn !== undefined && { result: drawn }) });
  }
  return session.story;
}

test.each(trees)('whoever takes only the step on screen goes the own way: %s', (_, tree) => {
  const random = makeRandom(20_260_411);
  const walks = Array.from({ length: walksOfATree }, () => evenWalk(tree, random));

  const chosen = walks.flatMap((story) => waySteps(story).filter(({ own }) => !own));

  expect(chosen).toEqual([]);
  expect(walks.reduce((sum, { findings }) => sum + findings.length, 0)).toBeGreaterThan(
    2 * walksOfATree,
  );
});

/** What a session knows, in the terms of a policy. */
function stateOf({ findings, repairs }: Story, model: Model): CaseState {
  return {
    findings: findings.map(({ check, result, n }) => {
      const lo = model.checks.find(({ id }) => id === check)?.results.indexOf(result) ?? -1;
      return { check, lo, hi: lo, at: repairs.filter((repair) => repair.n < n).length };
    }),
    repairs: repairs.map(({ cause }, at) => ({ cause, at })),
  };
}

/** Walks a hidden vehicle by the screen to its repair; tells where the plan's policy goes elsewhere. */
function vehicleWalk(tree: Tree, random: Random): { story: Story; apart: readonly string[] } {
  const session = new Session(tree);
  const { tree: walked } = currentLeg(session.story);
  const model = makeModel(walked);
  const policy = ownWay(walked);
  const vehicle = hideVehicle(model, random);
  const apart: string[] = [];
  const shown = (check: string): string => {
    const index = model.checks.findIndex(({ id }) => id === check);
    const mended = session.story.repairs.map(({ cause }) =>
      model.causes.findIndex(({ id }) => id === cause),
    );
    return model.checks[index]?.results[vehicle.show(index, mended)] ?? '';
  };
  for (let step = 0; step < 3 * longest; step += 1) {
    const { due } = session.story;
    if (due.kind === 'check' && due.why === 'way') {
      const move = policy(model, stateOf(session.story, model));
      const planned = move.do === 'check' ? model.checks[move.index]?.id : 'a repair';
      if (planned !== due.check) apart.push(`${due.check}, planned ${planned}`);
    }
    if (due.kind === 'check')
      session.take({ do: 'find', check: due.check, result: shown(due.check) });
    else if (due.kind === 'named') session.take({ do: 'repair', cause: due.cause });
    else if (due.kind === 'proof')
      session.take({ do: 'prove', result: shown(walked.complaint.confirm) });
    else break;
  }
  return { story: session.story, apart };
}

describe.each(trees)('hidden vehicles led by the screen: %s', (_, tree) => {
  const random = makeRandom(20_260_412);
  const walks = Array.from({ length: walksOfATree }, () => vehicleWalk(tree, random));

  test('the plan prices the steps that are on the screen', () => {
    expect(walks.flatMap(({ apart }) => apart)).toEqual([]);
  });

  test('the lint walks the routes that they take', () => {
    const { tree: walked } = currentLeg(new Session(tree).story);
    const { routes, followed } = new OwnRoutes(walked, makeModel(walked), 0.001).run();
    const known = new Set(
      routes.map(({ shown }) =>
        shown
          .map(({ check, result }) => `${check} ${walked.checks[check]?.results[result]?.id}`)
          .join(),
      ),
    );
    const strange = walks.filter(({ story }) => {
      const first = story.repairs[0]?.n ?? Infinity;
      const found = story.findings.filter(({ n }) => n < first);
      return !known.has(found.map(({ check, result }) => `${check} ${result}`).join());
    });

    // Routes of fewer than one vehicle in a thousand are not followed: three standard errors more.
    const expected = (1 - followed) * walks.length;
    expect(strange.length).toBeLessThanOrEqual(expected + 3 * Math.sqrt(expected * followed) + 1);
  });
});
