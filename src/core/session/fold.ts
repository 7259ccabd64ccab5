import { dispatch, type Handlers } from '../dispatch.ts';
import { asCorrected, type Entry } from './correct.ts';
import { dueNow } from './due.ts';
import type { Event, Payload, UnknownEvent } from './event.ts';
import { courseFolding } from './folding/course.ts';
import type { Draft, Mark } from './folding/draft.ts';
import { ownFolding } from './folding/own.ts';
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
};

/** A session as it stands in its file: what it began with, and what was written since. */
export type Recorded = {
  readonly header: Header;
  readonly events: readonly (Event | UnknownEvent)[];
};

/** Makes the story of a session from its header and its events; corrections are applied first. */
export function fold(header: Header, events: readonly (Event | UnknownEvent)[]): Story {
  const entries = asCorrected(events);
  const draft: Draft = {
    header,
    entries: [...entries],
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
    followUps: [],
    photos: [],
    passed: [],
    closed: undefined,
    time: noTime,
    minutes: 0,
  };
  for (const [index, entry] of entries.entries()) {
    draft.time = timeAfter(draft.time, entries[index - 1]?.event, entry.event);
    enter(draft, entry);
  }
  draft.minutes = draft.time.worked / 60;
  return { ...draft, due: dueNow(draft) };
}

function openingLeg(header: Header): Leg {
  const tree = header.trees[header.tree];
  if (tree === undefined) throw new Error('the header names a tree it does not hold');
  return { tree: asWalked(treeOf(tree), header.vehicle), shop: header.shop, since: 0 };
}

function enter(draft: Draft, { event, said, correctedBy }: Entry): void {
  if (said === undefined || event.kind === 'unknown') return;
  const { n, at, run, mono, up } = event;
  const mark = { n, stamp: { at, run, mono, up }, corrected: correctedBy.length > 0 };
  dispatch(handlers, 'kind', said, draft, mark);
}
