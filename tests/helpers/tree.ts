import type { Tree } from '../../src/core/tree/model.ts';
import { parseTreeValue } from '../../src/core/tree/parse.ts';
import { Shop } from '../../src/core/tree/shop.ts';

/**
 * A small tree that a test can read at a glance: two causes, a look, a measured check behind an
 * access and a caution, and the complaint's own test.
 */
export const smallTree = (change: Partial<Record<string, unknown>> = {}): Tree => {
  const parsed = parseTreeValue({ ...smallTreeData(), ...change }, 'small.json', smallShop);
  if (parsed.kind === 'bad') throw new Error(JSON.stringify(parsed.problems));
  return parsed.value;
};

/** The checks of the small tree, its volts to be judged only once the fuse was seen whole. */
export function waitingChecks() {
  const { lamp, look, volts } = smallTreeData().checks;
  return { lamp, look, volts: { ...volts, after: { look: ['whole'] } } };
}

export const smallShop: Shop = Shop.parse({
  format: 1,
  cautions: {
    spark: { hazard: 'Spark', text: 'It bites. Keep clear.', when: 'sparking', acknowledge: true },
    hot: { hazard: 'Hot metal', text: 'It burns.', when: 'hot' },
  },
  tools: { meter: { name: 'Meter' } },
  accesses: { dash: { name: 'Dash panel off', open: 10, close: 5 } },
  facts: { choke: { ask: 'Which choke?', values: { manual: 'by cable', automatic: 'by itself' } } },
});

export const smallTreeData = () => ({
  format: 1,
  id: 'no-light',
  title: 'No light',
  complaint: { say: 'The lamp stays dark.', confirm: 'lamp' },
  start: 'look',
  causes: {
    fuse: {
      name: 'Fuse burnt',
      odds: 60,
      repair: { do: ['Find the short first.', 'New fuse.'], minutes: 5, cautions: ['hot'] },
    },
    wire: {
      name: 'Wire broken',
      odds: 40,
      repair: {
        do: ['Splice it.'],
        minutes: 30,
        access: ['dash'],
        standing: { battery: 'disconnected' },
        cautions: ['spark'],
        // oxlint-disable-next-line unicorn/no-thenable -- the tree format's word, never awaited
        then: ['volts'],
      },
    },
  },
  checks: {
    lamp: {
      kind: 'try',
      ask: 'Does the lamp light?',
      minutes: 1,
      results: [
        { id: 'lit', label: 'it lights', next: 'stop', reason: 'The lamp lights.' },
        { id: 'dark', label: 'it stays dark', next: 'look' },
      ],
      source: 'common practice, no source',
    },
    look: {
      kind: 'look',
      ask: 'Is the fuse whole?',
      minutes: 1,
      cautions: ['hot'],
      results: [
        { id: 'whole', label: 'whole', next: 'volts' },
        { id: 'burnt', label: 'burnt', next: 'cause:fuse' },
      ],
      background: [0.98, 0.02],
      points: { fuse: [0.05, 0.95] },
      source: 'common practice, no source',
    },
    volts: {
      kind: 'measure',
      ask: 'Volts at the lamp',
      minutes: 3,
      access: ['dash'],
      standing: { key: 'run' },
      cautions: ['spark'],
      tools: ['meter'],
      reading: { quantity: 'voltage', unit: 'V', plausible: [0, 16] },
      results: [
        { id: 'full', label: '12 V or more', from: 12, next: 'stop', reason: 'Neither fits.' },
        { id: 'low', label: 'under 12 V', from: 2, below: 12, next: 'cause:wire' },
        { id: 'dead', label: 'under 2 V', below: 2, next: 'cause:wire' },
      ],
      background: [0.97, 0.02, 0.01],
      points: { wire: [0.05, 0.15, 0.8] },
      source: 'common practice, no source',
    },
  },
});
