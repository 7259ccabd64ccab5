import { networkOf } from '../core/feed/circuit.ts';
import { pathsOf } from '../core/feed/fitted.ts';
import { onMeter } from '../core/feed/meter.ts';
import { netlistOf } from '../core/feed/netlist.ts';
import { switchesOf } from '../core/feed/check-feed.ts';
import { complaintLoads } from '../core/feed/located/observed.ts';
import { battery, closed, spanId, spanOhms } from '../core/feed/path.ts';
import type { Change, Setting } from '../core/feed/path.ts';
import { solveFeed, type FeedState } from '../core/feed/settle.ts';
import { waysOf } from '../core/feed/fault.ts';
import { bad, good, type Parsed } from '../core/problem.ts';
import type { Feed, Span } from '../core/tree/feed-model.ts';
import type { Tree } from '../core/tree/model.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { openTree } from './library.ts';
import { readFacts } from './open.ts';
import { readOptions, wrongUse, type Given } from './options.ts';
import { didYouMean } from '../core/trade/units/nearest.ts';
import { callOf, uses } from './uses.ts';

const use = callOf('feed');

/** `droplight feed TREE`: volts and amps at every station and span, sound or with faults in it. */
export async function feed(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.feed.options);
  if (given.kind === 'bad') return given;
  if (given.value.flag('netlist') && given.value.flag('json'))
    return wrongUse('A feed path is told as JSON or as a netlist, not as both.', use);
  const asked = ask(io, given.value);
  if (asked.kind === 'bad') return asked;
  const { path, setting, changes } = asked.value;
  const solved = solveFeed(path, setting, changes);
  if (given.value.flag('netlist')) return netlist(io, asked.value, solved);
  if (given.value.flag('json')) printJson(io, feedJson(asked.value, solved));
  else io.out(`${feedLines(asked.value, solved).join('\n')}\n`);
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
  if (id === undefined || more.length > 0) return wrongUse('This command wants one tree.', use);
  const opened = openTree(io, given, id);
  if (opened.kind === 'bad') return opened;
  const { tree, library } = opened.value;
  if (tree.feed === undefined) {
    const others = library.trees.filter((one) => one.feed !== undefined).map((one) => one.id);
    return bad({
      code: 'no-feed',
      message: `The tree "${id}" has no feed path.`,
      mend: others.length > 0 ? `These have: ${others.join(', ')}.` : 'No tree here has one.',
    });
  }
  const told = readFacts(given.text('facts') ?? '', library);
  if (told.kind === 'bad') return told;
  const path = pathsOf(tree.feed, told.value)();
  const on = readLoads(tree, path, given.texts('load'));
  if (on.kind === 'bad') return on;
  const faults = given.texts('with');
  const changes = readFaults(tree, path, faults);
  if (changes.kind === 'bad') return changes;
  const title = [tree.title, ...faults.map((fault) => `with ${fault}`)].join(', ');
  return good({ title, path, setting: { on: on.value }, changes: changes.value });
}

/** Loads and switches by name; those of the complaint where none is named, nothing for `none`. */
function readLoads(tree: Tree, path: Feed, texts: readonly string[]): Parsed<readonly string[]> {
  if (texts.length === 0) return good(complaintLoads(tree, path));
  const known = switchesOf(path);
  const named = texts.flatMap((text) => text.split(',')).filter((name) => name !== '');
  if (named.length === 1 && named[0] === 'none') return good([]);
  const strange = named.find((name) => !known.has(name));
  return strange === undefined
    ? good(named)
    : bad({
        code: 'unknown-load',
        message: `The feed path has no load or switch "${strange}".`,
        mend: `${didYouMean(strange, [...known])}It has: ${[...known].join(', ')}; "none" is nothing switched on.`,
      });
}

/** All faults together; two in one place are refused, since the second would undo the first. */
function readFaults(tree: Tree, path: Feed, texts: readonly string[]): Parsed<readonly Change[]> {
  const changes: Change[] = [];
  for (const text of texts) {
    const read = readFault(tree, path, text);
    if (read.kind === 'bad') return read;
    if (changes.some((other) => placeOf(other) === placeOf(read.value)))
      return bad({
        code: 'fault-twice',
        message: `"${text}" sits where another fault already is.`,
        mend: 'Give each place one fault: the battery, a span or a load once.',
      });
    changes.push(read.value);
  }
  return good(changes);
}

const placeOf = (change: Change): string => (change.kind === 'battery' ? battery : change.part);

