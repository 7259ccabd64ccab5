import type { Action } from '../../src/core/session/action.ts';
import type { Recorded } from '../../src/core/session/fold.ts';
import { jobOf, see } from './led-job.ts';

const read = (check: string, reading: string): Action => ({
  do: 'find',
  check,
  reading,
  acknowledged: true,
});
const prove = (result: string): Action => ({ do: 'prove', result, acknowledged: true });
const mend = (cause: string, more: Partial<Extract<Action, { do: 'repair' }>> = {}): Action => ({
  do: 'repair',
  cause,
  acknowledged: true,
  ...more,
});
const close = (
  as: 'fixed' | 'handed-on' | 'given-up' | 'not-reproduced',
  text?: string,
): Action => ({
  do: 'close',
  as,
  ...(text !== undefined && { text }),
});

/** Jobs of kinds that the examples are not: what an account must tell of each stands in its tests. */
export const oddSessions: Readonly<Record<string, () => Recorded>> = {
  easy: () =>
    jobOf(
      {
        tree: 'slow-crank',
        vehicle: 'easy - 1972 pickup',
        altitude: '200 m',
        temperature: '4 C',
        units: 'metric',
      },
      [
        [1, { do: 'note', text: 'slow since the new battery' }],
        'crank-time',
        [3, see('crank-time', 'slow')],
        [2, read('bat-rest-volts', '12.7 V')],
        [2, read('crank-volts', '10.1 V')],
        [3, see('when-ask', 'same')],
        [2, read('post-clamp-crank', '1.4 V')],
        [1, { do: 'condemn', cause: 'post-film', acknowledged: true }],
        [12, mend('post-film', { text: 'both posts scraped bright', minutes: 10 })],
        [3, read('post-clamp-crank', '40 mV')],
        [2, prove('normal')],
        [1, close('fixed')],
      ],
    ),
  guess: () =>
    jobOf({ tree: 'overheat', altitude: '1500 m', temperature: '31 C', units: 'metric' }, [
      'heat-run',
      [35, see('heat-run', 'hot')],
      [65, mend('thermostat', { text: 'new 82 C thermostat', minutes: 60 })],
      [32, prove('hot')],
      [95, mend('water-pump', { minutes: 90, cost: '62.00' })],
      [33, prove('hot')],
      [6, see('cap-test', 'holds')],
      [2, see('when-hot', 'speed')],
      [12, see('ir-walk', 'bands')],
      [1, { do: 'condemn', cause: 'radiator-block', acknowledged: true }],
      [120, mend('radiator-block', { text: 'core rodded out', minutes: 110, cost: '180' })],
      [35, prove('normal')],
      [1, close('fixed')],
    ]),
  'handed on': () =>
    jobOf(
      {
        tree: 'rough-idle',
        altitude: '5200 ft',
        temperature: '12 C',
        facts: { ignition: 'points', pcv: 'fitted' },
      },
      [
        [6, see('idle-check', 'shakes')],
        [3, see('choke-hot', 'open')],
        [5, read('vac-level', '47 kPa')],
        [2, see('vac-needle', 'flick')],
        [4, { do: 'skip', check: 'build-ask', reason: 'nobody knows' }],
        [8, see('cyl-balance', 'dead')],
        [12, see('swap-plug', 'stays')],
        [1, { do: 'follow-up', text: 'oil weeps at the rocker cover', urgency: 'noticed' }],
        [2, close('handed-on', 'To the engine shop on Monday; do the leak-down on no. 3 first')],
      ],
    ),
  contradiction: () =>
    jobOf({ tree: 'slow-crank', altitude: '100 m', temperature: '20 C', units: 'metric' }, [
      'crank-time',
      [3, see('crank-time', 'slow')],
      [2, read('bat-rest-volts', '12.7 V')],
      [2, read('crank-volts', '10.4 V')],
      [3, see('when-ask', 'same')],
      [2, read('post-clamp-crank', '0.05 V')],
      [2, read('ground-crank', '0.2 V')],
      [5, read('post-clamp-crank', '1.9 V')],
      [3, close('not-reproduced')],
    ]),
  unproven: () =>
    jobOf({ tree: 'overheat', altitude: '100 m', temperature: '20 C', units: 'metric' }, [
      'heat-run',
      [35, see('heat-run', 'hot')],
      [6, see('cap-test', 'low')],
      [5, mend('cap', { text: 'new cap', minutes: 5 })],
      [45, mend('thermostat', { minutes: 40 })],
    ]),
  'three checks': () =>
    jobOf({ tree: 'no-start', who: '' }, [
      [4, see('leak-look', 'dry')],
      [3, see('oil-fuel', 'good')],
      [5, see('start-tries', 'catches')],
    ]),
  'two complaints': () =>
    jobOf(
      {
        tree: 'no-supply',
        altitude: '0 m',
        temperature: '25 C',
        said: 'it died at the gate, and nothing works',
      },
      [
        [5, see('lamps-horn', 'dies')],
        'go on',
        [1, { do: 'note', text: 'came alive when the hood was dropped' }],
        [3, { do: 'complaint', tree: 'slow-crank', words: 'it has cranked slowly all winter' }],
        'crank-time',
        [3, see('crank-time', 'slow')],
        'go on',
        [30, mend('starter-motor', { text: 'exchange starter', minutes: 70, cost: '110' })],
        [4, prove('normal')],
        [2, close('given-up', 'the lamps did not fail again')],
      ],
    ),
  'forty findings': () =>
    jobOf({ tree: 'no-supply' }, [
      [4, see('lamps-horn', 'dies')],
      'go on',
      [2, { do: 'complaint', tree: 'no-crank' }],
      'start-sound',
      [3, see('start-sound', 'silent')],
      'go on',
      [2, { do: 'complaint', tree: 'rough-idle' }],
      'idle-check',
      [5, see('idle-check', 'hunts')],
      'go on',
      [2, { do: 'complaint', tree: 'hesitation' }],
      'go on',
      [2, close('given-up')],
    ]),
  'long notes': () =>
    jobOf({ tree: 'slow-crank', vehicle: 'Van "<b>`|', temperature: '-12 C', units: 'metric' }, [
      [1, { do: 'note', text: '# A heading\n- a list\n| a pipe |\n<script>alert(1)</script>' }],
      'crank-time',
      [3, see('crank-time', 'fades')],
      [2, read('bat-rest-volts', '12.1 V')],
      [1, { do: 'note', text: `it ${'goes on and on '.repeat(30)}` }],
      [2, read('crank-volts', '9.7 V')],
      [2, { do: 'unsure', check: 'when-ask' }],
      [2, read('post-clamp-crank', '0.05 V')],
      [2, { do: 'condemn', cause: 'battery-failed', acknowledged: true }],
      [20, mend('battery-failed', { minutes: 15, cost: 'GBP 89.00', parts: ['battery'] })],
      [3, prove('normal')],
      [1, close('fixed')],
    ]),
};
