import { expect, test } from 'vitest';
import * as z from 'zod';
import {
  CheckFeed,
  Fault,
  Feed,
  causeFeedFields,
  checkFeedFields,
} from '../../../src/core/tree/feed-model.ts';
import { feedNamed } from './build.ts';

test('what a feed block leaves out takes its usual spread', () => {
  expect(feedNamed('crank').spread).toEqual({
    volts: 0.1,
    joints: 0.4,
    loads: 0.1,
    meter: 0.03,
    meterOhms: 0.1,
  });
});

test.each([
  { name: 'a word', fault: 'bad' },
  { name: 'its own figures', fault: { milliohm: 60, sigma: 1.2, open: 0.3 } },
  {
    name: 'a weak battery',
    fault: { battery: { volts: 11, spread: 0.4, milliohm: 150, sigma: 0.8 } },
  },
  { name: 'a load with other ohms', fault: { load: 'starter', ohms: 0.12, sigma: 0.2 } },
])('a fault may be $name', ({ fault }) => {
  expect(Fault.parse(fault)).toEqual(fault);
});

test.each([
  { name: 'an unknown word', fault: 'loose' },
  { name: 'a share above 1', fault: { milliohm: 60, sigma: 1.2, open: 1.3 } },
  { name: 'no ohms', fault: { milliohm: 0, sigma: 1 } },
  { name: 'a battery without ohms', fault: { battery: { volts: 11 } } },
])('a fault may not be $name', ({ fault }) => {
  expect(Fault.safeParse(fault).success).toBe(false);
});

test('the fields fit into a strict cause and a strict check, and may be left out', () => {
  const Cause = z.strictObject({ name: z.string(), ...causeFeedFields });
  const Check = z.strictObject({ ask: z.string(), ...checkFeedFields });

  expect(Cause.parse({ name: 'a', span: ['b', 'c'], fault: 'open' }).span).toEqual(['b', 'c']);
  expect(Check.parse({ ask: 'a', feed: { station: 'b' } }).feed).toEqual({
    station: 'b',
    load: [],
    reads: 'volts',
  });
  expect(Cause.parse({ name: 'a' })).toEqual({ name: 'a' });
});

test.each([
  { name: 'a field that the model does not know', changes: { colour: 'red' } },
  { name: 'a wire of half a gauge', changes: { spans: [wireOf({ gauge: 12.5, metres: 1 })] } },
  { name: 'a wire of no length', changes: { spans: [wireOf({ gauge: 12, metres: 0 })] } },
  { name: 'no loads', changes: { loads: [] } },
])('a feed block may not have $name', ({ changes }) => {
  expect(Feed.safeParse({ ...feedNamed('crank'), ...changes }).success).toBe(false);
});

function wireOf(wire: object): object {
  return { from: 'stud', to: 'motor', name: 'cable', wire };
}

test('a schema for editors can be made of the feed block', () => {
  expect(() =>
    z.toJSONSchema(z.object({ feed: Feed, check: CheckFeed, fault: Fault })),
  ).not.toThrow();
});
