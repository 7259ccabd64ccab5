import { mapValues } from '../../map-values.ts';
import { isOwn, withWords } from '../../tree/own/bare.ts';
import { Written } from '../../tree/written/written.ts';
import { modelOf, type Event, type Kind } from '../../session/event.ts';
import type { Recorded } from '../../session/fold.ts';
import { changeFreeText } from '../../session/free-text.ts';
import { Header } from '../../session/header/header.ts';

type Hide = (text: string) => string;

const unnamed = 'the vehicle';
const somebody = 'the mechanic';
const somebodyElse = 'another mechanic';

/**
 * The session as a stranger may read it: the vehicle's and the mechanic's names are gone from the
 * header and from everything that was typed. Plates and places in notes cannot be known for such.
 */
export function withoutNames({ header, events }: Recorded): Recorded {
  const hide = hider([
    [header.vehicle.name, unnamed],
    [header.who, somebody],
    ...events.flatMap((event) =>
      event.kind === 'worker' ? [[event.who, somebodyElse] as const] : [],
    ),
  ]);
  const kinds = kindsOf(events);
  const vehicle = changeFreeText(Header.shape.vehicle, header.vehicle, hide) as Header['vehicle'];
  const { said } = header;
  return {
    header: {
      ...header,
      who: '',
      vehicle: { ...vehicle, name: unnamed },
      ...(said !== undefined && { said: hide(said) }),
      trees: mapValues(header.trees, (tree) => withWords(tree, hide)),
    },
    events: events.map((event) => (event.kind === 'unknown' ? event : hidden(event, kinds, hide))),
  };
}

/** What an event says, by its model; a correction by the model of what it corrects. */
function hidden(event: Event, kinds: ReadonlyMap<number, Kind>, hide: Hide): Event {
  const own = changeFreeText(modelOf(event.kind), event, hide) as Event;
  if (own.kind === 'leg') return { ...own, whole: legTree(own.whole, hide) };
  if (own.kind !== 'corrected' || own.to === undefined) return own;
  const kind = kinds.get(own.of);
  // Nobody reads a correction of what is not there; it may say anything.
  const to = kind === undefined ? {} : changeFreeText(modelOf(kind), own.to, hide);
  return { ...own, to: to as typeof own.to };
}

/** The tree of a leg: of one that was begun from words those are a person's too. */
function legTree(whole: unknown, hide: Hide): unknown {
  const tree = Written.safeParse(whole);
  return tree.success && isOwn(tree.data) ? withWords(tree.data, hide) : whole;
}

/** The kind of each event by its number; a correction of a correction has that of the first named. */
function kindsOf(events: Recorded['events']): ReadonlyMap<number, Kind> {
  const kinds = new Map<number, Kind>();
  for (const event of events) {
    const kind = event.kind === 'corrected' ? kinds.get(event.of) : event.kind;
    if (kind !== undefined && kind !== 'unknown') kinds.set(event.n, kind);
  }
  return kinds;
}

/** Replaces whole words only, in any case; names of one letter would hit too much. */
function hider(names: readonly (readonly [name: string, stand: string])[]): Hide {
  const rules = names
    .map(([name, stand]) => [name.trim(), stand] as const)
    .filter(([name]) => name.length > 1)
    .map(([name, stand]) => {
      const literal = name.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
      return [
        new RegExp(`(?<![\\p{L}\\p{N}])(?:the\\s+)?${literal}(?![\\p{L}\\p{N}])`, 'giu'),
        stand,
      ] as const;
    });
  return (text) => rules.reduce((left, [rule, stand]) => left.replace(rule, () => stand), text);
}
