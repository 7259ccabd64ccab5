import { at } from '../../src/core/at.ts';
import { waysOf } from '../../src/core/feed/fault.ts';
import type { Change } from '../../src/core/feed/path.ts';
import { solveFeed } from '../../src/core/feed/settle.ts';
import { inputFrom } from '../../src/core/reason/history/from-story.ts';
import type { Random } from '../../src/core/reason/plan/random.ts';
import { trusted } from '../../src/core/problem.ts';
import type { Action } from '../../src/core/session/action.ts';
import { fold } from '../../src/core/session/fold.ts';
import type { Header } from '../../src/core/session/header/header.ts';
import { newEvent } from '../../src/core/session/read-event.ts';
import { decide } from '../../src/core/session/rules/rules.ts';
import { currentLeg, type Story } from '../../src/core/session/story.ts';
import type { Check, Tree } from '../../src/core/tree/model.ts';
import { severalOf } from '../../src/core/tree/several.ts';
import { stampAt } from './story.ts';

/** A vehicle with one fault on its feed path, or one whose meter shows anything at all. */
export type Circuit = { readonly cause: string; readonly change: Change | undefined };

/** A way a cause of the feed path may stand, drawn; nothing for a cause without a place on it. */
export function circuitWith(tree: Tree, cause: string, random: Random): Circuit | undefined {
  const { feed, causes } = tree;
  const ways = feed === undefined ? [] : waysOf(feed, causes[cause] ?? {});
  if (ways.length === 0) return undefined;
  return { cause, change: at(ways, Math.floor(random() * ways.length)).change };
}

/** Walks the tree's own way on such a vehicle: the story at every step, until no check is asked. */
export function* walked(header: Header, circuit: Circuit, random: Random): Generator<Story> {
  let events: Parameters<typeof fold>[1] = [];
  let story = fold(header, events);
  for (let step = 0; step < 25; step += 1) {
    yield story;
    const { due } = story;
    if (due.kind !== 'check') return;
    const action = answer(story, due.check, circuit, random);
    const decision = decide(story, action, { tree: () => undefined });
    if (decision.kind === 'refused') return;
    const first = events.length + 1;
    const added = decision.payloads.map((payload, index) =>
      newEvent(first + index, stampAt(first + index), payload),
    );
    events = [...events, ...added];
    story = fold(header, events);
  }
}

function answer(story: Story, id: string, circuit: Circuit, random: Random): Action {
  const { tree } = currentLeg(story);
  const check = tree.checks[id];
  if (check === undefined) throw new RangeError(`no check ${id}`);
  const reading = metered(tree, check, circuit.change, random);
  const given = reading === undefined ? { result: drawn(story, id, circuit, random) } : { reading };
  return { do: 'find', check: id, acknowledged: true, ...given };
}

/** What a meter shows on the path, off by up to 0.02 V; anything plausible on a vehicle without a fault. */
function metered(
  { feed }: Tree,
  check: Check,
  change: Change | undefined,
  random: Random,
): string | undefined {
  if (feed === undefined || check.feed?.reads !== 'volts') return undefined;
  const { station, against = feed.battery.negative, load } = check.feed;
  const state = solveFeed(feed, { on: load }, change === undefined ? [] : [change]);
  const negative = state.volts(feed.battery.negative);
  const shown = (volts: number): string =>
    Math.max(0, change === undefined ? 13 * random() : volts + 0.04 * (random() - 0.5)).toFixed(2);
  return severalOf(check) === undefined
    ? shown(state.volts(station) - state.volts(against))
    : [station, against].map((one) => shown(state.volts(one) - negative)).join(' ');
}

/** A result of a check that reads no volts on the path, drawn from what the cause shows. */
function drawn(story: Story, id: string, { cause }: Circuit, random: Random): string {
  const { model } = trusted(inputFrom(story));
  const check = model.checks.find((one) => one.id === id);
  const place = model.causes.findIndex((one) => one.id === cause);
  if (check === undefined) throw new RangeError(`no check ${id}`);
  const totals = check.links[place] ?? check.background;
  const draw = random();
  const shown = totals.findIndex((total) => draw < total);
  return at(currentLeg(story).tree.checks[id]?.results ?? [], shown).id;
}
