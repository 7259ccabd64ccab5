import type { PayloadOf } from '../event.ts';
import { holdsBefore } from '../safeguard.ts';
import { currentLeg, fromLegs, lastFinding, type Story } from '../story.ts';

/** One line of what is taken down before anything is disturbed. */
export type BaselineLine = {
  /** A check of the tree, made as any check; or a thing of the shop, told in own words. */
  readonly kind: 'check' | 'item';
  readonly id: string;
  readonly say: string;
  readonly state: 'open' | 'taken' | 'passed over';
  /** What was seen, or why it was passed over; empty where nothing was written. */
  readonly words: string;
  /** The check that a safeguard of the tree wants before it. */
  readonly first?: string;
};

/** The baseline of the tree that is walked, then the shop's, without what the complaint does not allow. */
export const baselineLines = (story: Story): readonly BaselineLine[] => [
  ...currentLeg(story).tree.baseline.flatMap((id) => checkLine(story, id)),
  ...itemsFor(story).map((id) => itemLine(story, id)),
];

function checkLine(story: Story, id: string): readonly BaselineLine[] {
  const check = currentLeg(story).tree.checks[id];
  if (check === undefined) return [];
  const found = lastFinding(story, id);
  const skipped = story.skipped.find((one) => one.check === id);
  const line = { kind: 'check', id, say: check.ask } as const;
  if (found !== undefined) {
    const label = check.results.find((one) => one.id === found.result)?.label ?? found.result;
    return [{ ...line, state: 'taken', words: label }];
  }
  if (skipped !== undefined) return [{ ...line, state: 'passed over', words: skipped.reason }];
  return [{ ...line, state: 'open', words: '' }];
}

/** The shop's things that the complaint allows, in its order. */
function itemsFor(story: Story): readonly string[] {
  const { shop, tree } = currentLeg(story);
  return Object.entries(shop.baseline).flatMap(([id, item]) =>
    item['not-for'].includes(tree.id) ? [] : [id],
  );
}

function itemLine(story: Story, id: string): BaselineLine {
  const { shop, tree } = currentLeg(story);
  const item = shop.baseline[id];
  if (item === undefined) throw new Error('a thing of the baseline stands in its shop');
  const line = { kind: 'item', id, say: item.say } as const;
  const said = story.baseline.find((one) => one.item === id);
  if (said?.reason !== undefined) return { ...line, state: 'passed over', words: said.reason };
  if (said !== undefined) return { ...line, state: 'taken', words: said.seen ?? '' };
  const [hold] =
    item.standing === undefined ? [] : holdsBefore(story, { kind: 'standing', set: item.standing });
  const first = hold && (tree.checks[hold.check]?.ask ?? hold.check);
  return { ...line, state: 'open', words: '', ...(first !== undefined && { first }) };
}

/** `Odometer and fuel level: 61,200 miles, a quarter`; `Gauges: passed over, no key on`. */
export function baselineWords(
  story: Pick<Story, 'legs'>,
  { item, seen = '', reason }: Pick<PayloadOf<'baseline'>, 'item' | 'seen' | 'reason'>,
): string {
  const say = fromLegs(story, ({ shop }) => shop.baseline[item]?.say) ?? item;
  if (reason !== undefined) return `${say}: passed over, ${reason}`;
  return seen.trim() === '' ? `${say}: done` : `${say}: ${seen.trim()}`;
}
