import type { Action } from '../../src/core/session/action.ts';
import { forgeLine } from '../../src/core/session/record/chain.ts';
import type { Event, UnknownEvent } from '../../src/core/session/event.ts';
import type { Header } from '../../src/core/session/header/header.ts';
import { sha256 } from '../../src/store/recover.ts';
import { readSession } from '../../src/store/recover.ts';
import { after, headerFor, stampAt } from './story.ts';

/** A walk through the small tree as its file would hold it: one line a member, newline included. */
export function sessionLines(
  actions: readonly Action[] = aWalk,
  header: Header = headerFor(),
): readonly string[] {
  return chained([header, ...after(actions, header).events]);
}

/** Lines of any values, each chained to the one before. */
export function chained(values: readonly object[]): readonly string[] {
  let link = '';
  return values.map((value) => {
    const forged = forgeLine(value, link, sha256);
    link = forged.link;
    return forged.line;
  });
}

/** From the complaint to a repair, with a note of more than one byte a letter. */
export const aWalk: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'note', text: 'Wedge bulb, 5 W – \u00fcber 1 \u03a9 cold' },
  { do: 'find', check: 'look', result: 'whole' },
  { do: 'find', check: 'volts', reading: '0.2' },
  { do: 'condemn', cause: 'wire' },
];

export const note = (n: number, text = `note ${n}`): Event => ({
  n,
  ...stampAt(n),
  kind: 'noted',
  text,
});

/** What a session file tells, short enough for one line of an expectation. */
export function readBack(bytes: Uint8Array | string) {
  const read = readSession(typeof bytes === 'string' ? Buffer.from(bytes) : bytes, 'job.jsonl');
  if (read.kind === 'bad') return { problems: read.problems.map(({ code }) => code) };
  const { events, damage, openEnd } = read.value;
  return {
    events: events.map(({ n }) => n),
    damage: damage.map(({ line, kind }) => `line ${line} ${kind}`),
    openEnd,
  };
}

/** The events of a session file that must be readable. */
export function eventsOf(bytes: Uint8Array | string): readonly (Event | UnknownEvent)[] {
  const read = readSession(typeof bytes === 'string' ? Buffer.from(bytes) : bytes, 'job.jsonl');
  return read.kind === 'good' ? read.value.events : [];
}
