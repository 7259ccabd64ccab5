import type { Fault } from './plant.ts';

const spare = {
  kind: 'look',
  ask: 'Is the bulb whole?',
  how: ['Look.'],
  minutes: 1,
  results: [
    { id: 'yes', label: 'yes', next: 'look' },
    { id: 'no', label: 'no', next: 'cause:fuse' },
  ],
  background: [0.9, 0.1],
  points: { fuse: [0.8, 0.2] },
  source: 'common practice, no source',
};

const long = (letters: number): string => 'a'.repeat(letters);

/** What is planted in the small tree, and what the lint says to it: code and path. */
export const lintFaults: readonly (readonly [string, readonly Fault[], readonly string[]])[] = [
  ['nothing', [], []],
  [
    'a dead end',
    [['checks.look.results.0.next', undefined]],
    [
      'dead-end checks.look.results[0].next',
      'unreached-check checks.volts',
      'unreached-cause causes.wire',
    ],
  ],
  [
    'a stop without a reason',
    [['checks.volts.results.0.reason', undefined]],
    ['stop-without-reason checks.volts.results[0].reason'],
  ],
  [
    'a tree that is not in the library',
    [['checks.look.results.0.next', 'tree:no-brake']],
    [
      'unknown-tree checks.look.results[0].next',
      'unreached-check checks.volts',
      'unreached-cause causes.wire',
    ],
  ],
  ['a check nobody comes to', [['checks.bulb', spare]], ['unreached-check checks.bulb']],
  [
    'a cause nobody condemns',
    [['checks.look.results.1.next', 'volts']],
    ['unreached-cause causes.fuse'],
  ],
  ['a circle of two', [['checks.volts.results.0.next', 'look']], ['loop checks.look']],
  [
    'a circle of one',
    [
      ['checks.look.results.0.next', 'look'],
      ['start', 'volts'],
    ],
    ['loop checks.look'],
  ],
  [
    'a circle back to the complaint',
    [['checks.volts.results.0.next', 'lamp']],
    ['loop checks.lamp'],
  ],
  ['a way that leads out to a tree', [['checks.volts.results.0.next', 'tree:no-crank']], []],
  [
    'a result that a sound vehicle never shows',
    [['checks.look.background', [1, 0]]],
    ['too-sure checks.look.background[1]'],
  ],
  [
    'a cause that is never missed',
    [['checks.look.points.fuse', [0, 1]]],
    ['too-sure checks.look.points.fuse[0]'],
  ],
  ['a sureness at the floor', [['checks.look.points.fuse', [0.005, 0.995]]], []],
  [
    'a cause that looks healthier than sound',
    [['checks.look.points.fuse', [0.99, 0.01]]],
    ['healthier-than-sound checks.look.points.fuse[0]'],
  ],
  [
    'a row above the background in the middle',
    [['checks.volts.points.wire', [0.9, 0.095, 0.005]]],
    ['healthier-than-sound checks.volts.points.wire[1]'],
  ],
  [
    'a check that moves nothing',
    [['checks.look.points', {}]],
    ['moves-nothing checks.look.points'],
  ],
  [
    'a check without a source',
    [['checks.look.source', undefined]],
    ['no-source checks.look.source'],
  ],
  ['a check without a way to do it', [['checks.look.how', []]], ['words-missing checks.look.how']],
  [
    'a reading without its healthy value',
    [['checks.volts.healthy', undefined]],
    ['words-missing checks.volts.healthy'],
  ],
  [
    'a title that does not fit',
    [['checks.look.ask', long(63)]],
    ['words-too-long checks.look.ask'],
  ],
  ['a title that just fits', [['checks.look.ask', long(62)]], []],
  [
    'a label that does not fit',
    [['checks.look.results.1.label', long(43)]],
    ['words-too-long checks.look.results[1].label'],
  ],
  ['a label that just fits', [['checks.look.results.1.label', long(42)]], []],
  [
    'a cause without a place',
    [['causes.fuse.where', undefined]],
    ['words-missing causes.fuse.where'],
  ],
  [
    'a cause without a sign',
    [['causes.wire.shows', undefined]],
    ['words-missing causes.wire.shows'],
  ],
  [
    'fuel without its caution, in how',
    [['checks.volts.how', ['Catch the fuel in a can.']]],
    ['hazard-without-caution checks.volts.cautions'],
  ],
  [
    'fuel without its caution, in ask',
    [['checks.volts.ask', 'Is there gasoline?']],
    ['hazard-without-caution checks.volts.cautions'],
  ],
  [
    'a jack without its caution',
    [['causes.fuse.repair.do', ['Put axle stands under it.']]],
    ['hazard-without-caution causes.fuse.repair.cautions'],
  ],
  [
    'a fan without its caution',
    [['checks.look.how', ['Turn the fan by hand.']]],
    ['hazard-without-caution checks.look.cautions'],
  ],
  [
    'cranking without its caution',
    [['checks.lamp.how', ['Key to START.']]],
    ['hazard-without-caution checks.lamp.cautions'],
  ],
  [
    'acid without its caution',
    [['checks.look.how', ['Wipe off the acid.']]],
    ['hazard-without-caution checks.look.cautions'],
  ],
  [
    'high tension without its caution',
    [['causes.wire.repair.do', ['Pull the plug leads.']]],
    ['hazard-without-caution causes.wire.repair.cautions'],
  ],
  [
    'brake dust without its caution',
    [['causes.wire.repair.do', ['Brush the drums.']]],
    ['hazard-without-caution causes.wire.repair.cautions'],
  ],
  ['heat with its caution', [['causes.fuse.repair.do', ['Coolant off the cap.']]], []],
  [
    'one who says stand aside',
    [['checks.volts.how', ['Stand aside, it stands on its wheels.']]],
    [],
  ],
  [
    'four things at once',
    [
      ['checks.look.results.0.next', undefined],
      ['checks.look.background', [1, 0]],
      ['checks.look.how', ['Wipe off the acid.']],
      ['causes.fuse.where', undefined],
    ],
    [
      'dead-end checks.look.results[0].next',
      'unreached-check checks.volts',
      'unreached-cause causes.wire',
      'too-sure checks.look.background[1]',
      'hazard-without-caution checks.look.cautions',
      'words-missing causes.fuse.where',
    ],
  ],
];
