import { dispatch, type Handlers } from '../dispatch.ts';
import { asCorrected, payloadOf, type Entry } from './correct.ts';
import { dueNow } from './due.ts';
import type { Event, Kind, Payload, UnknownEvent } from './event.ts';
import { courseFolding } from './folding/course.ts';
import type { Draft, Mark } from './folding/draft.ts';
import { ownFolding } from './folding/own.ts';
import { practiceFolding } from './folding/practice.ts';
import { remarkFolding } from './folding/remarks.ts';
import { stepFolding } from './folding/steps.ts';
import { vehicleFolding } from './folding/vehicle.ts';
import type { Header } from './header/header.ts';
import { asWalked, treeOf } from './header/walked-tree.ts';
import type { Leg, Story } from './story.ts';
import { noTime, timeAfter } from './time.ts';

const handlers: Handlers<Payload, 'kind', [draft: Draft, mark: Mark], void> = {
  ...vehicleFolding,
  ...stepFolding,
  ...ownFolding,
  ...remarkFolding,
  ...courseFolding,
  ...practiceFolding,
};

/** A session as it stands in its file: what it began with, and what was written since. */
export type Recorded = {
  readonly header: Header;
  readonly events: readonly (Event | UnknownEvent)[];
};

/** Makes the story of a session from its header and its events; corrections are applied first. */
export function fold(header: Header, events: readonly (Event | UnknownEvent)[]): Story {
  const draft = emptyDraft(header);
  for (const entry of asCorrected(events)) enter(draft, entry);
  return storyOf(draft);
}

/**
 * The story one event on: what `fold` makes of all its events and this one. Only what changes an
 * earlier event is folded anew; anything else goes on from where the story stands.
 */
export function step(story: Story, event: Event | UnknownEvent): Story {
  const last = story.entries.at(-1)?.event;
  if (changesEarlier.has(event.kind) || (last !== undefined && event.n <= last.n))
    return fold(story.header, [...story.entries.map((entry) => entry.event), event]);
  const draft = draftOf(story);
  enter(draft, { event, said: payloadOf(event), correctedBy: [] });
  return storyOf(draft);
}

/** Kinds that `asCorrected` applies to what was written before them. */
const changesEarlier: ReadonlySet<string> = new Set<Kind>(['corrected', 'settled', 'described']);

const storyOf = (draft: Draft): Story => ({ ...draft, due: dueNow(draft) });

function emptyDraft(header: Header): Draft {
  return {
    header,
    entries: [],
    facts: header.vehicle.facts,
    sheet: header.vehicle.sheet ?? {},
    workers: header.who === '' ? [] : [{ n: 0, who: header.who }],
    legs: [openingLeg(header)],
    conditions: header.conditions,
    notKnown: [],
    standing: { battery: 'connected', key: 'off', engine: 'off' },
    open: [],
    partsOff: [],
    aidsOn: [],
    leftApart: [],
    over: [],
    expected: [],
    findings: [],
    skipped: [],
    unsure: [],
    begun: undefined,
    named: [],
    acknowledged: [],
    condemned: [],
    repairs: [],
    proofs: [],
    settled: [],
    timers: [],
    bought: [],
    limit: undefined,
    baseline: [],
    followUps: [],
    photos: [],
    passed: [],
    hints: [],
    revealed: undefined,
    closed: undefined,
    time: noTime,
    minutes: 0,
  };
}

/** A draft to go on from a story: its lists are copied, so that the story stays as it was. */
function draftOf({ due: _, ...standpoint }: Story): Draft {
  const copied = Object.entries(standpoint).map(([name, value]: [string, unknown]) => [
    name,
    Array.isArray(value) ? [...value] : value,
  ]);
  return Object.fromEntries(copied) as Draft;
}

function openingLeg(header: Header): Leg {
  const tree = header.trees[header.tree];
  if (tree === undefined) throw new Error('the header names a tree it does not hold');
  return { tree: asWalked(treeOf(tree), header.vehicle), shop: header.shop, since: 0 };
}

function enter(draft: Draft, entry: Entry): void {
  const { event, said, correctedBy } = entry;
  draft.time = timeAfter(draft.time, draft.entries.at(-1)?.event, event);
  draft.minutes = draft.time.worked / 60;
  draft.entries.push(entry);
  if (said === undefined || event.kind === 'unknown') return;
  const { n, at, run, mono, up } = event;
  const mark = { n, stamp: { at, run, mono, up }, corrected: correctedBy.length > 0 };
  dispatch(handlers, 'kind', said, draft, mark);
}
