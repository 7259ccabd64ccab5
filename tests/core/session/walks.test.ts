import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import type { Event } from '../../../src/core/session/event.ts';
import { parseEvent } from '../../../src/core/session/read-event.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import { nextNumber, type Story } from '../../../src/core/session/story.ts';
import { headerFor, stampAt } from '../../helpers/story.ts';

const actions: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'find', check: 'lamp', result: 'lit' },
  { do: 'find', check: 'look', result: 'burnt' },
  { do: 'find', check: 'look', result: 'whole' },
  { do: 'find', check: 'volts', reading: '0.2' },
  { do: 'find', check: 'volts', reading: 12.6, acknowledged: true },
  { do: 'unsure', check: 'volts' },
  { do: 'unsure', check: 'volts', between: ['low', 'dead'] },
  { do: 'skip', check: 'look', reason: 'stuck' },
  { do: 'begin', check: 'volts' },
  { do: 'note', text: 'n' },
  { do: 'access', open: 'dash' },
  { do: 'access', close: 'dash' },
  { do: 'part-off', part: 'bezel' },
  { do: 'part-on', part: 'bezel' },
  { do: 'standing', battery: 'disconnected' },
  { do: 'condemn', cause: 'wire' },
  { do: 'repair', cause: 'wire' },
  { do: 'repair', cause: 'fuse', acknowledged: true },
  { do: 'prove', result: 'lit' },
  { do: 'prove', result: 'dark' },
  { do: 'correct', n: 1, withdraw: true },
  { do: 'correct', n: 2, result: 'whole' },
  { do: 'correct', n: 3, text: 'm' },
  { do: 'pause' },
  { do: 'close' },
];

/** Any walk at all: what is refused is left out. */
function wander(chosen: readonly Action[]): { story: Story; events: readonly Event[] } {
  const header = headerFor();
  let events: readonly Event[] = [];
  let story = fold(header, events);
  for (const action of chosen) {
    const decision = decide(story, action, { tree: () => undefined });
    if (decision.kind === 'refused') continue;
    const next = nextNumber(story);
    events = [
      ...events,
      ...decision.payloads.map((payload, index) => ({
        n: next + index,
        ...stampAt(next + index),
        ...payload,
      })),
    ];
    story = fold(header, events);
  }
  return { story, events };
}

const anyWalk = fc.array(fc.constantFrom(...actions), { maxLength: 25 });

describe('any walk at all', () => {
  test('read back from its lines tells the same story as the one that was lived', () => {
    fc.assert(
      fc.property(anyWalk, fc.nat(30), (chosen, cut) => {
        const lived = wander(chosen);
        const read = lived.events.flatMap((event) => {
          const parsed = parseEvent(JSON.parse(JSON.stringify(event)));
          return parsed === undefined ? [] : [parsed];
        });
        const [before, rest] = [read.slice(0, cut), read.slice(cut)];
        expect(fold(headerFor(), [...before, ...rest])).toEqual(lived.story);
      }),
      { seed: 57, numRuns: 150 },
    );
  });

  test('never rewrites an event, whatever is corrected', () => {
    fc.assert(
      fc.property(anyWalk, (chosen) => {
        const { story, events } = wander(chosen);
        expect(story.entries.map(({ event }) => event)).toEqual(events);
      }),
      { seed: 58, numRuns: 150 },
    );
  });

  test('proves nothing that was not repaired, and is fixed only when proven', () => {
    fc.assert(
      fc.property(
        anyWalk.map((walk) => walk.filter((action) => action.do !== 'correct')),
        (chosen) => {
          const { story } = wander(chosen);
          const first = story.repairs[0]?.n ?? Infinity;
          const early = story.proofs.filter(({ n }) => n < first);
          const unproven = story.closed?.as === 'fixed' && story.proofs.at(-1)?.good !== true;
          expect({ early, unproven }).toEqual({ early: [], unproven: false });
        },
      ),
      { seed: 59, numRuns: 300 },
    );
  });
});
