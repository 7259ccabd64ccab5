import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  impliedPayloads,
  preparations,
  type Preparation,
} from '../../../src/core/session/preparation.ts';
import type { Standing } from '../../../src/core/tree/model.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { smallShop } from '../../helpers/tree.ts';

type Now = Required<Omit<Standing, 'heat'>>;

const asleep: Now = { battery: 'connected', key: 'off', engine: 'off' };
const running: Now = { battery: 'connected', key: 'run', engine: 'idling' };
const parted: Now = { battery: 'disconnected', key: 'off', engine: 'off' };

const words = (steps: readonly Preparation[]): readonly string[] =>
  steps.map((step) =>
    step.kind === 'standing'
      ? Object.entries(step.set)
          .map(([part, value]) => `${part} ${value}`)
          .join(', ')
      : `${step.kind} ${step.access}`,
  );

/** A job that has just begun, and whose shop knows these accesses. */
const { legs } = after([]).story;
const withAccesses = (accesses: typeof smallShop.accesses) =>
  after([], headerFor(undefined, { ...smallShop, accesses })).story.legs;

describe('preparing the vehicle for a step', () => {
  test.each([
    ['nothing when all is so already', asleep, { key: 'off' }, []],
    [
      'engine, key, battery, then what is to be opened',
      running,
      { battery: 'disconnected', key: 'off', engine: 'off' },
      ['engine off', 'key off', 'battery disconnected', 'open dash'],
    ],
    [
      'what is to be opened, battery on, key, the engine last',
      parted,
      { battery: 'connected', key: 'run', engine: 'idling' },
      ['open dash', 'battery connected', 'key run', 'engine idling'],
    ],
    [
      'a meter in the battery lead is a parted battery',
      running,
      { battery: 'meter-in-series', key: 'off', engine: 'off' },
      ['engine off', 'key off', 'battery meter-in-series', 'open dash'],
    ],
    [
      'warming up comes last',
      asleep,
      { key: 'run', engine: 'idling', heat: 'warm' },
      ['open dash', 'key run', 'engine idling', 'heat warm'],
    ],
  ] as const)('%s', (_, now, standing, expected) => {
    const access = expected.length > 0 ? ['dash'] : [];

    expect(words(preparations({ legs, standing: now, open: [] }, { standing, access }))).toEqual(
      expected,
    );
  });

  test('what is open already is not opened again', () => {
    const wants = { standing: {}, access: ['dash', 'hood'] };

    expect(words(preparations({ legs, standing: asleep, open: ['dash'] }, wants))).toEqual([
      'open hood',
    ]);
  });

  test('the ground lead is off while a live stud is reached, and on again for the reading', () => {
    const battery = 'disconnected' as const;
    const dash = { name: 'Cluster eased forward', open: 15, close: 15, standing: { battery } };
    const story = { legs: withAccesses({ dash }), standing: asleep };
    const wants = { standing: { battery: 'connected' as const }, access: ['dash'] };

    expect(words(preparations({ ...story, open: [] }, wants))).toEqual([
      'battery disconnected',
      'open dash',
      'battery connected',
    ]);
    expect(words(preparations({ ...story, open: ['dash'] }, wants))).toEqual([]);
  });

  test('what must be shut is put back, each time that it is open', () => {
    const wants = { standing: { key: 'run' as const }, access: [], shut: ['air-cleaner'] };

    expect(
      words(preparations({ legs, standing: asleep, open: ['air-cleaner', 'dash'] }, wants)),
    ).toEqual(['close air-cleaner', 'key run']);
    expect(words(preparations({ legs, standing: asleep, open: ['dash'] }, wants))).toEqual([
      'key run',
    ]);
  });

  test('done without saying so, the same is written as implied', () => {
    const wants = { standing: { key: 'run' as const }, access: ['dash'] };

    expect(impliedPayloads({ standing: asleep, open: [] }, wants)).toEqual([
      { kind: 'access', access: 'dash', now: 'open', implied: true },
      { kind: 'standing', set: { key: 'run' }, implied: true },
    ]);
  });
});

