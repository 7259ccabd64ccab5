// A whole weekend on the orchard's delivery van: dead on Saturday, its feed mended and proven; a shaking
// idle taken up on the same job, the carburetor off in twelve bags and back on Sunday, and the road.
import { find, read } from './example-scripts.mjs';

const photo = (picture, caption, about) => ({
  do: 'photo',
  picture,
  caption,
  ...(about && { about }),
});
const off = (part, where, fasteners, routing) => ({
  do: 'part-off',
  part,
  ...(where && { where }),
  ...(fasteners && { fasteners }),
  ...(routing && { routing }),
});
const on = (part) => ({ do: 'part-on', part });
const road = (text) => ({ do: 'note', on: 'road', text });

const saturday = [
  [
    1,
    {
      do: 'note',
      text: 'Parked on Friday with everything working. It has not been touched since.',
    },
  ],
  [2, { do: 'limit', minutes: 600, money: '150 EUR', replace: 'gaskets, hoses, cable ends' }],
  [2, photo('engine bay from the left', 'The engine bay as it came in.')],
  [3, find('lamps-horn', 'dead')],
  [3, read('bat-rest-volts', '12.6 V')],
  [3, read('post-clamp-drop', '0.02 V')],
  [3, read('ground-clamp-drop', '0.01 V')],
  [1, find('clamp-twist', 'nothing')],
  [3, find('bulb-load', 'bright')],
  [4, find('isolator-look', 'fine')],
  [4, read('ground-drop', '9.8 V')],
  [
    2,
    {
      do: 'condemn',
      cause: 'ground-main',
      text: 'the ground cable ends in green powder inside its lug at the block',
      acknowledged: true,
    },
  ],
  [2, photo('lug', 'The ground cable at the block: green powder where the lug was crimped.')],
  [
    31,
    {
      do: 'repair',
      cause: 'ground-main',
      text: 'new ground cable of the same gauge, block and body scraped bright, a star washer under each lug',
      parts: ['ground cable, 60 cm at 14.80 EUR', '2 x star washer at 0.35 EUR'],
      minutes: 28,
      acknowledged: true,
    },
  ],
  [3, read('ground-drop', '0.03 V')],
  [2, { do: 'prove', result: 'works', acknowledged: true }],
  [
    6,
    {
      do: 'complaint',
      tree: 'rough-idle',
      words: 'since spring it shakes at every light once it is hot',
      facts: { ignition: 'points', pcv: 'fitted', egr: 'none' },
      sheet: { 'idle-vacuum': { reading: '18.5 inHg', where: 'shop manual, engine chapter' } },
    },
  ],
  [16, find('idle-check', 'hunts')],
  [3, find('choke-hot', 'open')],
  [5, read('vac-level', '14.8 inHg')],
  [2, find('vac-needle', 'drift')],
  [2, find('build-ask', 'standard')],
  [6, find('hose-walk', 'whole')],
  [9, find('cyl-balance', 'even')],
  [4, find('choke-ease', 'lean')],
  [8, find('spray-joints', 'none')],
  [6, find('dwell-run', 'good')],
  [5, find('timing-early', 'good')],
  [7, find('screw-response', 'dead')],
  [
    2,
    {
      do: 'follow-up',
      text: 'grommet of the wires at the firewall is hard and cracked',
      urgency: 'noticed',
    },
  ],
  [1, { do: 'pause' }],
];

/** The carburetor comes off: what goes into which bag, in the order of taking off. */
const parts = [
  ['air cleaner and its lid', 'bench, left end', 'wing nut'],
  ['breather hose', 'bench, left end', 'two clips', 'rocker cover to air cleaner'],
  [
    'throttle rod',
    'tray, first bag',
    'split pin and washer',
    'over the manifold, under the fuel line',
  ],
  ['return spring', 'tray, first bag', undefined, 'lug on the base to bracket on the head'],
  ['choke cable end', 'tied back to the hood hinge', 'pinch screw', 'outside of the heater hose'],
  ['fuel line', 'capped, tied up', 'two flare nuts', 'pump to bowl, behind the thermostat housing'],
  ['spark advance hose', 'tray', undefined, 'port on the right of the base to the distributor'],
  ['crankcase valve hose', 'tray', 'one clip', 'base, rear, to the valve in the cover'],
  ['carburetor', 'bench, on a clean rag', 'four nuts and washers'],
  ['insulator block', 'bench', 'on the four studs'],
  ['bowl cover', 'bench, in a tin', 'six screws, the long one at the front'],
  ['idle jet', 'tin, in its own paper', 'screwed in beside the main jet'],
];

const sunday = [
  [1, { do: 'worker', who: 'MK' }],
  [
    3,
    {
      do: 'condemn',
      cause: 'idle-jet',
      text: 'both mixture screws can be shut and nothing changes: no fuel comes through the idle jet',
      acknowledged: true,
    },
  ],
  [2, photo('linkage', 'Linkage and hoses before anything came off.')],
  ...parts.map(([part, where, fasteners, routing]) => [4, off(part, where, fasteners, routing)]),
  [3, photo('jet', 'The idle jet against the light: no light comes through.')],
  [2, { do: 'timer', label: 'carburetor body in the soak', minutes: 45 }],
  [46, { do: 'timer-off' }],
  [
    38,
    {
      do: 'repair',
      cause: 'idle-jet',
      text: 'idle jet soaked and blown clear, every passage seen to flow, new gaskets, float height set by the book',
      parts: ['gasket set at 21.90 EUR', 'cleaner, 1 l at 11.20 EUR'],
      minutes: 84,
      acknowledged: true,
    },
  ],
  [2, { do: 'part-bought', part: 'needle valve at 9.40 EUR, spare' }],
  ...parts.toReversed().map(([part]) => [3, on(part)]),
  [2, photo('linkage back', 'Everything back on, by the first picture.')],
  [3, { do: 'access', close: 'carb-top' }],
  [14, find('screw-response', 'good')],
  [5, read('vac-level', '18.4 inHg')],
  [6, { do: 'prove', result: 'smooth', acknowledged: true }],
  [9, road('yard: three stops from a walk, full lock both ways, throttle snaps shut')],
  [5, road('5 min gentle: gauges steady, idles smooth at the first light')],
  [8, road('the hill to the orchard, same load as last week: pulls clean')],
  [15, road('full heat: stopped, started at once, idle steady')],
  [4, road('back: dry at every fuel joint, hubs cool')],
  [2, { do: 'follow-up', text: 'look at every fuel joint again tomorrow, cold', urgency: 'soon' }],
  [
    1,
    {
      do: 'follow-up',
      text: 'nuts of the carburetor base once more after a week',
      urgency: 'soon',
    },
  ],
  [2, { do: 'close', as: 'fixed' }],
];

export const weekend = {
  name: 'weekend',
  tree: 'no-supply',
  vehicle: ['year=1968', 'body=delivery van', 'engine=straight six, 3.7 L', 'odometer=61240 mi'],
  args: [
    '--vehicle',
    'Orchard van',
    '--who',
    'JB',
    '--altitude',
    '640ft',
    '--temperature',
    '68F',
    '--facts',
    'ground-side=negative,feed-meter=ammeter',
  ],
  openings: [
    { begins: '2026-06-13T13:10:00Z', actions: saturday },
    { begins: '2026-06-14T07:30:00Z', actions: sunday },
  ],
};
