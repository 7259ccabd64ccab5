import type { ActionOf } from '../action.ts';
import { apartName, nextBag, refitOrder, type ApartThing } from '../apart/apart.ts';
import { beforeProof } from '../apart/before-proof.ts';
import type { Story } from '../story.ts';
import { accept, refuse, type Refused, type Ruling } from './ruling.ts';

/** A part comes off and gets the next bag, another one that is free, or none. */
export function partOff({ do: _, bag, ...said }: ActionOf<'part-off'>, story: Story): Ruling {
  if (said.part.trim() === '')
    return refuse('no-part', 'The part has no name.', 'Say which part is off.');
  if (bag === 'none') return accept([{ kind: 'part-off', ...said }]);
  const number = bag ?? nextBag(story);
  if (story.entries.some((one) => one.said?.kind === 'part-off' && one.said.bag === number))
    return refuse(
      'bag-used',
      `Bag ${number} was used in this job already.`,
      `The next one is ${nextBag(story)}; say none for no bag.`,
      String(number),
    );
  return accept([{ kind: 'part-off', ...said, bag: number }], [`Bag ${number}: ${said.part}.`]);
}

/** A thing by the number of the event that took it off or put it on, or by its name. */
type Meant = { readonly n?: number | undefined; readonly name?: string | undefined };

type Named = { readonly n: number; readonly name: string };

/** What is wrong with what is said to go back, by its list. */
const lists = {
  part: { code: 'part-not-off', what: 'parts that are off', none: 'No part is off.', now: 'Off' },
  aid: {
    code: 'aid-not-on',
    what: 'what was put on',
    none: 'Nothing of the kind is on.',
    now: 'On',
  },
} as const;

/** Which of the things that are off, or on for a while, is meant: two may have one name. */
function which(
  { n, name }: Meant,
  things: readonly Named[],
  list: keyof typeof lists,
): Named | Refused {
  const meant = things.filter((one) => (n === undefined ? one.name === name : one.n === n));
  const [found] = meant;
  const told = things.map((one) => `${one.name} (n ${one.n})`).join(', ');
  const said = name ?? `event ${n ?? '?'}`;
  if (meant.length > 1)
    return refuse('several-apart', `"${said}" is there more than once.`, `Give n: ${told}.`, said);
  const { code, what, none, now } = lists[list];
  return (
    found ??
    refuse(
      code,
      `"${said}" is not on the list of ${what}.`,
      things.length > 0 ? `${now} now: ${told}.` : none,
      said,
    )
  );
}

/** A part goes back on; that something else should have gone before it is told, and no more. */
export function partOn({ n, part }: ActionOf<'part-on'>, story: Story): Ruling {
  const off = story.partsOff.map((one) => ({ n: one.n, name: one.part }));
  const meant = which({ n, name: part }, off, 'part');
  if ('kind' in meant) return meant;
  return accept(
    [{ kind: 'part-on', part: meant.name, of: meant.n }],
    outOfOrder(story, ({ kind, n: at }) => kind === 'part' && at === meant.n),
  );
}

/** What was put on for a while comes off again. */
export function aidOff({ n, aid }: ActionOf<'aid-off'>, story: Story): Ruling {
  const on = story.aidsOn.map((one) => ({ n: one.n, name: one.aid }));
  const meant = which({ n, name: aid }, on, 'aid');
  return 'kind' in meant ? meant : accept([{ kind: 'aid-off', aid: meant.name, of: meant.n }]);
}

/** The proof goes on with what is not back: which things, and why in own words. */
export function leaveApart({ why }: ActionOf<'leave-apart'>, story: Story): Ruling {
  const things = beforeProof(story).map(({ n }) => n);
  if (things.length === 0)
    return refuse(
      'nothing-apart',
      'Everything is as it was before the repair.',
      'Go on with the proof.',
    );
  return why.trim() === ''
    ? refuse('no-reason', 'The proof goes on so with a reason.', 'Say why in a few words.')
    : accept([{ kind: 'left-apart', things, why }]);
}

/** One line where a thing goes back before another that goes before it: a part that came off later, an aid. */
export function outOfOrder(story: Story, is: (thing: ApartThing) => boolean): readonly string[] {
  const order = refitOrder(story);
  const before = order.slice(0, Math.max(0, order.findIndex(is)));
  const first = before.find(({ kind }) => kind === 'part' || kind === 'aid');
  if (first === undefined) return [];
  return [
    first.kind === 'aid'
      ? `Out of order: ${apartName(story, first)}; aids come off first.`
      : `Out of order: ${apartName(story, first)} came off after it, and goes back first.`,
  ];
}
