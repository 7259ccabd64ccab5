import { describe, expect, test } from 'vitest';
import { lintHazards } from '../../../../src/core/tree/lint/hazards.ts';
import type { Check, Tree } from '../../../../src/core/tree/model.ts';
import { toldBy, withCheck } from '../../../helpers/lint.ts';

/*
 * What a mechanic might well write, each as the only step of a check with one caution. Which of it
 * can hurt is common practice, no source.
 */

const codes = (how: string, cautions: readonly string[], standing: Check['standing']) => {
  const tree: Tree = withCheck('look', { how: [how], cautions: [...cautions], standing });
  const { look } = tree.checks;
  if (look === undefined) throw new Error('no look');
  const told = toldBy(lintHazards, { ...tree, causes: {}, checks: { look } });
  return told.flatMap((one) => (one.endsWith('how[0]') ? [one.split(' ')[0]] : []));
};

const idling = { key: 'run', engine: 'idling' } as const;
const hot = { key: 'off', engine: 'off', heat: 'hot' } as const;
const off = { key: 'off', engine: 'off' } as const;

describe('a step against a caution of its own', () => {
  test.each<[step: string, caution: string, standing: Check['standing']]>([
    ['Feel the manifold for the pipe that misses.', 'hot', hot],
    ['Hand on the exhaust: does it beat?', 'hot', idling],
    ['Touch each hub after the run.', 'hot', hot],
    ['Feel the tail pipe for a beat.', 'hot', idling],
    ['Press on the belt and see how far it gives.', 'rotate', idling],
    ['Spin the fan by hand.', 'rotate', idling],
    ['Hold the fan and feel it slip.', 'rotate', { key: 'run', engine: 'fast-idle' }],
    ['Wiggle the plug leads and listen.', 'ht', idling],
    ['Pull a plug lead off and hear whether it drops.', 'ht', idling],
    ['Crank it with the coil lead off.', 'ht', { key: 'start', engine: 'cranking' }],
    ['Hold a match over the filler.', 'tank', off],
    ['Bring a lighter near the float bowl.', 'fuel-fire', off],
    ['Look into the cells with a lighter.', 'batt-gas', off],
    ['Charger on: clips moved to the other posts.', 'charger', off],
    ['Positive lead off first, then the other.', 'batt-order', off],
    ['Take off the radiator cap and look.', 'scald', hot],
    ['Get under and listen for the blow.', 'lift', idling],
  ])('is told: %s (%s)', (step, caution, standing) => {
    expect(codes(step, [caution], standing)).toContainEqual(
      expect.stringMatching(/^(step-against-caution|hand-in-danger)$/),
    );
  });

  test.each<[step: string, caution: string, standing: Check['standing']]>([
    ['Hand near the manifold, not on it.', 'hot', hot],
    ['Let the manifold get cold, then feel the gasket edge of the exhaust.', 'hot', hot],
    ['Never touch the exhaust.', 'hot', hot],
    ['Feel the manifold.', 'hot', { ...off, heat: 'cold' }],
    ['Press on the belt and see how far it gives.', 'rotate', off],
    ['Engine off: spin the fan by hand.', 'rotate', idling],
    ['Hold 2500 rpm for 30 s, nobody in line with the fan.', 'rotate', idling],
    ['Pull a plug lead off with insulated pliers.', 'ht', idling],
    ['Pull the plug leads off, one by one.', 'ht', off],
    ['Crank it with the coil lead grounded: the coil lead off its tower.', 'ht', off],
    ['No match, no lighter near.', 'fuel-fire', off],
    ['Refit tight, live lead first, ground lead last.', 'batt-order', off],
    ['Top hose cold: take off the radiator cap.', 'scald', { ...off, heat: 'cold' }],
    ['Get under and look for oil.', 'lift', off],
  ])('is not told: %s (%s)', (step, caution, standing) => {
    const told = codes(step, [caution], standing);
    expect(told).not.toContain('step-against-caution');
    expect(told).not.toContain('hand-in-danger');
  });
});

describe('a hand at what is live or turns', () => {
  test.each([
    'Clean the points with emery while the ignition is on.',
    'Key on: file the points bright.',
    'Scrape the coil terminals with the ignition on.',
    'Tighten the starter nut with the battery still connected and the ignition on.',
    'Feel behind the fan belt while it turns.',
    'Press the belt with the engine running.',
    'Clean the commutator with a stick while the engine runs.',
  ])('is refused whatever stands beside it: %s', (step) => {
    expect(codes(step, ['rotate', 'ht', 'short', 'hot'], off)).toContain('hand-in-danger');
  });

  test.each([
    'Key off: clean the points with emery.',
    'Key on, points shut: volts at the coil terminal.',
    'Never touch the points with the ignition on.',
    'Engine running: look along the belt from the side.',
    'Ignition on: does the lamp at the contacts light?',
  ])('is not refused: %s', (step) => {
    expect(codes(step, ['rotate', 'ht', 'short', 'hot'], off)).not.toContain('hand-in-danger');
  });
});
