import { asCorrected, rootOf, type Entry } from '../correct.ts';
import type { PayloadOf } from '../event.ts';
import type { Story } from '../story.ts';
import { traits } from '../traits.ts';

/** The last thing that was written and stands, and the corrections that take it back. */
export type LastWritten = {
  /** The event of it: of a correction that says something anew, that correction. */
  readonly entry: Entry;
  readonly corrections: readonly PayloadOf<'corrected'>[];
};

/**
 * What one press of "take back" takes back: the newest act that stands, of whatever kind, together
 * with what it only implied. An answer that was put right goes back to what it was before. What was
 * taken back is not taken up again by it: pressed again, it goes on to the act before.
 */
export function lastWritten({ entries }: Pick<Story, 'entries'>): LastWritten | undefined {
  const undone = new Set(
    entries.flatMap(({ said }) => (said?.kind === 'corrected' ? (said.undoes ?? []) : [])),
  );
  for (const [index, entry] of [...entries.entries()].toReversed()) {
    if (entry.said?.kind === 'corrected') {
      const edit = undone.has(entry.event.n) ? undefined : undoEdit(entries, entry.event.n);
      if (edit !== undefined) return { entry, corrections: [edit] };
    } else if (canTakeBack(entry))
      return { entry, corrections: [entry, ...impliedBy(entries, index)].map(withdrawn) };
  }
  return undefined;
}

/** Whether an entry is something that somebody did or said, and that stands. */
export const canTakeBack = ({ said }: Entry): boolean =>
  said !== undefined && traits[said.kind].corrects !== 'never' && !isImplied(said);

const isImplied = (said: NonNullable<Entry['said']>): boolean =>
  'implied' in said && said.implied === true;

const withdrawn = ({ event }: Entry): PayloadOf<'corrected'> => ({
  kind: 'corrected',
  of: event.n,
});

/** What an act said beside itself, written just before it: the newest first. */
function impliedBy(entries: readonly Entry[], index: number): readonly Entry[] {
  const before = entries.slice(0, index).toReversed();
  const end = before.findIndex(({ said }) => said === undefined || !isImplied(said));
  return before.slice(0, end < 0 ? before.length : end);
}

/** Makes an event say again what it said before a correction; undefined where there is nothing to undo. */
function undoEdit(entries: readonly Entry[], n: number): PayloadOf<'corrected'> | undefined {
  const events = entries.map(({ event }) => event);
  const edit = events.find((event) => event.n === n);
  if (edit?.kind !== 'corrected' || edit.to === undefined || edit.undoes !== undefined)
    return undefined;
  const root = rootOf(events, edit);
  const now = entries.find(({ event }) => event.n === root);
  if (now?.said === undefined) return undefined;
  const before = asCorrected(events.filter((event) => event.n < n));
  const said = before.find(({ event }) => event.n === root)?.said;
  return said && { kind: 'corrected', of: root, to: { ...said }, undoes: n };
}
