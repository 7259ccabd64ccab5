import type { Action } from '../../core/session/action.ts';
import {
  aboutPart,
  apartName,
  apartNow,
  bagsOf,
  photosOfPart,
  refitOrder,
  type ApartThing,
} from '../../core/session/apart/apart.ts';
import { outOfOrder } from '../../core/session/rules/apart.ts';
import { accessThing } from '../../core/account/words/wording.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import { count } from '../../core/text.ts';

/** Which way round the board is read: as things came off, or as they go back. */
export type BoardOrder = 'off' | 'back';

/** One line of the board: what it is, what there is to know of it, and what puts it right. */
export type BoardLine = {
  /** `bag 7`, `part`, `open`, `aid`, `lead`. */
  readonly kind: string;
  readonly name: string;
  /** What is noted of it, a line each. */
  readonly detail: readonly string[];
  /** What `y` says of it. */
  readonly claim: string;
  readonly mend: Action;
  /** What must come before, as long as it is not done. */
  readonly first?: string;
  /** That something else goes back before it. */
  readonly outOfOrder: readonly string[];
};

/**
 * What is off the vehicle or open on it now. Where live studs lie open the ground lead comes off before
 * they are covered; it goes back on last of all.
 */
export function boardLines(story: Story, order: BoardOrder): readonly BoardLine[] {
  const things = order === 'off' ? apartNow(story) : refitOrder(story);
  const bare = story.open.some((id) => liesBare(story, id));
  return [...(bare ? [leadOff] : []), ...things.map((thing) => lineOf(story, thing))];
}

/** What a photo taken on a line of the board is about, where that is a part. */
export function partAt(story: Story, order: BoardOrder, cursor: number): string | undefined {
  const mend = boardLines(story, order)[cursor]?.mend;
  return mend?.do === 'part-on' && mend.n !== undefined ? aboutPart(mend.n) : undefined;
}

/** Some of what is apart, in the order of putting back. */
export function refitLines(story: Story, things: readonly ApartThing[]): readonly BoardLine[] {
  const some = new Set(things.map(({ n }) => n));
  return refitOrder(story)
    .filter(({ n }) => some.has(n))
    .map((thing) => lineOf(story, thing));
}

const liesBare = (story: Story, id: string): boolean =>
  story.standing.battery === 'connected' &&
  currentLeg(story).shop.accesses[id]?.standing?.battery === 'disconnected';

const leadOff: BoardLine = {
  kind: 'lead',
  name: 'Ground lead off first: live studs lie open',
  detail: [],
  claim: 'y: the ground lead is off.',
  mend: { do: 'standing', battery: 'disconnected' },
  outOfOrder: [],
};

function lineOf(story: Story, thing: ApartThing): BoardLine {
  const { n } = thing;
  const late = outOfOrder(story, (one) => one.kind === thing.kind && one.n === n);
  switch (thing.kind) {
    case 'access':
      return {
        kind: 'open',
        name: apartName(story, thing),
        detail: [],
        claim: `y: closed up again: ${accessThing(story, thing.access)}.`,
        mend: { do: 'access', close: thing.access },
        ...(liesBare(story, thing.access) && { first: leadOff.name }),
        outOfOrder: late,
      };
    case 'part':
      return partLine(story, thing, late);
    case 'aid':
      return {
        kind: 'aid',
        name: `Put on, to come off: ${thing.aid}`,
        detail: [],
        claim: 'y: it is off again.',
        mend: { do: 'aid-off', n },
        outOfOrder: [],
      };
    case 'battery':
      return {
        kind: 'lead',
        name: 'Battery disconnected: ground lead back on, last of all',
        detail: [],
        claim: 'y: the ground lead is on again.',
        mend: { do: 'standing', battery: 'connected' },
        outOfOrder: late,
      };
  }
}

type Part = Extract<ApartThing, { kind: 'part' }>;

function partLine(story: Story, thing: Part, late: readonly string[]): BoardLine {
  const { n, part, bag, where, fasteners, routing } = thing;
  const photos = photosOfPart(story, n);
  const noted = [
    ['Held by', fasteners],
    ['Hoses and wires', routing],
    ['Photographs', photos === 0 ? undefined : String(photos)],
  ].flatMap(([name, said]) => (said === undefined ? [] : [`${name ?? ''}: ${said}`]));
  return {
    kind: bag === undefined ? 'no bag' : `bag ${bag}`,
    name: where === undefined ? part : `${part}, ${where}`,
    detail:
      noted.length > 0 ? noted : ['Nothing is noted of what held it, or of its hoses and wires.'],
    claim: `y: ${part} is back on${bag === undefined ? '' : `, bag ${bag} is empty`}.`,
    mend: { do: 'part-on', n },
    outOfOrder: late,
  };
}

/** `12 bags, 3 empty`; empty where no bag was given. */
export function bagWords(story: Story): string {
  const { given, empty } = bagsOf(story);
  return given === 0 ? '' : `${count(given, 'bag')}, ${empty} empty`;
}

/** Things that the foot line has by name. */
const fewNames = 3;

/** What is apart in one line of the foot: by name, or counted where they are many. */
export function apartLine(story: Story): string {
  const things = apartNow(story);
  if (things.length <= fewNames) return things.map((thing) => apartName(story, thing)).join('; ');
  const kinds = { part: 'off', access: 'open', aid: 'on for a while' } as const;
  const counted = (['part', 'access', 'aid'] as const).flatMap((kind) => {
    const many = things.filter((one) => one.kind === kind).length;
    return many === 0 ? [] : [`${many} ${kinds[kind]}`];
  });
  const lead = things.some(({ kind }) => kind === 'battery') ? ['battery lead'] : [];
  return `${[...counted, ...lead].join(', ')} (a shows them)`;
}
