import { sum } from '../../sum.ts';
import { unlisted } from '../model.ts';
import type { Branch, Branches } from './branches-model.ts';
import { halve, type Halves } from './halving.ts';
import { mapTexts, narrowed } from './narrowed.ts';
import { alternativesOf } from './varying.ts';
import type { Written, WrittenCheck, WrittenResult } from './written.ts';

/** The place behind the last branch, where the fault is on none of them: no id that an author can give. */
const none = '(none)';

/** Of a hundred probes, how many show the fault where it is not, unless the tree says: common practice. */
const usuallyWrong = 2;

/** Of a hundred probes that part the branch with the fault, how many show it. */
const usuallyRight = 97;

type Checks = Readonly<Record<string, WrittenCheck>>;

/** What has been shown on the way to a place. */
type Path = Readonly<Record<string, readonly string[]>>;

/**
 * The file's checks and those that its branches stand for: which branches to part together, each with
 * the way on, and the look at the one that was found. The first carries the block's own id. The same
 * file always gives the same checks, whatever is known of the vehicle, so that findings keep their meaning.
 */
export function withBranches(written: Written): Checks {
  const { checks, branches } = written;
  if (branches === undefined) return checks;
  const made = Object.entries(branches).map(([id, block]) => checksOf(id, block, written));
  return Object.assign({}, checks, ...made);
}

/** The ids of the checks that a block stands for. */
export const madeOf = (id: string, block: Branches, written: Written): readonly string[] =>
  Object.keys(checksOf(id, block, written));

const checksOf = (id: string, block: Branches, written: Written): Checks =>
  new Expansion(id, block).checks(halvesOf(block, oddsIn(written)));

/** The odds of a cause by its id, on a vehicle that nobody knows. */
const oddsIn =
  ({ causes, unlisted: odds }: Written) =>
  (cause: string): number =>
    cause === unlisted ? odds : Number(alternativesOf(causes[cause]?.odds ?? 0).at(-1)?.is ?? 0);

/** The block that a check was made from, where it was: for whoever tells of its place in the file. */
export function blockOf(written: Written | undefined, check: string): string | undefined {
  if (written?.branches === undefined || Object.hasOwn(written.checks, check)) return undefined;
  return Object.keys(written.branches).find((id) => check === id || check.startsWith(`${id}-`));
}

/** Which branches to part together, by how often it is each and by the minutes they take. */
function halvesOf({ of, probe, none: last }: Branches, oddsOf: (cause: string) => number): Halves {
  const leaves = Object.entries(of).map(([id, { hangs, minutes }]) => ({
    id,
    minutes,
    weight: sum(Object.entries(hangs).map(([cause, share]) => (oddsOf(cause) * share) / 100)),
  }));
  const all = sum(leaves.map(({ weight }) => weight));
  const weight =
    last.share === undefined
      ? offThese(Object.values(of), oddsOf)
      : (all * last.share) / (100 - last.share);
  return halve([...leaves, { id: none, minutes: 0, weight }], probe.minutes, none);
}

/** How often it is on none of the branches, by what of it hangs on them. */
function offThese(branches: readonly Branch[], oddsOf: (cause: string) => number): number {
  const hanging = [...new Set(branches.flatMap(({ hangs }) => Object.keys(hangs)))];
  const off = hanging.map((cause) => oddsOf(cause) * (1 - shareOn(branches, cause) / 100));
  return sum(off) + oddsOf(unlisted);
}

/** Of a hundred vehicles with a cause, on how many it is on one of these branches. */
const shareOn = (branches: readonly Branch[], cause: string): number =>
  sum(branches.map(({ hangs }) => (Object.hasOwn(hangs, cause) ? (hangs[cause] ?? 0) : 0)));

/** The checks that one block stands for. */
class Expansion {
  readonly #id: string;
  readonly #block: Branches;

  constructor(id: string, block: Branches) {
    this.#id = id;
    this.#block = block;
  }

  checks(halves: Halves): Checks {
    return Object.fromEntries(this.#from(halves, {}));
  }

  #from(halves: Halves, path: Path): readonly (readonly [string, WrittenCheck])[] {
    if (halves.kind === 'one') return this.#lookAt(halves.leaf, path);
    const id = this.#probeId(halves, path);
    return [
      [id, this.#probe(halves, path)],
      ...this.#from(halves.here, { ...path, [id]: ['here'] }),
      ...this.#from(halves.elsewhere, { ...path, [id]: ['elsewhere'] }),
    ];
  }

  #probeId({ parted }: Extract<Halves, { kind: 'probe' }>, path: Path): string {
    const ends = [...new Set([parted[0], parted.at(-1)])];
    return Object.keys(path).length === 0 ? this.#id : [this.#id, ...ends].join('-');
  }

