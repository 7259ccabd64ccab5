import { expect, test } from 'vitest';
import { feed } from '../../src/commands/feed.ts';
import { runCommand } from '../helpers/commands.ts';

type Told = { readonly stations: Record<string, { volts: number }>; readonly batteryAmps: number };

test('an open ammeter leaves everything behind it dead and everything before it live', async () => {
  const { out, code } = await runCommand(feed, [
    'no-supply',
    '--with',
    'ammeter=open',
    '--load',
    'headlamps',
    '--load',
    'parking',
    '--json',
  ]);
  const { stations } = JSON.parse(out) as Told;

  expect(code).toBe(0);
  expect(stations['am-b']?.volts).toBeGreaterThan(12.6);
  expect(stations['am-a']?.volts).toBeLessThan(0.01);
});

// Worked beforehand with another solver, to two hundredths of a volt: headlamps low and parking lamps on.
test('a sound vehicle with its lamps on shows the worked volts', async () => {
  const { out } = await runCommand(feed, [
    'no-supply',
    '--load',
    'headlamps',
    '--load',
    'parking',
    '--json',
  ]);
  const { stations } = JSON.parse(out) as Told;

  expect(stations['stud']?.volts).toBeCloseTo(12.54, 1);
  expect(stations['splice']?.volts).toBeCloseTo(12.32, 1);
});

test('the netlist is one that any circuit simulator reads', async () => {
  const { out } = await runCommand(feed, ['dim-lamps', '--load', 'headlamps', '--netlist']);

  expect(out).toMatch(/^Lamps dim or flicker\n/);
  expect(out).toMatch(/\n\.op\n\.end\n$/);
});

test.each<[title: string, args: readonly string[], line: RegExp]>([
  ['a tree without a feed', ['rough-idle'], /no feed path.*no-supply/],
  ['an unknown load', ['no-supply', '--load', 'toaster'], /no load or switch "toaster".*headlamps/],
  [
    'a cause without a place',
    ['no-supply', '--with', 'isolator'],
    /no cause with a place.*ammeter/,
  ],
  ['ohms that are none', ['no-supply', '--with', 'ammeter=many'], /"many" is no number of ohms/],
  ['no tree', [], /wants one tree.*Use: droplight feed/],
])('%s is one clear line and exit 2', async (_, args, line) => {
  const { code, err } = await runCommand(feed, args);

  expect(code).toBe(2);
  expect(err).toMatch(line);
});
