import type { Problem } from '../problem.ts';
import type { CheckFeed, Feed } from '../tree/feed-model.ts';
import type { PathCause } from './fault.ts';
import { spanBetween, spanId, spanOhms } from './path.ts';
import { routesOf } from './route.ts';

/** Everything that is wrong with a feed block by itself, each with its place below `feed`. */
export function checkFeed(feed: Feed): readonly Problem[] {
  return [
    ...strangers(feed),
    ...twins(feed),
    ...empty(feed),
    ...unrated(feed),
    ...stranded(feed),
    ...notThere(feed),
  ];
}

function strangers(feed: Feed): readonly Problem[] {
  const { positive, negative } = feed.battery;
  const named: readonly (readonly [path: string, station: string])[] = [
    ['battery.positive', positive],
    ['battery.negative', negative],
    ...feed.spans.flatMap(({ from, to }, at) => endsAt(`spans[${at}]`, from, to)),
    ...feed.loads.flatMap(({ from, to }, at) => endsAt(`loads[${at}]`, from, to)),
    ...feed.machines.flatMap(({ from, to }, at) => endsAt(`machines[${at}]`, from, to)),
  ];
  return named
    .filter(([, station]) => !Object.hasOwn(feed.stations, station))
    .map(([path, value]) => ({ ...unknown('station', value), path: `feed.${path}` }));
}

const endsAt = (path: string, from: string, to: string): readonly [string, string][] => [
  [`${path}.from`, from],
  [`${path}.to`, to],
];

function twins(feed: Feed): readonly Problem[] {
  const pairs = feed.spans.map(({ from, to }) => [from, to].toSorted().join(' – '));
  const ids = [...feed.loads, ...feed.machines].map(({ id }) => id);
  const repeated = (names: readonly string[]) =>
    names.filter((name, at) => names.indexOf(name) < at);
  return [
    ...repeated(pairs).map((value) => ({
      code: 'feed-twice',
      message: `Two spans join ${value}.`,
      mend: 'Make one of them, or put a station between.',
      path: 'feed.spans',
      value,
    })),
    ...repeated(ids).map((value) => ({
      code: 'feed-twice',
      message: `Two loads or machines are called “${value}”.`,
      mend: 'Give each its own id; `with` lets several go by one switch.',
      path: 'feed.loads',
      value,
    })),
  ];
}

function empty(feed: Feed): readonly Problem[] {
  return feed.spans.flatMap((span, at) =>
    spanOhms(span) > 0
      ? []
      : [
          {
            code: 'feed-no-ohms',
            message: `The span “${span.name}” has no resistance at all.`,
            mend: 'Give it a wire or a joint; even a good clamp has 0.3 milliohm.',
            path: `feed.spans[${at}]`,
            value: spanId(span),
          },
        ],
  );
}

/** Lamps told in ohms alone: nothing says at how many volts they have them. */
function unrated(feed: Feed): readonly Problem[] {
  return feed.loads.flatMap(({ id, filament, takes }, at) =>
    filament && !('at' in takes)
      ? [
          {
            code: 'feed-lamp-volts',
            message: `The lamp “${id}” is told in ohms, which a filament has at one voltage only.`,
            mend: 'Give its watts or amps, and "at" how many volts.',
            path: `feed.loads[${at}].takes`,
            value: id,
          },
        ]
      : [],
  );
}

/** Names of fields, and of what is on while the complaint shows, that the feed block lacks. */
function notThere(feed: Feed): readonly Problem[] {
  const loads = new Set(feed.loads.map(({ id }) => id));
  const known = switchesOf(feed);
  return [
    ...feed.machines.flatMap(({ field }, at) =>
      field === undefined || loads.has(field)
        ? []
        : [{ ...unknown('load', field), path: `feed.machines[${at}].field` }],
    ),
    ...feed.spans.flatMap(({ relay }, at) =>
      relay === undefined || loads.has(relay.coil)
        ? []
        : [{ ...unknown('load', relay.coil), path: `feed.spans[${at}].relay.coil` }],
    ),
    ...(feed.on ?? []).flatMap((name, at) =>
      known.has(name)
        ? []
        : [{ ...unknown('load, switch or machine', name), path: `feed.on[${at}]` }],
    ),
  ];
}

/** Every name that can be switched on: loads, what they go with, machines and switches. */
export function switchesOf(feed: Feed): ReadonlySet<string> {
  return new Set([
    ...feed.loads.flatMap((load) => [load.id, ...(load.with === undefined ? [] : [load.with])]),
    ...feed.machines.map(({ id }) => id),
    ...feed.spans.flatMap((span) => (span.switch === undefined ? [] : [span.switch])),
  ]);
}

/** Stations that no span reaches even with every switch closed. */
function stranded(feed: Feed): readonly Problem[] {
  const on = feed.spans.flatMap((span) => (span.switch === undefined ? [] : [span.switch]));
  const routes = routesOf(feed, { on });
  const byLoad = new Set(
    [...feed.loads, ...feed.machines]
      .filter(({ from, to }) => joined(from) || joined(to))
      .flatMap(({ from, to }) => [from, to]),
  );
  function joined(id: string): boolean {
    return routes.has(id) || id === feed.battery.positive || id === feed.battery.negative;
  }
  return Object.keys(feed.stations)
    .filter((id) => !joined(id) && !byLoad.has(id))
    .map((id) => ({
      code: 'feed-stranded',
      message: `No span, load or machine joins the station “${id}” to the battery.`,
      mend: 'Add the span that leads there, or take the station out.',
      path: `feed.stations.${id}`,
      value: id,
    }));
}

/** Names in a check or in causes that the feed block does not have. */
export function checkFeedUse(
  feed: Feed,
  check: CheckFeed,
  causes: Readonly<Record<string, PathCause>>,
): readonly Problem[] {
  const known = switchesOf(feed);
  const stations = [check.station, ...(check.against === undefined ? [] : [check.against])];
  return [
    ...stations
      .filter((id) => !Object.hasOwn(feed.stations, id))
      .map((id) => unknown('station', id)),
    ...check.load
      .filter((id) => !known.has(id))
      .map((id) => unknown('load, switch or machine', id)),
    ...Object.entries(causes).flatMap(([id, cause]) => causeProblems(feed, id, cause)),
  ];
}

function causeProblems(feed: Feed, id: string, { span, fault }: PathCause): readonly Problem[] {
  if (span !== undefined && spanBetween(feed, span) === undefined)
    return [{ ...unknown('span', span.join(' – ')), path: `causes.${id}.span` }];
  if (typeof fault !== 'object' || !('load' in fault)) return [];
  if (feed.loads.some((load) => load.id === fault.load)) return [];
  return [{ ...unknown('load', fault.load), path: `causes.${id}.fault.load` }];
}

export const unknown = (kind: string, value: string): Problem => ({
  code: 'feed-unknown',
  message: `The feed path has no ${kind} “${value}”.`,
  mend: 'Use a name that the feed block has, or add it there.',
  value,
});
