import { expect, test } from 'vitest';
import { netlistOf } from '../../../src/core/feed/netlist.ts';
import { current, problemCodes, resistor, source, value } from './build.ts';

test('a feed with a lamp reads as a circuit file', () => {
  const elements = [
    source('plus', '0', 12.65, 0.009),
    resistor('plus', 'lamp', 0.25),
    resistor('lamp', '0', 5),
    { ...source('gauge', '0', 5), id: 'held' },
    current('gauge', '0', 0.3),
  ];

  expect(value(netlistOf({ reference: '0', elements }, 'one lamp')).text).toBe(`one lamp
* 0 = 0
* n1 = plus
* n2 = lamp
* n3 = gauge
* R1: source plus-0
R1 n1 e1 ${1 / (1 / 0.009)}
VR1 e1 0 DC 12.65
* R2: plus-lamp
R2 n1 n2 0.25
* R3: lamp-0
R3 n2 0 5
V4 n3 0 DC 5
I5 n3 0 DC 0.3
.op
.end
`);
});

test('a name from a file cannot start a line of its own', () => {
  const sly = 'a\n.include everything';
  const { text } = value(
    netlistOf({ reference: '0', elements: [source(sly, '0', 12, 1), resistor(sly, '0', 1)] }, sly),
  );

  expect(text.split('\n').filter((line) => line.startsWith('.'))).toEqual(['.op', '.end']);
});

test('a circuit with a wrong amount has no netlist', () => {
  expect(
    problemCodes(netlistOf({ reference: '0', elements: [resistor('a', '0', -1)] }, 'x')),
  ).toEqual(['network-amount']);
});