/** The fault of a cause: at the ohms given, else as it usually stands (the middle of its spread). */
function readFault(tree: Tree, path: Feed, text: string): Parsed<Change> {
  const cut = text.indexOf('=');
  const [id, ohms] = cut < 0 ? [text] : [text.slice(0, cut), text.slice(cut + 1)];
  const cause = Object.hasOwn(tree.causes, id) ? tree.causes[id] : undefined;
  const ways = cause === undefined ? [] : waysOf(path, cause);
  const usual = ways.filter(({ change }) => change.kind !== 'open');
  const middle = (usual[Math.floor(usual.length / 2)] ?? ways[0])?.change;
  if (middle === undefined) {
    const placed = Object.entries(tree.causes).filter(([, one]) => one.fault !== undefined);
    return bad({
      code: 'no-fault',
      message: `"${id}" is no cause with a place on the feed path.`,
      mend: `${didYouMean(
        id,
        placed.map(([name]) => name),
      )}These have one: ${placed.map(([name]) => name).join(', ')}.`,
    });
  }
  return ohms === undefined ? good(middle) : atOhms(middle, id, ohms);
}

/** A number as it is written by hand: no sign, no other base. */
const decimal = /^(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu;
/** Ohms between which a joint, a load or a battery can be told. */
const [leastOhms, mostOhms] = [1e-6, 1e6];

function atOhms(middle: Change, id: string, text: string): Parsed<Change> {
  if (text === 'open' && middle.kind !== 'battery')
    return good({ kind: 'open', part: middle.part });
  const ohms = decimal.test(text) ? Number(text) : NaN;
  if (!(ohms >= leastOhms && ohms <= mostOhms))
    return bad({
      code: 'no-number',
      message: `"${text}" is no number of ohms that "${id}" can have.`,
      mend: `Give 0.000001 to 1000000 ohms${middle.kind === 'battery' ? '.' : ', or "open".'}`,
    });
  return good(
    middle.kind === 'battery' ? { ...middle, ohms } : { kind: 'ohms', part: middle.part, ohms },
  );
}

function netlist(io: Io, { path, setting, changes, title }: Asked, state: FeedState): Ended {
  const network = networkOf(path, setting, state.regime, changes);
  const listed = netlistOf(network, title);
  if (listed.kind === 'bad') return listed;
  io.out(listed.value.text);
  return done;
}

/** Amperes and volts below this are what the sums leave behind, not current. */
const dust = 1e-9;

const free = (value: number): number => (Math.abs(value) < dust ? 0 : value);

const dropOver = (state: FeedState, span: Span): number =>
  free(state.volts(span.from) - state.volts(span.to));

function feedJson({ title, path, setting }: Asked, state: FeedState) {
  return {
    title,
    on: setting.on,
    stations: Object.fromEntries(
      Object.keys(path.stations).map((id) => [id, { volts: free(state.volts(id)) }]),
    ),
    spans: Object.fromEntries(
      path.spans.map((span) => [
        spanId(span),
        {
          amps: free(state.amps(spanId(span))),
          drop: dropOver(state, span),
          soundOhms: spanOhms(span),
        },
      ]),
    ),
    loads: Object.fromEntries(path.loads.map(({ id }) => [id, { amps: free(state.amps(id)) }])),
    batteryAmps: free(state.batteryAmps),
  };
}

function feedLines(asked: Asked, state: FeedState): readonly string[] {
  const { title, path, setting } = asked;
  return [
    title,
    setting.on.length === 0 ? 'Nothing is switched on.' : `On: ${setting.on.join(', ')}.`,
    'Stations, to the battery’s negative post:',
    ...Object.entries(path.stations).map(
      ([id, { name }]) => `  ${name.padEnd(42)} ${onMeter(state.volts(id), 'V')}`,
    ),
    'Spans:',
    ...path.spans.map((span) => `  ${span.name.padEnd(42)} ${spanWords(asked, span, state)}`),
  ];
}

function spanWords({ setting, changes }: Asked, span: Span, state: FeedState): string {
  if (!closed(span, setting)) return 'switched off';
  if (state.regime.dropped.has(spanId(span))) return 'its relay has not pulled in';
  const drop = onMeter(dropOver(state, span), 'V');
  const open = changes.some((change) => change.kind === 'open' && change.part === spanId(span));
  const amps = free(state.amps(spanId(span)));
  if (open && amps === 0) return `open, ${drop} across it`;
  return `${onMeter(amps, 'A')}, ${drop} lost`;
}
