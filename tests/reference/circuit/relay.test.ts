import { expect, test } from 'vitest';
import { networkOf } from '../../../src/core/feed/circuit.ts';
import { pathsOf } from '../../../src/core/feed/fitted.ts';
import { netlistOf } from '../../../src/core/feed/netlist.ts';
import type { Change } from '../../../src/core/feed/path.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { value } from '../../core/feed/build.ts';
import { shippedTree } from '../../helpers/library.ts';
import { engine, simulated } from './simulator.ts';

/* The horn and its relay: the simulator throws the contact by itself, from the volts at the coil. */
const { feed: shipped } = shippedTree('accessory-dead');
if (shipped === undefined) throw new Error('the tree has a feed path');
const feed = pathsOf(shipped, { accessory: 'horn', 'acc-relay': 'fitted' })();
const setting = { on: ['thing'] };
const contact = 'rel-in:rel-out';
const button = 'sw-in:sw-out';

/** The listing with the contact a switch that its coil closes, as the feed block says. */
function withSwitch(text: string, nodes: ReadonlyMap<string, string>, part: string): string {
  const node = (name: string): string => nodes.get(name) ?? '0';
  const line = new RegExp(`^${part} (\\S+) (\\S+) (\\S+)$`, 'm');
  const [, from = '', to = '', ohms = ''] = line.exec(text) ?? [];
  const closes = `S${part} ${from} ${to} ${node('rel-in')} ${node('coil-out')} horn`;
  return text
    .replace(line, closes)
    .replace('.op', `.model horn SW(VT=6 VH=0 RON=${ohms} ROFF=1e12)\n.op`);
}

const ways: readonly (readonly [string, readonly Change[], 'pulls in' | 'stays open'])[] = [
  ['all sound', [], 'pulls in'],
  ['20 ohm in the button', [{ kind: 'ohms', part: button, ohms: 20 }], 'pulls in'],
  ['55 ohm in the button', [{ kind: 'ohms', part: button, ohms: 55 }], 'pulls in'],
  ['70 ohm in the button', [{ kind: 'ohms', part: button, ohms: 70 }], 'stays open'],
  ['the button open', [{ kind: 'open', part: button }], 'stays open'],
  ['the fuse burnt', [{ kind: 'open', part: 'bus:fuse-out' }], 'stays open'],
  ['half an ohm in the contact', [{ kind: 'ohms', part: contact, ohms: 0.5 }], 'pulls in'],
  ['a battery at 5.5 V', [{ kind: 'battery', volts: 5.5, ohms: 0.05 }], 'stays open'],
];

test.skipIf(engine === undefined).each(ways)(
  'the horn relay with %s: volts as ngspice has them, and the contact %s',
  async (_, changes, does) => {
    const state = solveFeed(feed, setting, changes);
    const closed = { ...state.regime, dropped: new Set<string>() };
    const { text, nodes, parts } = value(
      netlistOf(networkOf(feed, setting, closed, changes), 'relay'),
    );
    const found = await simulated(withSwitch(text, nodes, parts.get(contact) ?? ''));
    const apart = [...nodes]
      .filter(([name, short]) => short !== '0' && Object.hasOwn(feed.stations, name))
      .map(([name, short]) => Math.abs((found.get(`v(${short})`) ?? NaN) - state.volts(name)));

    expect(state.regime.dropped.has(contact)).toBe(does === 'stays open');
    expect(apart.length).toBeGreaterThan(8);
    expect(Math.max(...apart)).toBeLessThan(1e-5);
  },
);
