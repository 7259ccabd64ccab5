import { expect, test } from 'vitest';
import { feed } from '../../src/commands/feed.ts';
import { loadLibrary } from '../../src/store/library.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
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

test('two faults count together, in either order', async () => {
  const both = ['--with', 'bulkhead=0.5', '--with', 'ammeter=0.3'];
  const tell = async (...faults: readonly string[]) => {
    const { out } = await runCommand(feed, ['no-supply', ...faults, '--json']);
    return JSON.parse(out) as Told & { readonly spans: Record<string, { drop: number }> };
  };

  const one = await tell(...both.slice(0, 2));
  const two = await tell(...both);
  const turned = await tell(...both.slice(2), ...both.slice(0, 2));

  expect(turned.stations).toEqual(two.stations);
  expect(two.spans['bulk-e:bulk-d']?.drop).toBeGreaterThan(2);
  expect(two.spans['am-b:am-a']?.drop).toBeGreaterThan(1);
  expect(two.stations['lsw-b']?.volts).toBeLessThan(one.stations['lsw-b']?.volts ?? NaN);
});

test('the loads of the complaint are on unless others, or none, are named', async () => {
  const lit = await runCommand(feed, ['no-supply']);
  const dark = await runCommand(feed, ['no-supply', '--load', 'none']);

  expect(lit.out).toContain('\nOn: headlamps, parking.\n');
  expect(dark.out).toContain('\nNothing is switched on.\n');
});

test('a switch that is off and a joint that is open say so, and no dust is printed', async () => {
  const { out } = await runCommand(feed, ['no-supply', '--with', 'ammeter=open']);

  expect(out).toMatch(/ignition switch, run contact +switched off/);
  expect(out).toMatch(/ammeter, stud to stud +open, 12\.6\d* V across it/);
  expect(out).not.toMatch(/0\.000000/);
  expect(out).not.toMatch(/-0 /);
});

const { trees: shipped } = loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' });
const feeds = shipped.filter((tree) => tree.feed !== undefined).map(({ id }) => id);

/** Faults that a path is told with here: none, and each of its causes. */
const faultsOn = (id: string): readonly (readonly string[])[] => [
  [],
  ['--load', 'none'],
  ...Object.entries(shipped.find((tree) => tree.id === id)?.causes ?? {}).flatMap(([cause, one]) =>
    one.fault === undefined ? [] : [['--with', cause]],
  ),
];

test.each(feeds)('%s: no volt or ampere is told finer than a meter shows it', async (id) => {
  const texts = await Promise.all(
    faultsOn(id).map(async (fault) => (await runCommand(feed, [id, ...fault])).out),
  );
  const numbers = texts.flatMap((text) => [...text.matchAll(/(\S+) (?:V|A)\b/g)].map(([, n]) => n));

  expect(numbers.length).toBeGreaterThan(100);
  expect(numbers.filter((number) => !/^-?\d+(?:\.\d{1,3})?$/.test(number ?? ''))).toEqual([]);
  expect(numbers).not.toContain('-0');
});

test('a charging machine whose field winding is open gives nothing', async () => {
  const { out } = await runCommand(feed, ['charging', '--with', 'rotor-open', '--json']);
  const { stations, batteryAmps } = JSON.parse(out) as Told;

  expect(batteryAmps).toBeGreaterThan(1);
  expect(stations['post-pos']?.volts).toBeLessThan(12.65);
  expect(stations['alt-b']?.volts).toBeLessThan(12.65);
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
  ['no ohms at all', ['no-supply', '--with', 'bulkhead=0'], /"0" is no .*"bulkhead".*or "open"/],
  ['ohms below none', ['no-supply', '--with', 'bulkhead=-1'], /"-1" is no .*or "open"/],
  ['a number to another base', ['no-supply', '--with', 'bulkhead=0x10'], /"0x10" is no number/],
  ['open and a number', ['no-supply', '--with', 'bulkhead=open=3'], /"open=3" is no number/],
  ['ohms that nothing has', ['no-supply', '--with', 'bulkhead=1e-300'], /"1e-300" is no number/],
  [
    'a battery cannot be open',
    ['no-supply', '--with', 'battery-flat=open'],
    /"open" is no .*"battery-flat" can have\. Give 0\.000001 to 1000000 ohms\.$/m,
  ],
  [
    'two faults in one place',
    ['no-supply', '--with', 'battery-flat', '--with', 'battery-failed'],
    /"battery-failed" sits where another fault already is/,
  ],
  ['no tree', [], /wants one tree.*Use: droplight feed/],
])('%s is one clear line and exit 2', async (_, args, line) => {
  const { code, err } = await runCommand(feed, args);

  expect(code).toBe(2);
  expect(err).toMatch(line);
});
