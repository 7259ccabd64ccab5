import type { Event, Kind, Payload, PayloadOf, UnknownEvent } from './event.ts';
import { parsePayload } from './read-event.ts';

/** One event as it stands in the file, and what counts of it now. */
export type Entry = {
  readonly event: Event | UnknownEvent;
  /** What it says after all corrections; undefined when withdrawn or of a kind not known. */
  readonly said: Payload | undefined;
  /** Numbers of the events that corrected it. */
  readonly correctedBy: readonly number[];
};

/**
 * Applies corrections without touching what was written: each event with what counts of it now.
 * A correction of a correction counts for the event first named. A finding that was said to be
 * misread is withdrawn by that, as long as that itself is not taken back.
 */
export function asCorrected(events: readonly (Event | UnknownEvent)[]): readonly Entry[] {
  const entries = new Map<number, Entry>();
  for (const event of events) {
    entries.set(event.n, { event, said: payloadOf(event), correctedBy: [] });
    if (event.kind === 'corrected') applyCorrection(entries, event.n, event);
  }
  for (const { event, said } of entries.values()) {
    if (said?.kind === 'settled') withdrawMisread(entries, event.n, said);
    if (said?.kind === 'described') describe(entries, event.n, said);
  }
  return [...entries.values()];
}

/** What was said of an event later is part of it; a correction after that holds it already. */
function describe(
  entries: Map<number, Entry>,
  by: number,
  { kind: _, of, ...more }: PayloadOf<'described'>,
): void {
  const target = entries.get(of);
  const kind = target?.said?.kind;
  if (target === undefined || of >= by || target.correctedBy.some((n) => n > by)) return;
  const added = kind && addedTo(kind, more);
  if (kind === undefined || added === undefined) return;
  const said = parsePayload(kind, { ...target.said, ...added }, target.event.at);
  if (said !== undefined) entries.set(of, { ...target, said });
}

/** What a description adds to an event of a kind; undefined where it adds nothing to such a one. */
function addedTo(
  kind: Kind,
  more: Omit<PayloadOf<'described'>, 'kind' | 'of'>,
): object | undefined {
  if (kind === 'found' || kind === 'proved') return { words: more.found };
  if (kind === 'photographed' && more.caption !== undefined) return { caption: more.caption };
  return kind === 'condemned' || kind === 'repaired' ? more : undefined;
}

function withdrawMisread(
  entries: Map<number, Entry>,
  by: number,
  { as, earlier, later }: PayloadOf<'settled'>,
): void {
  const misread = as === 'misread-then' ? earlier : as === 'misread-now' ? later : undefined;
  const target = misread === undefined || misread >= by ? undefined : entries.get(misread);
  if (target?.said?.kind !== 'found' && target?.said?.kind !== 'proved') return;
  const { n } = target.event;
  entries.set(n, { ...target, said: undefined, correctedBy: [...target.correctedBy, by] });
}

function applyCorrection(
  entries: Map<number, Entry>,
  by: number,
  correction: PayloadOf<'corrected'>,
): void {
  const target = entries.get(correction.of);
  if (target === undefined || target.event.kind === 'unknown') return;
  if (target.event.kind === 'corrected') {
    // Only what was written before can be corrected; a made-up file may say otherwise.
    if (target.event.of >= correction.of) return;
    const { kind: _, ...rest } = correction;
    applyCorrection(entries, by, { kind: 'corrected', ...rest, of: target.event.of });
    return;
  }
  const said = correction.to && parsePayload(target.event.kind, correction.to, target.event.at);
  if (correction.to !== undefined && said === undefined) return;
  // What a correction takes back of another is as if that had never been.
  const correctedBy =
    correction.undoes === undefined
      ? [...target.correctedBy, by]
      : target.correctedBy.filter((n) => n !== correction.undoes);
  entries.set(correction.of, { ...target, said, correctedBy });
}

/** The event that a correction says something of: of a correction of a correction, the first named. */
export function rootOf(
  events: readonly (Event | UnknownEvent)[],
  { of }: PayloadOf<'corrected'>,
): number {
  const target = events.find(({ n }) => n === of);
  return target?.kind === 'corrected' && target.of < of ? rootOf(events, target) : of;
}

/** What an event says, without its number and time; undefined of a kind not known. */
export function payloadOf(event: Event | UnknownEvent): Payload | undefined {
  if (event.kind === 'unknown') return undefined;
  const { n: _n, at: _at, run: _run, mono: _mono, up: _up, ...payload } = event;
  return payload as Payload;
}
