import { dispatch, type Handlers } from '../dispatch.ts';
import { withBrought } from '../tree/brought.ts';
import type { Check, Repair, Tree } from '../tree/model.ts';
import type { Parsed } from '../problem.ts';
import { parseTreeValue } from '../tree/parse.ts';
import { lookAt, notThis, withLook } from '../tree/looked.ts';
import { overAfter } from '../tree/states.ts';
import { Shop } from '../tree/shop.ts';
import { asCorrected, type Entry } from './correct.ts';
import type { Event, Payload, PayloadOf, Stamp, UnknownEvent } from './event.ts';
import type { Header } from './header/header.ts';
import { dueNow } from './due.ts';
import { passedAt } from './safeguard.ts';
import {
  currentLeg,
  type Finding,
  type Guarded,
  type Leg,
  type Standpoint,
  type Story,
} from './story.ts';
import { workedMinutes } from './time.ts';
import { asWalked, treeOf } from './header/walked-tree.ts';

type Draft = { -readonly [K in keyof Standpoint]: Mutable<Standpoint[K]> };
type Mutable<T> = T extends readonly (infer One)[] ? One[] : T;

/** Which event it is that says something, and whether it was put right afterwards. */
type Mark = { readonly n: number; readonly stamp: Stamp; readonly corrected: boolean };

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
    legs: [openingLeg(header)],
    conditions: header.conditions,
    notKnown: [],
    standing: { battery: 'connected', key: 'off', engine: 'off' },
    open: [],
    partsOff: [],
    aidsOn: [],
    over: [],
    findings: [],
    skipped: [],
    unsure: [],
    begun: undefined,
    acknowledged: [],
    condemned: [],
    repairs: [],
    proofs: [],
    settled: [],
    followUps: [],
    passed: [],
    closed: undefined,
    minutes: workedMinutes(events),
  };
  for (const entry of entries) enter(draft, entry);
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

/** The kinds that the story is not made of: they are told from the record itself. */
const nothing = (): void => {};

const handlers: Handlers<Payload, 'kind', [draft: Draft, mark: Mark], void> = {
  conditions: ({ set, notKnown = [] }, draft) => {
    draft.conditions = { ...draft.conditions, ...set };
    draft.notKnown = [...draft.notKnown, ...notKnown].filter((name) => !Object.hasOwn(set, name));
  },
  standing: ({ set, despite }, draft, mark) => {
    pass(draft, { kind: 'standing', set }, despite, mark);
    draft.standing = { ...draft.standing, ...set };
  },
  access: ({ access, now }, draft) => {
    draft.open = draft.open.filter((one) => one !== access);
    if (now === 'open') draft.open.push(access);
  },
  'check-begun': ({ check, acknowledged, brought = [], despite }, draft, mark) => {
    pass(draft, { kind: 'check', check }, despite, mark);
    draft.begun = { n: mark.n, check };
    draft.over = draft.over.filter((state) => !brought.includes(state));
    acknowledge(draft, mark, `check:${check}`, acknowledged);
  },
  found: ({ kind: _, ...said }, draft, mark) => {
    draft.findings.push(finding(draft, said, mark));
    spend(draft, currentLeg(draft).tree.checks[said.check]);
    draft.skipped = draft.skipped.filter(({ check }) => check !== said.check);
    draft.unsure = draft.unsure.filter(({ check }) => check !== said.check);
  },
  unsure: ({ check }, draft, { n, stamp }) => {
    draft.unsure.push({ n, stamp, check });
    spend(draft, currentLeg(draft).tree.checks[check]);
  },
  skipped: ({ check, reason }, draft, { n, stamp }) =>
    draft.skipped.push({ n, stamp, check, reason }),
  'part-off': ({ part, where }, draft, { n }) =>
    draft.partsOff.push({ n, part, ...(where !== undefined && { where }) }),
  'part-on': ({ part }, draft) => {
    draft.partsOff = draft.partsOff.filter((off) => off.part !== part);
  },
  'aid-on': ({ aid }, draft, { n }) => draft.aidsOn.push({ n, aid }),
  'aid-off': ({ aid }, draft) => {
    draft.aidsOn = draft.aidsOn.filter((on) => on.aid !== aid);
  },
  condemned: ({ cause, found, acknowledged = [], despite }, draft, mark) => {
    const { n, stamp } = mark;
    pass(draft, { kind: 'repair', cause }, despite, mark);
    draft.condemned.push({ n, stamp, cause, ...(found !== undefined && { found }) });
    acknowledge(draft, mark, `cause:${cause}`, acknowledged);
  },
  'not-this': ({ cause, acknowledged, told }, draft, mark) => {
    lookUp(draft, cause);
    const seen = { check: lookAt(cause), result: notThis, ...(told !== undefined && { told }) };
    draft.findings.push(finding(draft, seen, mark));
    acknowledge(draft, mark, `cause:${cause}`, acknowledged);
  },
  repaired: ({ kind: _, ...said }, draft, mark) => {
    const { n, stamp } = mark;
    pass(draft, { kind: 'repair', cause: said.cause }, said.despite, mark);
    draft.repairs.push({ ...said, n, stamp, leg: draft.legs.length - 1 });
    spend(draft, currentLeg(draft).tree.causes[said.cause]?.repair);
    acknowledge(draft, mark, `cause:${said.cause}`, said.acknowledged);
  },
  proved: ({ kind: _, good, ...said }, draft, mark) => {
    const proof = { ...finding(draft, said, mark), proof: true };
    draft.findings.push(proof);
    spend(draft, currentLeg(draft).tree.checks[said.check]);
    draft.proofs.push({ ...proof, good });
  },
  leg: (said, draft, { n }) => {
    const tree = readLeg(said);
    const shop = Shop.safeParse(said.shop);
    if (tree.kind === 'bad' || !shop.success) return;
    draft.legs.push({
      tree: asWalked(tree.value, draft.header.vehicle),
      shop: shop.data,
      since: n,
      ...(said.reason !== undefined && { reason: said.reason }),
    });
    draft.over = [];
  },
  settled: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.settled.push({ ...said, n, stamp });
    if (said.as === 'new-since') bring(draft, said.later);
  },
  'follow-up': ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.followUps.push({ ...said, n, stamp }),
  closed: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.closed = { ...said, n, stamp };
  },
  described: nothing,
  reopened: (_, draft) => {
    draft.closed = undefined;
  },
  noted: nothing,
  photographed: nothing,
  timer: nothing,
  corrected: nothing,
  paused: nothing,
  resumed: nothing,
};

