import { waysOf } from '../../feed/fault.ts';
import type { Change } from '../../feed/path.ts';
import { solveFeed } from '../../feed/settle.ts';
import { seedIn, type Secret } from '../../session/practice/secret.ts';
import type { Feed } from '../../tree/feed-model.ts';
import type { Check, Tree } from '../../tree/model.ts';
import { severalOf } from '../../tree/several.ts';
import { makeRandom, type Random } from '../plan/random.ts';

/** A number for a text, so that each text has draws of its own (FNV-1a, from memory). */
export function numberOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const character of text)
    hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  return hash;
}

/** How a cause stands on the feed path of this vehicle: the same at every check. */
function changeOf(tree: Tree, feed: Feed, cause: string, salt: string): Change | undefined {
  const ways = waysOf(feed, tree.causes[cause] ?? {});
  let draw = makeRandom((seedIn(salt, 2) ^ numberOf(cause)) >>> 0)();
  return ways.find(({ weight }) => (draw -= weight) < 0)?.change ?? ways.at(-1)?.change;
}

/** Whether a cause has its place on the feed path, so that the circuit says what it shows there. */
export const isOnPath = (tree: Tree, cause: string): boolean =>
  tree.feed !== undefined && waysOf(tree.feed, tree.causes[cause] ?? {}).length > 0;

/**
 * What a meter shows on the feed path with these causes in it, its own error drawn; two readings where
 * the check takes two. Nothing for a check that reads no volts there.
 */
export function meterReading(
  tree: Tree,
  check: Check,
  { causes, salt }: Secret,
  random: Random,
): string | undefined {
  const { feed } = tree;
  if (feed === undefined || check.feed?.reads !== 'volts' || check.reading === undefined)
    return undefined;
  const changes = causes.flatMap((cause) => changeOf(tree, feed, cause, salt) ?? []);
  const { station, against = feed.battery.negative, load } = check.feed;
  const { volts } = solveFeed(feed, { on: load }, changes);
  const error = feed.spread.meter * normal(random);
  const negative = volts(feed.battery.negative);
  const several = severalOf(check);
  if (several === undefined) return shown(volts(station) - volts(against) + error, check);
  // One meter reads both: of its error only the last place differs.
  return several.readings.length === 2
    ? [station, against].map((one) => shown(volts(one) - negative + error, check)).join('; ')
    : undefined;
}

/** Volts with the places a meter has; under a tenth there is one more. */
function shown(volts: number, { reading }: Check): string {
  const [least = -Infinity, most = Infinity] = reading?.plausible ?? [];
  const within = Math.min(most, Math.max(least, volts));
  const text = within.toFixed(Math.abs(within) < 0.1 ? 3 : 2);
  return `${Number(text) === 0 ? text.replace('-', '') : text} V`;
}

/** A draw of the standard normal by its two uniform ones (Box and Muller, from memory). */
const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
