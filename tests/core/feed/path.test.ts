import { expect, test } from 'vitest';
import { feedFor, loadOhms, spanBetween, spanOhms } from '../../../src/core/feed/path.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { Feed, Load } from '../../../src/core/tree/feed-model.ts';
import { apart, feedNamed } from './build.ts';

const noSupply = feedNamed('no-supply');
const charging = feedNamed('charging');

test('a span has the ohms of its wire and its joints', () => {
  const span = spanBetween(noSupply, ['splice', 'am-a'])!;

  // 0.3 m of 12 AWG at 5.21 milliohm a metre, and 1.44 milliohm of joints.
  expect(apart(spanOhms(span), 0.3 * 0.00521 + 0.00144)).toBeLessThan(2e-6);
});

test.each([
  { takes: { watts: 55, at: 12.8 }, ohms: 12.8 ** 2 / 55 },
  { takes: { amps: 4, at: 12.8 }, ohms: 3.2 },
  { takes: { ohms: 0.06 }, ohms: 0.06 },
])('a load of $takes is $ohms ohm', ({ takes, ohms }) => {
  const load = Load.parse({ id: 'a', name: 'a', from: 'a', to: 'b', takes });

  expect(apart(loadOhms(load), ohms)).toBeLessThan(1e-12);
});

test('both headlamps go with one switch, and nothing flows in a lamp that is off', () => {
  const lit = solveFeed(noSupply, { on: ['headlamps'] });
  const dark = solveFeed(noSupply, { on: [] });

  expect(lit.amps('headlamp-left')).toBeGreaterThan(3.5);
  expect(lit.amps('headlamp-right')).toBeGreaterThan(3.5);
  expect(dark.amps('headlamp-left')).toBe(0);
});

test('the run contact conducts only with the key at run', () => {
  const volts = (on: readonly string[]) => solveFeed(noSupply, { on }).volts('ign-r');

  expect(apart(volts(['key-run']), 12.65)).toBeLessThan(0.01);
  expect(volts([])).toBe(0);
});

test('behind many ohms the lamps stay cold and hold the line down', () => {
  const change = { kind: 'ohms', part: 'bulk-e:bulk-d', ohms: 60 } as const;

  const state = solveFeed(noSupply, { on: ['headlamps', 'parking'] }, [change]);

  // Three lamps of 0.298, 0.298 and 0.492 ohm when cold, side by side: 0.1143 of 60.1143 ohm.
  const across = state.volts('lamp-l-pin') - state.volts('lamp-l-return');
  expect([...state.regime.lamps.values()].map((ohms) => ohms.toFixed(3))).toEqual([
    '0.298',
    '0.298',
    '0.492',
  ]);
  expect(apart(across, (12.65 * 0.1143) / 60.1143)).toBeLessThan(0.003);
});

test('an open body strap leaves the body home through the control cables', () => {
  const change = { kind: 'open', part: 'block:body' } as const;

  const state = solveFeed(noSupply, { on: ['headlamps'] }, [change]);

  // 8.6 A at 12.8 V are 7.8 A at 10.7 V, through 0.2 ohm.
  expect(apart(state.volts('body'), 1.55)).toBeLessThan(0.05);
});

const machineOf = (changes: object): Feed =>
  Feed.parse({ ...charging, machines: charging.machines.map((one) => ({ ...one, ...changes })) });

const night = ['headlamps', 'parking', 'key-run', 'ignition', 'blower', 'alternator'];

test('a machine at its limit gives its rated amps and the battery the rest', () => {
  const state = solveFeed(machineOf({ amps: 15 }), { on: night });

  expect(state.amps('alternator')).toBe(-15);
  expect(state.batteryAmps).toBeGreaterThan(3);
});

test('a machine below the battery takes nothing back', () => {
  const state = solveFeed(machineOf({ volts: 11 }), { on: night });

  expect(state.amps('alternator')).toBe(0);
});

const charger = machineOf({ field: 'rotor' });
const driving = [...night, 'rotor'];

test('a machine whose field is open gives nothing, and the posts show the battery at rest', () => {
  const open = { kind: 'open', part: 'reg-ign:field' } as const;

  const sound = solveFeed(charger, { on: driving });
  const dead = solveFeed(charger, { on: driving }, [open]);
  const idle = solveFeed(charger, { on: driving.filter((id) => id !== 'alternator') });

  expect(sound.amps('alternator')).toBeLessThan(-20);
  expect(dead.amps('alternator')).toBe(0);
  expect(dead.volts('post-pos')).toBeLessThan(12.65);
  expect(apart(dead.volts('alt-b'), idle.volts('alt-b'))).toBeLessThan(0.1);
});

test('a field at half its current lets a machine give half its rated amps', () => {
  const slack = machineOf({ field: 'rotor', amps: 15 });
  const [rotor] = slack.loads.filter(({ id }) => id === 'rotor');
  const ohms = loadOhms(rotor!);
  const weak = { kind: 'ohms', part: 'reg-ign:field', ohms } as const;

  const state = solveFeed(slack, { on: driving }, [weak]);
  const share = (state.amps('rotor') * ohms) / slack.machines[0]!.volts;

  expect(share).toBeGreaterThan(0.4);
  expect(share).toBeLessThan(0.5);
  expect(apart(state.amps('alternator'), -15 * share)).toBeLessThan(1e-8);
});

test('what the battery gives is what the loads take', () => {
  const state = solveFeed(noSupply, { on: ['headlamps', 'parking', 'horn'] });
  const taken = noSupply.loads.reduce((sum, { id }) => sum + state.amps(id), 0);

  expect(apart(state.batteryAmps, taken)).toBeLessThan(1e-9);
});

test('on a vehicle without an ammeter its studs and spans are gone, and what replaces them stays', () => {
  const meter = { meter: 'ammeter' };
  const bypass = {
    from: 'bulk-d',
    to: 'splice',
    name: 'feed wire',
    wire: { gauge: 12, metres: 1 },
  };
  const feed = Feed.parse({
    ...noSupply,
    stations: {
      ...noSupply.stations,
      'am-a': { ...noSupply.stations['am-a'], when: meter },
      'am-b': { ...noSupply.stations['am-b'], when: meter },
    },
    spans: [...noSupply.spans, { ...bypass, when: { meter: 'voltmeter' } }],
  });

  const volts = feedFor(feed, (when) => when['meter'] === 'voltmeter');

  expect(Object.keys(volts.stations)).not.toContain('am-a');
  expect(spanBetween(volts, ['am-a', 'splice'])).toBeUndefined();
  expect(solveFeed(volts, { on: [] }).volts('lsw-b')).toBeGreaterThan(12.6);
});
