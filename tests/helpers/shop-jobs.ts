import { environmentOf } from '../../src/core/reason/plan/episode.ts';
import type { Random } from '../../src/core/reason/plan/random.ts';
import { hideVehicle, type HiddenVehicle } from '../../src/core/reason/plan/vehicle.ts';
import type { Model } from '../../src/core/reason/belief/model.ts';
import type { Action } from '../../src/core/session/action.ts';
import type { Event } from '../../src/core/session/event.ts';
import { fold, step, type Recorded } from '../../src/core/session/fold.ts';
import type { Header } from '../../src/core/session/header/header.ts';
import { newHeader } from '../../src/core/session/header/new-header.ts';
import { forgeLine } from '../../src/core/session/record/chain.ts';
import { newEvent } from '../../src/core/session/read-event.ts';
import { decide } from '../../src/core/session/rules/rules.ts';
import { currentLeg, type Story } from '../../src/core/session/story.ts';
import { asWalked } from '../../src/core/session/header/walked-tree.ts';
import { misfit } from '../../src/core/tree/fit.ts';
import type { Check, Tree } from '../../src/core/tree/model.ts';
import type { Shop } from '../../src/core/tree/shop.ts';
import { sha256 } from '../../src/store/recover.ts';

/** A vehicle at a tree of the shop, and the tree as its belief reads it for that vehicle. */
export type Bench = {
  readonly tree: Tree;
  readonly shop: Shop;
  readonly model: Model;
  readonly vehicle: { readonly name: string; readonly facts: Record<string, string> };
};

/** Every vehicle of the yard at every tree that is for it; each has its own kinds of what trees ask for. */
export function benchesOf(trees: readonly Tree[], shop: Shop): readonly Bench[] {
  return vans.flatMap((name, van) => {
    const facts = Object.fromEntries(
      Object.entries(shop.facts).map(([fact, { values }]) => {
        const kinds = Object.keys(values);
        return [fact, kinds[van % kinds.length] ?? ''];
      }),
    );
    return trees.flatMap((tree): Bench[] => {
      if (misfit(tree, facts) !== undefined) return [];
      const { input } = environmentOf(asWalked(tree, { facts }), shop.accesses);
      return [{ tree, shop, model: input.model, vehicle: { name, facts } }];
    });
  });
}

type Walk = { story: Story; readonly events: Event[]; minute: number; mended: string[] };

const people = ['JB', 'MK', 'TR', ''];
const vans = ['Orchard van', 'Mill truck', 'Ferry car', 'Quarry tractor'];
const mostSteps = 40;
/** Some jobs are left off before their end: nobody went on with them. */
const leftOff = 0.06;
/** A worker's minutes beside the plan's: mostly between half and twice. */
const pace = (random: Random): number => 2 ** (2 * random() - 1);

/** One job of the shop, as its record holds it: a vehicle drawn from the tree's odds, walked the tree's way. */
export function shopJob(
  { tree, shop, model, vehicle }: Bench,
  day: number,
  random: Random,
): Recorded {
  const opened = new Date(Date.UTC(2016, 0, 4, 9) + day * 86_400_000).toISOString();
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const at = opened.replace('Z', '+00:00');
  const about = { tree, shop, vehicle, who: pick(people), conditions: {}, units: 'us' } as const;
  const header = newHeader(about, at);
  const hidden = hideVehicle(model, random);
  const walk: Walk = { story: fold(header, []), events: [], minute: 0, mended: [] };
  for (let steps = 0; steps < mostSteps; steps += 1) {
    if (random() < leftOff) break;
    if (!onward(walk, { model, hidden, random, at })) break;
  }
  return { header, events: walk.events };
}

type Around = {
  readonly model: Model;
  readonly hidden: HiddenVehicle;
  readonly random: Random;
  readonly at: string;
};

/** Does what is due; false where the job ends. */
function onward(walk: Walk, around: Around): boolean {
  const { due } = walk.story;
  switch (due.kind) {
    case 'check':
      return check(walk, due.check, around);
    case 'named':
      return take(walk, { do: 'condemn', cause: due.cause, acknowledged: true }, 1, around);
    case 'repair':
      return repair(walk, due.cause, around);
    case 'proof':
      return prove(walk, around);
    case 'stop':
    case 'exhausted':
      return guess(walk, around);
    case 'proven':
      take(walk, { do: 'close', as: 'fixed' }, 1, around);
      return false;
    default:
      return false;
  }
}

const despite = 'the shop was full';

