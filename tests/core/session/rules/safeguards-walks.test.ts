import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import type { Event } from '../../../../src/core/session/event.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import { newEvent } from '../../../../src/core/session/read-event.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { guardedHeader, guardedTree, opened, see } from '../../../helpers/guarded.ts';
import { stampAt } from '../../../helpers/story.ts';

const standings: readonly Action[] = [
  { do: 'standing', engine: 'cranking' },
  { do: 'standing', engine: 'idling' },
  { do: 'standing', engine: 'fast-idle' },
  { do: 'standing', engine: 'off' },
  { do: 'standing', key: 'start' },
];
const walked: readonly Action[] = [
  ...Object.entries(guardedTree.checks).flatMap(([check, { results }]): readonly Action[] => [
    { do: 'begin', check },
    { do: 'skip', check, reason: 'no time' },
    { do: 'unsure', check },
    ...results.map(({ id }) => see(check, id)),
  ]),
  ...Object.keys(guardedTree.causes).flatMap((cause): readonly Action[] => [
    { do: 'condemn', cause },
    { do: 'repair', cause },
  ]),
  { do: 'prove', result: 'steady' },
  { do: 'prove', result: 'boils' },
  { do: 'correct', n: 1, withdraw: true },
  { do: 'correct', n: 2, withdraw: true },
  ...standings,
];

/** What a plain reading of the record says: the last answer to oil and level, and repairs since. */
function isSafe(events: readonly Event[], engine: string): boolean {
  const withdrawn = events.flatMap((event) => (event.kind === 'corrected' ? [event.of] : []));
  const counted = events.filter(({ n }) => !withdrawn.includes(n));
  const shows = (check: string, wanted: readonly string[]) => {
    const at = counted.findLastIndex((one) => one.kind === 'found' && one.check === check);
    const found = counted[at];
    // No repair of this tree but the gasket's shows in oil or level, and only what was bad goes stale.
    return found?.kind === 'found' && wanted.includes(found.result);
  };
  const level = engine === 'cranking' || shows('cold-level', ['full', 'low']);
  return level && shows('oil-look', ['clean']);
}

/** What the engine does in an event, where it is not at rest. */
function engineIn(event: Event): string | undefined {
  if (event.kind === 'standing') return event.set.key === 'start' ? 'cranking' : event.set.engine;
  if (event.kind === 'repaired') return guardedTree.causes[event.cause]?.repair.standing.engine;
  return 'check' in event && event.kind !== 'skipped'
    ? guardedTree.checks[event.check]?.standing.engine
    : undefined;
}

test('no walk without own words records anything behind a shut safeguard', () => {
  const seen = { ran: 0, refused: 0 };
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...walked), { minLength: 1, maxLength: 30 }),
      fc.boolean(),
      (actions, cleared) => {
        const header = guardedHeader();
        let events: readonly Event[] = [];
        for (const action of cleared ? [...opened, ...actions] : actions) {
          const story = fold(header, events);
          const ruling = decide(story, action, { tree: () => undefined });
          if (ruling.kind === 'refused') {
            seen.refused += Number(ruling.problem.code === 'safeguard-shut');
            continue;
          }
          for (const payload of ruling.payloads) {
            const n = events.length + 1;
            const event = newEvent(n, stampAt(n), payload);
            const engine = engineIn(event) ?? 'off';
            seen.ran += Number(engine !== 'off');
            if (engine !== 'off' && !isSafe(events, engine)) return false;
            events = [...events, event];
          }
        }
        return true;
      },
    ),
    { seed: 11, numRuns: 150 },
  );

  expect(seen.ran).toBeGreaterThan(100);
  expect(seen.refused).toBeGreaterThan(100);
});
