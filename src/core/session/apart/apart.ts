import type { PayloadOf } from '../event.ts';
import { accessName, fromLegs, type AidOn, type PartOff, type Story } from '../story.ts';

/** One thing that is off, open, or on for a while; `n` is the event that says so. */
export type ApartThing =
  | { readonly kind: 'access'; readonly n: number; readonly access: string }
  | ({ readonly kind: 'part' } & PartOff)
  | ({ readonly kind: 'aid' } & AidOn)
  | { readonly kind: 'battery'; readonly n: number };

type Told = Pick<Story, 'legs' | 'entries' | 'open' | 'partsOff' | 'aidsOn' | 'standing'>;

/**
 * All that is off, open or on for a while now, in the order in which it came off: foot line, board, closing
 * page, history, account and review read it here. The battery's ground lead stands last: it goes back last.
 */
export const apartNow = (story: Told): readonly ApartThing[] => [
  ...[
    ...story.open.map((access) => ({
      kind: 'access' as const,
      n: openedAt(story, access),
      access,
    })),
    ...story.partsOff.map((off) => ({ kind: 'part' as const, ...off })),
    ...story.aidsOn.map((on) => ({ kind: 'aid' as const, ...on })),
  ].toSorted((one, other) => one.n - other.n),
  ...(story.standing.battery === 'disconnected'
    ? [{ kind: 'battery' as const, n: partedAt(story) }]
    : []),
];

/** The same in the order of putting back: aids first, then the last off first on, the ground lead last of all. */
export function refitOrder(story: Told): readonly ApartThing[] {
  const things = apartNow(story);
  return [
    ...things.filter(({ kind }) => kind === 'aid').toReversed(),
    ...things.filter(({ kind }) => kind === 'part' || kind === 'access').toReversed(),
    ...things.filter(({ kind }) => kind === 'battery'),
  ];
}

type Entries = Pick<Story, 'entries'>;

const openedAt = ({ entries }: Entries, access: string): number =>
  lastEvent(entries, ({ said }) => said?.kind === 'access' && said.access === access);

const partedAt = ({ entries }: Entries): number =>
  lastEvent(entries, ({ said }) => said?.kind === 'standing' && said.set.battery !== undefined);

function lastEvent(entries: Story['entries'], is: (entry: Story['entries'][number]) => boolean) {
  const last = entries.findLast(is);
  if (last === undefined) throw new Error('what is open or parted was said to be');
  return last.event.n;
}

/** What an access opens, as a thing: `the back of the alternator`. */
export const accessThing = (story: Pick<Story, 'legs'>, id: string): string =>
  fromLegs(story, ({ shop }) => shop.accesses[id]?.told) ?? accessName(story, id);

/** A thing by its name, with its bag. */
export function apartName(story: Pick<Story, 'legs'>, thing: ApartThing): string {
  switch (thing.kind) {
    case 'access':
      return accessName(story, thing.access);
    case 'part':
      return thing.bag === undefined ? thing.part : `${thing.part} (bag ${thing.bag})`;
    case 'aid':
      return `${thing.aid} (still on)`;
    case 'battery':
      return 'battery lead';
  }
}

/** What a thing left as it is comes to, as a sentence without its stop. */
export function leftApart(story: Pick<Story, 'legs'>, thing: ApartThing): string {
  switch (thing.kind) {
    case 'access':
      return `Not closed up again: ${accessThing(story, thing.access)}`;
    case 'part':
      return `Still off: ${apartName(story, thing)}${thing.where === undefined ? '' : `, ${thing.where}`}`;
    case 'aid':
      return `Put on for a while and still on: ${thing.aid}`;
    case 'battery':
      return 'The battery is disconnected';
  }
}

/** What a photograph, a note or another remark is about that belongs to a part that is off. */
export const aboutPart = (n: number): string => `part:${n}`;

/** Photographs that were taken of a part. */
export const photosOfPart = ({ entries }: Entries, n: number): number =>
  entries.filter(({ said }) => said?.kind === 'photographed' && said.about === aboutPart(n)).length;

type Bag = Pick<PayloadOf<'part-off'>, 'bag'>;

/** The next bag that no part of this job was ever put into, one that was taken back again included. */
export const nextBag = ({ entries }: Entries): number =>
  1 +
  entries.reduce(
    (last, { event }) => Math.max(last, 'bag' in event ? ((event as Bag).bag ?? 0) : 0),
    0,
  );

/** The bags of this job, and how many of them are empty again. */
export function bagsOf({ entries, partsOff }: Pick<Story, 'entries' | 'partsOff'>) {
  const given = entries.filter(({ said }) => said?.kind === 'part-off' && said.bag !== undefined);
  const full = partsOff.filter(({ bag }) => bag !== undefined);
  return { given: given.length, empty: given.length - full.length };
}
