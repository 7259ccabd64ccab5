import type { Fault } from './plant.ts';

/** Four fuses in a row; the small tree's burnt fuse is on one of the first two. */
export const fourFuses = {
  probe: {
    kind: 'try',
    ask: 'Out, {row}: is the short gone?',
    how: ['Out together: {these}.'],
    healthy: 'No change.',
    minutes: 2,
    told: 'the short with {these} out',
    elsewhere: { label: 'no change' },
    here: { label: 'gone', told: 'it went with {these}' },
    source: 'common practice, no source',
  },
  look: {
    kind: 'look',
    ask: 'What is on {branch}?',
    how: ['Follow {branch}.'],
    minutes: 3,
    results: [
      { id: 'fine', label: 'nothing', next: 'volts' },
      { id: 'burnt', label: 'burnt', next: 'cause:fuse' },
      { id: 'torn', label: 'torn', next: 'cause:wire' },
    ],
    sound: { burnt: 2, torn: 3 },
    'shows-with': { fuse: { burnt: 90 }, wire: { torn: 80 } },
    source: 'common practice, no source',
  },
  of: {
    one: { name: 'the first fuse', minutes: 0.25, hangs: { fuse: 40 } },
    two: { name: 'the second fuse', minutes: 0.25, hangs: { fuse: 40 } },
    three: { name: 'the third fuse', minutes: 0.25, hangs: { wire: 50 } },
    four: { name: 'the fourth fuse', minutes: 0.25, hangs: { wire: 40 }, next: 'cause:wire' },
  },
  none: { next: 'volts' },
};

/** What makes the small tree one of format 2 with that block. */
export const branched = (): readonly Fault[] => [
  ['format', 2],
  ['checks.lamp.shows-with', { fuse: { always: 'dark' }, wire: { dark: 'mostly' } }],
  ['branches', { pull: structuredClone(fourFuses) }],
];
