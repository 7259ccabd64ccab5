import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Action } from '../../src/core/session/action.ts';
import type { Event } from '../../src/core/session/event.ts';
import { fold, step } from '../../src/core/session/fold.ts';
import { newEvent } from '../../src/core/session/read-event.ts';
import { decide } from '../../src/core/session/rules/rules.ts';
import type { Story } from '../../src/core/session/story.ts';
import { headerFor, stampAt } from '../helpers/story.ts';
import { smallShop, smallTree } from '../helpers/tree.ts';

const other = smallTree({ id: 'other' });
const world = {
  tree: (id: string) => (id === 'other' ? { tree: other, shop: smallShop } : undefined),
};

/** Acts of every kind but a pause, which says nothing of the vehicle, and a withdrawal, which adds nothing. */
const acts: fc.Arbitrary<Action> = fc.oneof(
  fc.constantFrom<Action>(
    { do: 'find', check: 'lamp', result: 'dark' },
    { do: 'find', check: 'lamp', result: 'lit' },
    { do: 'find', check: 'look', result: 'whole', acknowledged: true },
    { do: 'find', check: 'look', result: 'burnt' },
    { do: 'find', check: 'volts', reading: '12.4', acknowledged: true },
    { do: 'find', check: 'volts', reading: '1' },
    { do: 'prove', result: 'lit' },
    { do: 'prove', result: 'dark' },
    { do: 'begin', check: 'look', acknowledged: true },
    { do: 'begin', check: 'volts' },
    { do: 'expect', check: 'look', result: 'whole' },
    { do: 'unsure', check: 'look' },
    { do: 'skip', check: 'volts', reason: 'rusted in' },
    { do: 'condemn', cause: 'fuse', acknowledged: true },
    { do: 'condemn', cause: 'wire' },
    { do: 'not-this', cause: 'fuse', acknowledged: true },
    { do: 'not-this', cause: 'wire' },
    { do: 'repair', cause: 'fuse', text: 'a new one', acknowledged: true },
    { do: 'repair', cause: 'wire' },
  ),
  fc.constantFrom<Action>(
    { do: 'conditions', altitude: '5200ft' },
    { do: 'conditions', notKnown: ['temperature'] },
    { do: 'standing', battery: 'disconnected' },
    { do: 'standing', key: 'run', engine: 'off' },
    { do: 'access', open: 'dash' },
    { do: 'access', close: 'dash' },
    { do: 'note', text: 'green dust' },
    { do: 'photo', file: 'a.jpg', caption: 'the fuse' },
    { do: 'timer', label: 'cooling', minutes: 5 },
    { do: 'timer-off' },
    { do: 'part-off', part: 'bezel' },
    { do: 'part-on', part: 'bezel' },
    { do: 'aid-on', aid: 'jumper at the coil' },
    { do: 'part-bought', part: '2 x bulb at 1.10, spare' },
    { do: 'limit', minutes: 90, money: '200 EUR' },
    { do: 'limit', minutes: 0, replace: 'gaskets' },
    { do: 'follow-up', text: 'tires', urgency: 'soon' },
    { do: 'leg', tree: 'other' },
    { do: 'settle', as: 'misread-then' },
    { do: 'settle', as: 'misread-now' },
    { do: 'settle', as: 'new-since' },
    { do: 'settle', as: 'comes-and-goes' },
    { do: 'close', as: 'handed-on' },
    { do: 'reopen' },
  ),
  fc.record({
    do: fc.constant('correct' as const),
    n: fc.integer({ min: 1, max: 12 }),
    result: fc.constantFrom('dark', 'lit', 'whole', 'burnt', 'low'),
    text: fc.constant('said otherwise'),
  }),
);

const header = headerFor();

/** A session as its events tell it, and the same after one action that stands; else nothing. */
function next(events: readonly Event[], action: Action): readonly Event[] | undefined {
  const ruling = decide(fold(header, events), action, world);
  if (ruling.kind === 'refused') return undefined;
  return [
    ...events,
    ...ruling.payloads.map((payload, index) => {
      const n = events.length + 1 + index;
      return newEvent(n, stampAt(n), payload);
    }),
  ];
}

/** All that a session comes to but how it came to it and how long that took. */
function standing(events: readonly Event[]): Omit<Story, 'entries' | 'minutes' | 'time'> {
  const { entries: _, minutes: __, time: ___, ...rest } = fold(header, events);
  return rest;
}

test('as many times taken back as acts were done, and all stands as it stood, step by step', () => {
  fc.assert(
    fc.property(fc.array(acts, { minLength: 1, maxLength: 14 }), (actions) => {
      let events: readonly Event[] = [];
      const before: ReturnType<typeof standing>[] = [];
      for (const action of actions) {
        const more = next(events, action);
        if (more === undefined) continue;
        before.push(standing(events));
        events = more;
      }
      for (const stood of before.toReversed()) {
        const back = next(events, { do: 'take-back' });
        if (back === undefined) throw new Error('something that stands could not be taken back');
        events = back;
        expect(standing(events)).toEqual(stood);
      }
      expect(next(events, { do: 'take-back' })).toBeUndefined();
    }),
    { numRuns: 300 },
  );
});

test('a story that goes on event by event is the one that the whole list makes', () => {
  const ways = fc.oneof(
    { weight: 5, arbitrary: acts },
    fc.constantFrom<Action>(
      { do: 'take-back' },
      { do: 'describe', text: 'at the clip', parts: ['2 x sleeve at 0.40'] },
      { do: 'pause' },
    ),
    fc.record({
      do: fc.constant('correct' as const),
      n: fc.integer({ min: 1, max: 20 }),
      withdraw: fc.constant(true),
    }),
  );
  fc.assert(
    fc.property(fc.array(ways, { maxLength: 20 }), (actions) => {
      let events: readonly Event[] = [];
      let story = fold(header, events);
      for (const action of actions) {
        const more = next(events, action) ?? events;
        const before = structuredClone(story.findings);
        const gone = more.slice(events.length).reduce(step, story);

        expect(gone).toEqual(fold(header, more));
        expect(story.findings).toEqual(before);
        [events, story] = [more, gone];
      }
    }),
    { numRuns: 200 },
  );
});