function check(walk: Walk, id: string, around: Around): boolean {
  const { tree } = currentLeg(walk.story);
  const minutes = (tree.checks[id]?.minutes ?? 1) * pace(around.random);
  const result = shown(walk, id, around);
  if (result === undefined) return false;
  const find: Action = { do: 'find', check: id, result, acknowledged: true };
  const reading = readingFor(tree.checks[id], result);
  return (
    (reading !== undefined &&
      take(walk, { do: 'find', check: id, reading, acknowledged: true }, minutes, around)) ||
    take(walk, find, minutes, around) ||
    take(walk, { ...find, despite }, minutes, around) ||
    take(walk, { do: 'skip', check: id, reason: 'no time' }, 1, around)
  );
}

/** A reading in the middle of the band of a result; none where several are taken or the band has no plain ends. */
function readingFor(check: Check | undefined, result: string): string | undefined {
  const { reading, readings, each, judge, results = [] } = check ?? {};
  const plain = [readings, each, judge, reading?.standard].every((one) => one === undefined);
  const band = results.find(({ id }) => id === result);
  if (reading === undefined || band === undefined || !plain) return undefined;
  const [least, most] = reading.plausible;
  const [from, below] = [band.from ?? least, band.below ?? most];
  if (typeof from !== 'number' || typeof below !== 'number') return undefined;
  return `${Math.round(50 * (from + below)) / 100} ${reading.unit}`;
}

/** What a check shows on the hidden vehicle; a tenth of the answers stray, as hands and meters do. */
function shown({ story, mended }: Walk, id: string, { model, hidden, random }: Around) {
  const index = model.checks.findIndex((one) => one.id === id);
  const results = model.checks[index]?.results ?? [];
  const causes = model.causes.flatMap((one, at) => (mended.includes(one.id) ? [at] : []));
  const true_ = results[hidden.show(index, causes)];
  const isTest = id === currentLeg(story).tree.complaint.confirm;
  return isTest || random() > 0.1 ? true_ : results[Math.floor(random() * results.length)];
}

function repair(walk: Walk, cause: string, around: Around): boolean {
  const plan = currentLeg(walk.story).tree.causes[cause]?.repair;
  const parts = plan?.part === 'none' ? [] : [plan?.parts[0] ?? 'a part'];
  const act: Action = { do: 'repair', cause, parts, acknowledged: true };
  const minutes = (plan?.minutes ?? 10) * pace(around.random);
  const done = take(walk, act, minutes, around) || take(walk, { ...act, despite }, minutes, around);
  if (done) walk.mended.push(cause);
  return done;
}

function prove(walk: Walk, around: Around): boolean {
  const { tree } = currentLeg(walk.story);
  const result = shown(walk, tree.complaint.confirm, around);
  if (result === undefined) return false;
  const act: Action = { do: 'prove', result };
  const minutes = (tree.checks[tree.complaint.confirm]?.minutes ?? 1) * pace(around.random);
  return take(walk, act, minutes, around) || take(walk, { ...act, despite }, minutes, around);
}

/** Where the tree gives out: what is truly wrong is found by looking, or the job is handed on. */
function guess(walk: Walk, around: Around): boolean {
  const left = around.hidden.causes
    .map((index) => around.model.causes[index]?.id ?? '')
    .find((id) => !walk.mended.includes(id) && id !== 'unlisted');
  if (left !== undefined && around.random() < 0.8 && repair(walk, left, around)) return true;
  take(walk, { do: 'close', as: 'handed-on' }, 1, around);
  return false;
}

/** Takes an action so many minutes on; false where the rules refuse it. */
function take(walk: Walk, action: Action, minutes: number, { at }: Around): boolean {
  const decision = decide(walk.story, action, { tree: () => undefined });
  if (decision.kind === 'refused') return false;
  walk.minute += minutes;
  const since = Math.round(walk.minute * 60);
  const when = new Date(Date.parse(at) + since * 1000).toISOString().replace('Z', '+00:00');
  for (const payload of decision.payloads) {
    const stamp = { at: when, run: 'run-1', mono: since * 1000, up: 5000 + since };
    const event = newEvent(walk.events.length + 1, stamp, payload);
    walk.events.push(event);
    walk.story = step(walk.story, event);
  }
  return true;
}

/** A record as its file holds it, under a name of its own. */
export function recordText({ header, events }: Recorded, id: string): string {
  const named: Header = { ...header, id };
  let link = '';
  const lines = [named, ...events].map((value) => {
    const forged = forgeLine(value, link, sha256);
    link = forged.link;
    return forged.line;
  });
  return lines.join('');
}