const anyNow = fc.record({
  battery: fc.constantFrom('connected', 'disconnected', 'meter-in-series'),
  key: fc.constantFrom('off', 'acc', 'run', 'start'),
  engine: fc.constantFrom('off', 'cranking', 'idling', 'road'),
});
const anyStanding = fc.record(
  {
    battery: fc.constantFrom('connected', 'disconnected', 'meter-in-series'),
    key: fc.constantFrom('off', 'acc', 'run', 'start'),
    engine: fc.constantFrom('off', 'cranking', 'idling', 'road'),
    heat: fc.constantFrom('cold', 'hot'),
  },
  { requiredKeys: [] },
);
const anyAccess = fc.subarray(['dash', 'hood', 'floor']);

const always = (law: (now: Now, wanted: Standing, steps: readonly Preparation[]) => void) =>
  fc.assert(
    fc.property(anyNow, anyStanding, anyAccess, anyAccess, (now, standing, access, open) =>
      law(now, standing, preparations({ legs, standing: now, open }, { standing, access })),
    ),
    { seed: 55, numRuns: 1000 },
  );

/** The vehicle as each step meets it, beside that step. */
function met(now: Standing, steps: readonly Preparation[]) {
  let standing = now;
  return steps.map((step) => {
    const before = standing;
    if (step.kind === 'standing') standing = { ...standing, ...step.set };
    return { step, before };
  });
}

const partsBattery = (step: Preparation) =>
  step.kind === 'standing' && step.set.battery !== undefined && step.set.battery !== 'connected';

describe('whatever the vehicle is like and whatever the step wants', () => {
  test('afterwards it is as the step wants it, and each access is open once', () => {
    fc.assert(
      fc.property(anyNow, anyStanding, anyAccess, anyAccess, (now, standing, access, open) => {
        const steps = preparations({ legs, standing: now, open }, { standing, access });
        const opened = steps.flatMap((step) => (step.kind === 'open' ? [step.access] : []));
        const set = steps.flatMap((step) => (step.kind === 'standing' ? [step.set] : []));
        expect(Object.assign({ ...now }, ...set)).toMatchObject(standing);
        expect(opened).toEqual(access.filter((one) => !open.includes(one)));
      }),
      { seed: 56, numRuns: 1000 },
    );
  });

  test('battery on comes before key on, and key on before the engine', () => {
    always((_now, _wanted, steps) => {
      const rank = steps.map((step) => {
        if (step.kind !== 'standing') return 0;
        if (step.set.battery === 'connected') return 1;
        if (step.set.key !== undefined && step.set.key !== 'off') return 2;
        return step.set.engine !== undefined && step.set.engine !== 'off' ? 3 : undefined;
      });
      const ups = rank.flatMap((one) => (one === undefined || one === 0 ? [] : [one]));
      expect(ups).toEqual(ups.toSorted((one, other) => one - other));
    });
  });

  test('where key and engine are wanted off, they are off before the battery is parted', () => {
    always((now, wanted, steps) => {
      fc.pre(wanted.key === 'off' && wanted.engine === 'off');
      const parting = met(now, steps).filter(({ step }) => partsBattery(step));
      for (const { before } of parting) expect(before).toMatchObject({ key: 'off', engine: 'off' });
    });
  });

  test('key and engine are off before the battery is parted, said or not', () => {
    always((now, wanted, steps) => {
      fc.pre(wanted.key === undefined && wanted.engine === undefined);
      const parting = met(now, steps).filter(({ step }) => partsBattery(step));
      for (const { before } of parting) expect(before).toMatchObject({ key: 'off', engine: 'off' });
    });
  });

  test('the key is off before the battery goes back on, said or not', () => {
    always((now, wanted, steps) => {
      const back = met(now, steps).filter(
        ({ step }) => step.kind === 'standing' && step.set.battery === 'connected',
      );
      fc.pre(wanted.key === undefined);
      for (const { before } of back) expect(before).toMatchObject({ key: 'off' });
    });
  });
});
