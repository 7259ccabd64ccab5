import type { Event, Payload, UnknownEvent } from '../../session/event.ts';
import type { Header } from '../../session/header.ts';

type Told = { readonly header: Header; readonly events: readonly (Event | UnknownEvent)[] };

const unnamed = 'the vehicle';
const somebody = 'the mechanic';

/**
 * The session as a stranger may read it: the vehicle's and the mechanic's names are gone from the
 * header and from everything that was typed. Plates and places in notes cannot be known for such.
 */
export function withoutNames({ header, events }: Told): Told {
  const hide = hider([
    [header.vehicle.name, unnamed],
    [header.who, somebody],
  ]);
  return {
    header: { ...header, who: '', vehicle: { ...header.vehicle, name: unnamed } },
    events: events.map((event) => (event.kind === 'unknown' ? event : hidden(event, hide))),
  };
}

/** Fields that hold what a person typed. */
const typed = new Set(['text', 'caption', 'did', 'cost', 'reason', 'label', 'where', 'part']);
const typedLists = new Set(['parts', 'leftOpen']);

function hidden(event: Event, hide: (text: string) => string): Event {
  if (event.kind === 'corrected' && event.to !== undefined)
    return { ...fields(event, hide), to: fields(event.to, hide) };
  return fields(event, hide);
}

function fields<T extends Event | Payload | Record<string, unknown>>(
  of: T,
  hide: (text: string) => string,
): T {
  const entries = Object.entries(of).map(([name, value]: [string, unknown]) => {
    if (typed.has(name) && typeof value === 'string') return [name, hide(value)] as const;
    if (typedLists.has(name) && Array.isArray(value))
      return [name, value.map((one: unknown) => (typeof one === 'string' ? hide(one) : one))];
    return [name, value] as const;
  });
  return Object.fromEntries(entries) as T;
}

/** Replaces whole words only, in any case; names of one letter would hit too much. */
function hider(names: readonly (readonly [name: string, stand: string])[]) {
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
  return (text: string): string =>
    rules.reduce((left, [rule, stand]) => left.replace(rule, () => stand), text);
}
