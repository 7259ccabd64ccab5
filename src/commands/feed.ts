import { networkOf } from '../core/feed/circuit.ts';
import { netlistOf } from '../core/feed/netlist.ts';
import { spanId, spanOhms, type Change, type Setting } from '../core/feed/path.ts';
import { solveFeed, type FeedState } from '../core/feed/settle.ts';
import { waysOf, type Way } from '../core/feed/fault.ts';
import { bad, good, type Parsed } from '../core/problem.ts';
import { showReading } from '../core/trade/units/units.ts';
import type { Feed } from '../core/tree/feed-model.ts';
import type { Tree } from '../core/tree/model.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { openLibrary, treeNamed } from './library.ts';
import { readOptions, type Given } from './options.ts';

const use = 'droplight feed TREE [--with CAUSE[=OHMS]] [--load NAME]... [--json | --netlist]';

/** `droplight feed TREE`: volts and amps at every station and span, sound or with a fault in it. */
export async function feed(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, { with: 'text', load: 'texts', json: 'flag', netlist: 'flag' });
  if (given.kind === 'bad') return given;
  const asked = ask(io, given.value);
  if (asked.kind === 'bad') return asked;
  const { path, setting, changes, title } = asked.value;
  const solved = solveFeed(path, setting, changes);
  if (solved.kind === 'bad') return solved;
  if (given.value.flag('netlist')) return netlist(io, asked.value, solved.value);
  if (given.value.flag('json')) printJson(io, feedJson(title, path, solved.value));
  else io.out(`${feedLines(title, path, solved.value).join('\n')}\n`);
  return done;
}

type Asked = {
  readonly title: string;
  readonly path: Feed;
  readonly setting: Setting;
  readonly changes: readonly Change[];
};

function ask(io: Io, given: Given): Parsed<Asked> {
  const [id, ...more] = given.words;
  if (id === undefined || more.length > 0)
    return bad({ code: 'wrong-use', message: 'This command wants one tree.', mend: `Use: ${use}` });
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return library;
  const tree = treeNamed(id, library.value);
  if (tree.kind === 'bad') return tree;
  const path = tree.value.feed;
  if (path === undefined) {
    const others = library.value.trees.filter((one) => one.feed !== undefined).map((one) => one.id);
    return bad({
      code: 'no-feed',
      message: `The tree "${id}" has no feed path.`,
      mend: others.length > 0 ? `These have: ${others.join(', ')}.` : 'No tree here has one.',
    });
  }
  const loads = readLoads(path, given.texts('load'));
  if (loads.kind === 'bad') return loads;
  const changes = readFault(tree.value, path, given.text('with'));
  if (changes.kind === 'bad') return changes;
  const title = `${tree.value.title}${given.text('with') === undefined ? '' : `, with ${given.text('with') ?? ''}`}`;
  return good({ title, path, setting: { on: loads.value }, changes: changes.value });
}

function readLoads(path: Feed, texts: readonly string[]): Parsed<readonly string[]> {
  const known = [
    ...new Set([
      ...path.loads.flatMap((load) => [load.id, ...(load.with === undefined ? [] : [load.with])]),
      ...path.spans.flatMap((span) => (span.switch === undefined ? [] : [span.switch])),
      ...path.machines.map((machine) => machine.id),
    ]),
  ];
  const named = texts.flatMap((text) => text.split(',')).filter((name) => name !== '');
  const strange = named.find((name) => !known.includes(name));
  return strange === undefined
    ? good(named)
    : bad({
        code: 'unknown-load',
        message: `The feed path has no load or switch "${strange}".`,
        mend: `It has: ${known.join(', ')}.`,
      });
}

/** The fault of a cause: at the ohms given, else as it usually stands (the middle of its spread). */
function readFault(tree: Tree, path: Feed, text: string | undefined): Parsed<readonly Change[]> {
  if (text === undefined) return good([]);
  const [id = '', ohms] = text.split('=');
  const cause = Object.hasOwn(tree.causes, id) ? tree.causes[id] : undefined;
  const placed = Object.entries(tree.causes).filter(([, one]) => one.fault !== undefined);
  const ways = cause === undefined ? [] : waysOf(path, cause);
  if (ways.length === 0)
    return bad({
      code: 'no-fault',
      message: `"${id}" is no cause with a place on the feed path.`,
      mend: `These have one: ${placed.map(([name]) => name).join(', ')}.`,
    });
  return atOhms(ways, ohms);
}

function atOhms(ways: readonly Way[], ohms: string | undefined): Parsed<readonly Change[]> {
  const usual = ways.filter(({ change }) => change.kind !== 'open');
  const middle = (usual[Math.floor(usual.length / 2)] ?? ways[0])?.change;
  if (middle === undefined) return good([]);
  if (ohms === undefined) return good([middle]);
  if (ohms === 'open' && middle.kind !== 'battery')
    return good([{ kind: 'open', part: middle.part }]);
  const value = ohms === '' ? Number.NaN : Number(ohms);
  if (!Number.isFinite(value) || value < 0)
    return bad({
      code: 'no-number',
      message: `"${ohms}" is no number of ohms.`,
      mend: 'Give ohms, or "open".',
    });
  return good([
    middle.kind === 'battery'
      ? { ...middle, ohms: value }
      : { kind: 'ohms', part: middle.part, ohms: value },
  ]);
}

function netlist(io: Io, { path, setting, changes, title }: Asked, state: FeedState): Ended {
  const network = networkOf(path, setting, state.regime, changes);
  if (network.kind === 'bad') return network;
  const listed = netlistOf(network.value, title);
  if (listed.kind === 'bad') return listed;
  io.out(listed.value.text);
  return done;
}

function feedJson(title: string, path: Feed, state: FeedState) {
  return {
    title,
    stations: Object.fromEntries(
      Object.keys(path.stations).map((id) => [id, { volts: state.volts(id) }]),
    ),
    spans: Object.fromEntries(
      path.spans.map((span) => [
        spanId(span),
        {
          amps: state.amps(spanId(span)),
          drop: state.volts(span.from) - state.volts(span.to),
          soundOhms: spanOhms(span),
        },
      ]),
    ),
    loads: Object.fromEntries(path.loads.map(({ id }) => [id, { amps: state.amps(id) }])),
    batteryAmps: state.batteryAmps,
  };
}

function feedLines(title: string, path: Feed, state: FeedState): readonly string[] {
  return [
    title,
    'Stations, to the battery’s negative post:',
    ...Object.entries(path.stations).map(
      ([id, { name }]) => `  ${name.padEnd(42)} ${showReading(state.volts(id), 'V')}`,
    ),
    'Spans:',
    ...path.spans.map((span) => {
      const drop = state.volts(span.from) - state.volts(span.to);
      const amps = state.amps(spanId(span));
      return `  ${span.name.padEnd(42)} ${showReading(amps, 'A')}, ${showReading(drop, 'V')} lost`;
    }),
  ];
}
