import { at } from '../at.ts';
import type { Feed } from '../tree/feed-model.ts';
import { makeCircuit } from './circuit.ts';
import type { Circuit } from './circuit.ts';
import { lampsOf, lightLamps } from './lamp.ts';
import { battery, batteryOf, spanId } from './path.ts';
import type { Change, Regime, Setting } from './path.ts';
import { keyOf, settle } from './settle.ts';
import { exchange, whole } from './view.ts';
import type { View } from './view.ts';

/** Keeps what was worked out for a feed path as long as that feed path itself is kept. */
export type Memo = <T>(feed: Feed, key: string, make: () => T) => T;

export function makeMemo(): Memo {
  const kept = new WeakMap<Feed, Map<string, unknown>>();
  return <T>(feed: Feed, key: string, make: () => T): T => {
    const shelf = kept.get(feed) ?? new Map<string, unknown>();
    kept.set(feed, shelf);
    // A key names the kind of thing as well as the thing: what is found was made by the same call.
    if (!shelf.has(key)) shelf.set(key, make());
    return shelf.get(key) as T;
  };
}

export const settingKey = ({ on, battery: place = 'in', filaments }: Setting): string =>
  `${[...new Set(on)].toSorted().join(',')}|${place}|${filaments ?? ''}`;

export type Question = {
  readonly feed: Feed;
  readonly setting: Setting;
  readonly memo: Memo;
};

/** The circuit with one change in it, lamps and machines settled. */
export function viewOf(question: Question, change: Change | undefined): View {
  const { feed, setting } = question;
  const lamps = lampsOf(feed, setting, change === undefined ? [] : [change]);
  return settle(question, (regime) => lightLamps(viewIn(question, regime, change), lamps)).view;
}

function viewIn(question: Question, regime: Regime, change: Change | undefined): View {
  const ohms = change === undefined ? undefined : ohmsLeft(question.feed, change);
  const cut = change?.kind === 'open' && ohms === undefined ? change : undefined;
  const view = whole(circuitIn(question, regime, cut));
  if (change === undefined || change === cut) return view;
  if (change.kind === 'battery') return withBattery(question, regime, view, change);
  return ohms === undefined ? view : exchange(view, change.part, { siemens: 1 / ohms });
}

/** Ohms that a change leaves in a part: none for the battery, nor where an open span has no leak. */
function ohmsLeft(feed: Feed, change: Change): number | undefined {
  if (change.kind === 'ohms') return change.ohms;
  if (change.kind === 'battery') return undefined;
  return feed.spans.find((span) => spanId(span) === change.part)?.leak;
}

function circuitIn(
  { feed, setting, memo }: Question,
  regime: Regime,
  open?: Change & { kind: 'open' },
): Circuit {
  const key = `circuit|${settingKey(setting)}|${keyOf(regime)}|${open?.part ?? ''}`;
  return memo(feed, key, () =>
    makeCircuit(feed, setting, regime, open === undefined ? [] : [open]),
  );
}

function withBattery(
  { feed }: Question,
  regime: Regime,
  before: View,
  { volts, ohms }: Change & { kind: 'battery' },
): View {
  const view = exchange(before, battery, { siemens: 1 / ohms });
  const fallen = volts - batteryOf(feed, regime).volts;
  return {
    ...view,
    volts: view.volts.map((found, node) => found + fallen * at(view.perVolt, node)),
  };
}
