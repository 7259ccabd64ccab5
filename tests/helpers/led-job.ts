import type { Action } from '../../src/core/session/action.ts';
import type { Event } from '../../src/core/session/event.ts';
import { fold, type Recorded } from '../../src/core/session/fold.ts';
import { newHeader } from '../../src/core/session/header/new-header.ts';
import { newEvent } from '../../src/core/session/read-event.ts';
import { decide } from '../../src/core/session/rules/rules.ts';
import { parseConditions } from '../../src/core/session/rules/vehicle.ts';
import { currentLeg } from '../../src/core/session/story.ts';
import { trusted } from '../../src/core/problem.ts';
import { shippedShop, shippedTrees } from './library.ts';
import { keptPhoto } from './story.ts';

/**
 * What was done, and the minutes before it; or a check, up to which what is due is answered as a healthy
 * vehicle would; or `go on`, for all that is due.
 */
export type Move = readonly [minutes: number, action: Action] | string;

type Opening = {
  readonly tree: string;
  readonly vehicle?: string;
  readonly who?: string;
  readonly said?: string;
  readonly facts?: Record<string, string>;
  readonly altitude?: string;
  readonly temperature?: string;
  readonly units?: 'us' | 'metric';
};

const trees = shippedTrees();
const shop = shippedShop();

const treeById = (id: string) => {
  const tree = trees.find((one) => one.id === id);
  if (tree === undefined) throw new Error(`no tree ${id}`);
  return tree;
};

/** A job on a shipped tree, minute by minute; every step must be accepted. */
export function jobOf(opening: Opening, moves: readonly Move[]): Recorded {
  const { tree, vehicle = 'Orchard van', who = 'JB', said, facts = {}, units = 'us' } = opening;
  const { altitude, temperature } = opening;
  const conditions = trusted(
    parseConditions(
      {
        ...(altitude !== undefined && { altitude }),
        ...(temperature !== undefined && { temperature }),
      },
      units,
    ),
  );
  const clock = { minute: 0 };
  const about = { tree: treeById(tree), shop, vehicle: { name: vehicle, facts }, who, conditions };
  const header = newHeader(
    { ...about, units, ...(said !== undefined && { said }) },
    stampAt(clock.minute).at,
  );
  let events: readonly Event[] = [];
  for (const move of moves) {
    const steps = typeof move === 'string' ? until(move, header, events) : [move];
    for (const [minutes, action] of steps) {
      clock.minute += minutes;
      events = taken(header, events, action, clock.minute);
    }
  }
  return { header, events };
}

/** Healthy answers to all that is due before a check, or until nothing is. */
function* until(
  last: string,
  header: Recorded['header'],
  from: readonly Event[],
): Generator<readonly [number, Action]> {
  let events = from;
  for (let steps = 0; steps < 60; steps += 1) {
    const story = fold(header, events);
    if (story.due.kind !== 'check' || story.due.check === last) return;
    const check = currentLeg(story).tree.checks[story.due.check];
    const [healthy] = check?.results ?? [];
    if (check === undefined || healthy === undefined) return;
    const action = see(story.due.check, healthy.id);
    yield [check.minutes + 1, action];
    events = taken(header, events, action, 0);
  }
}

function taken(
  header: Recorded['header'],
  events: readonly Event[],
  action: Action,
  minute: number,
): readonly Event[] {
  const world = { tree: (id: string) => ({ tree: treeById(id), shop }), photo: keptPhoto };
  const decision = decide(fold(header, events), action, world);
  if (decision.kind === 'refused')
    throw new Error(`${JSON.stringify(action)}: ${decision.problem.message}`);
  const added = decision.payloads.map((payload, index) => {
    const n = events.length + 1 + index;
    return newEvent(n, stampAt(minute), payload);
  });
  return [...events, ...added];
}

/** A clock that shows 9:00 on a day in April at minute 0. */
function stampAt(minute: number) {
  const at = new Date(Date.UTC(2026, 3, 11, 9, minute)).toISOString().replace('Z', '+00:00');
  return { at, run: 'run-1', mono: minute * 60_000, up: 5000 + minute * 60 };
}

/** A result, picked. */
export const see = (check: string, result: string): Action => ({
  do: 'find',
  check,
  result,
  acknowledged: true,
});