  #probe(halves: Extract<Halves, { kind: 'probe' }>, path: Path): WrittenCheck {
    const { here, elsewhere, sound = usuallyWrong, after = {}, ...probe } = this.#block.probe;
    const parted = halves.parted.map((id) => this.#branch(id));
    const these = listed(parted.map(({ name }) => name));
    const row = rowWords(parted);
    const fill = (text: string): string =>
      text.replaceAll('{these}', these).replaceAll('{row}', row);
    return {
      ...mapTexts(probe, fill),
      minutes: probe.minutes + sum(parted.map(({ minutes }) => minutes)),
      after: { ...after, ...mutable(path) },
      results: [
        {
          id: 'elsewhere',
          ...mapTexts(elsewhere, fill),
          ...this.#leads(halves.elsewhere, path, halves),
        },
        { id: 'here', ...mapTexts(here, fill), ...this.#leads(halves.here, path, halves) },
      ],
      sound: { here: sound },
      'shows-with': this.#rows(halves),
      points: {},
    };
  }

  /** Of the vehicles on which it is among the open branches, how many have it on those that are parted. */
  #rows({ among, parted }: Extract<Halves, { kind: 'probe' }>): WrittenCheck['shows-with'] {
    const open = among.filter((id) => id !== none).map((id) => this.#branch(id));
    const off = parted.map((id) => this.#branch(id));
    const causes = [...new Set(off.flatMap(({ hangs }) => Object.keys(hangs)))];
    // What is on none of them is among the open ones for as long as "none" is.
    const withNone = among.includes(none);
    return Object.fromEntries(
      causes.flatMap((cause) => {
        const all = withNone
          ? 100 -
            shareOn(
              this.#all().filter((one) => !open.includes(one)),
              cause,
            )
          : shareOn(open, cause);
        const share = all > 0 ? shareOn(off, cause) / all : 0;
        return share > 0 ? [[cause, { here: Number((usuallyRight * share).toPrecision(6)) }]] : [];
      }),
    );
  }

  /** Where a side leads: to its next probe, to what the branch says, or to the look at it. */
  #leads(side: Halves, path: Path, from: Extract<Halves, { kind: 'probe' }>) {
    if (side.kind === 'probe')
      return { next: this.#probeId(side, { ...path, [this.#probeId(from, path)]: [] }) };
    if (side.leaf === none) return led(this.#block.none.next, this.#block.none.reason);
    const { next, reason } = this.#branch(side.leaf);
    return led(next ?? this.#lookId(side.leaf), reason);
  }

  #lookAt(leaf: string, path: Path): readonly (readonly [string, WrittenCheck])[] {
    const { look } = this.#block;
    if (look === undefined || leaf === none || this.#branch(leaf).next !== undefined) return [];
    const { name, hangs } = this.#branch(leaf);
    const isOn = (cause: string): boolean => cause === unlisted || Object.hasOwn(hangs, cause);
    const made = narrowed(
      mapTexts(look, (text) => text.replaceAll('{branch}', name)),
      isOn,
    );
    return [[this.#lookId(leaf), { ...made, after: { ...look.after, ...mutable(path) } }]];
  }

  readonly #lookId = (branch: string): string => `${this.#id}-at-${branch}`;
  readonly #all = (): readonly Branch[] => Object.values(this.#block.of);

  #branch(id: string): Branch {
    const branch = this.#block.of[id];
    if (branch === undefined) throw new RangeError(`the block ${this.#id} has no branch ${id}`);
    return branch;
  }
}

const led = (next: WrittenResult['next'], reason: string | undefined) => ({
  next,
  ...(reason !== undefined && { reason }),
});

const mutable = (path: Path): Record<string, string[]> =>
  Object.fromEntries(Object.entries(path).map(([check, results]) => [check, [...results]]));

const shortOf = ({ name, short }: Branch): string => short ?? name.replace(/^the /, '');

/** Neighbors in a row so short that a list of probes tells them apart: "radio to heater (4)". */
function rowWords(parted: readonly Branch[]): string {
  const [first, ...rest] = parted.map(shortOf);
  if (rest.length < 2) return [first, ...rest].join(' and ');
  return `${first} to ${rest.at(-1)} (${parted.length})`;
}

/** Names in a sentence: "the radio fuse, the horn fuse and the lid fuse". */
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