/** A leg's tree, read once: the event that holds it is the same object at every fold. */
const read = new WeakMap<object, Parsed<Tree>>();

function readLeg({ whole, tree }: PayloadOf<'leg'>): Parsed<Tree> {
  if (typeof whole !== 'object' || whole === null) return parseTreeValue(whole, tree);
  const known = read.get(whole) ?? parseTreeValue(whole, tree);
  read.set(whole, known);
  return known;
}

function finding(
  draft: Draft,
  said: Omit<PayloadOf<'found'>, 'kind'>,
  { n, stamp, corrected }: Mark,
): Finding {
  const needed = currentLeg(draft).tree.checks[said.check]?.['only-while'];
  return {
    ...said,
    n,
    stamp,
    corrected,
    leg: draft.legs.length - 1,
    repairs: draft.repairs.length,
    proof: false,
    ...(needed !== undefined && draft.over.includes(needed) && { unsaid: true }),
  };
}

/** A fault that came with the last repair before a finding may be a cause from here on. */
function bring(draft: Draft, later: number): void {
  const found = draft.findings.find(({ n }) => n === later);
  const leg = found && draft.legs[found.leg];
  const repaired = draft.repairs.findLast(({ n }) => n < later);
  if (found === undefined || leg === undefined || repaired === undefined) return;
  const tree = withBrought(leg.tree, { repair: found.repairs, repaired: repaired.cause, found });
  draft.legs[found.leg] = { ...leg, tree };
}

/** An open look at a cause is a check of the tree from here on. */
function lookUp(draft: Draft, cause: string): void {
  const leg = currentLeg(draft);
  draft.legs[draft.legs.length - 1] = { ...leg, tree: withLook(leg.tree, cause) };
}

/** What a step that was done leaves of the states that pass. */
function spend(draft: Draft, step: Check | Repair | undefined): void {
  if (step !== undefined) draft.over = [...overAfter(draft.over, step)];
}

/** Takes down which safeguards a step went past, as they stood before it. */
function pass(
  draft: Draft,
  step: Guarded,
  despite: PayloadOf<'repaired'>['despite'],
  { n, stamp }: Mark,
): void {
  if (despite === undefined) return;
  const holds = passedAt(draft, step, despite.checks);
  if (holds.length > 0)
    draft.passed.push({ n, stamp, leg: draft.legs.length - 1, step, holds, why: despite.why });
}

function acknowledge(draft: Draft, { n }: Mark, step: string, cautions: readonly string[]): void {
  if (cautions.length > 0) draft.acknowledged.push({ n, step, cautions });
}
