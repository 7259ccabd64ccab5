import { madeCheck } from './made-check.ts';
import type { Quantity } from '../../trade/units/quantities.ts';
import type { Cause, Check, Result, Tree } from '../model.ts';
import { labelWith } from '../written/bands.ts';
import { plausible } from '../writing/file.ts';
import { ownResults } from './bare.ts';

/** A check as a person names it: what is looked at, and what that shows when it is good. */
export type OwnCheck = {
  readonly check: string;
  readonly does: Check['kind'];
  /** What is looked at, as a thing: "the wiper park switch". */
  readonly what: string;
  readonly good?: string | undefined;
  readonly bad?: string | undefined;
  /** The healthy band, where what is good was told as one. */
  readonly reading?: OwnBand | undefined;
  readonly cautions: readonly string[];
};

export type OwnBand = {
  readonly quantity: Quantity;
  readonly unit: string;
  /** Belongs to the band; left out: no lower end. */
  readonly from?: number | undefined;
  /** Does not belong to it; left out: no upper end. */
  readonly below?: number | undefined;
};

const asking: Readonly<Record<Check['kind'], string>> = {
  look: 'Look at',
  listen: 'Listen to',
  feel: 'Feel',
  measure: 'Measure',
  try: 'Try',
  ask: 'Ask about',
};

/** What a check in own words asks. */
export const askOf = ({ does, what }: Pick<OwnCheck, 'does' | 'what'>): string =>
  `${asking[does]} ${what}`;

/** A tree with a check that was named in own words among its checks. */
export function withNamed(tree: Tree, own: OwnCheck): Tree {
  const { check: id, does, what, good, cautions } = own;
  const check = madeCheck({
    kind: does,
    ask: askOf(own),
    told: what,
    ...(good !== undefined && { healthy: good }),
    cautions: [...cautions],
    ...(own.reading === undefined
      ? { results: judgedByHand(own, id === tree.complaint.confirm) }
      : judgedBy(own.reading)),
  });
  return { ...tree, checks: { ...tree.checks, [id]: check } };
}

/** The person says how it is: good, bad or neither; of the complaint's own test, whether it shows. */
function judgedByHand({ good, bad }: OwnCheck, isTest: boolean): Result[] {
  const words = isTest
    ? { good: 'it does not show', bad: 'it shows' }
    : { good: 'good', bad: 'bad' };
  return [
    { id: ownResults.good, label: good ?? words.good },
    ...(isTest ? [] : [{ id: ownResults.neither, label: 'neither good nor bad' }]),
    { id: ownResults.bad, label: bad ?? words.bad },
  ];
}

/** The reading says how it is: within the healthy band, under it or over it. */
function judgedBy({ quantity, unit, from, below }: OwnBand): Pick<Check, 'reading' | 'results'> {
  const limits = [from, below].filter((limit) => limit !== undefined);
  const [low, high] = plausible(quantity, limits);
  return {
    reading: { quantity, unit, plausible: [low, high] },
    results: [
      banded(ownResults.good, 'good', {
        ...(from !== undefined && { from }),
        ...(below !== undefined && { below }),
      }),
      ...(from === undefined ? [] : [banded('low', 'too low', { below: from })]),
      ...(below === undefined ? [] : [banded('high', 'too high', { from: below })]),
    ].map((band) => ({ ...band, label: labelWith(band.label, band, unit) })),
  };
}

type Ends = Pick<Result, 'from' | 'below'>;

const banded = (id: string, label: string, ends: Ends): Result => ({ id, label, ...ends });

/** A tree with a check of another tree among its checks, for what it shows and nothing it leads to. */
export function withTaken(tree: Tree, id: string, check: Check): Tree {
  return { ...tree, checks: { ...tree.checks, [id]: check } };
}

/** A check as it is taken out of its tree: without where it leads, and what it says of that tree's causes. */
export function taken(check: Check): Check {
  const { kind, ask, how, healthy, minutes, access, standing, cautions, tools, told } = check;
  const { reading, readings, each, judge, results, shut } = check;
  return {
    kind,
    ask,
    how,
    minutes,
    access,
    standing,
    cautions,
    tools,
    points: {},
    ...(healthy !== undefined && { healthy }),
    ...(told !== undefined && { told }),
    ...(reading !== undefined && { reading }),
    ...(readings !== undefined && { readings }),
    ...(each !== undefined && { each }),
    ...(judge !== undefined && { judge }),
    ...(shut !== undefined && { shut }),
    results: results.map(
      ({ next: _next, reason: _reason, leads: _leads, when: _when, ...result }) => result,
    ),
  };
}

/** A tree with a cause that was named in own words: without odds, and with no repair laid down. */
export function withOwnCause(tree: Tree, { cause: id, name, where, cautions }: OwnCause): Tree {
  const cause: Cause = {
    name,
    ...(where !== undefined && { where }),
    odds: 1,
    repair: {
      do: [],
      minutes: 0,
      access: [],
      standing: {},
      cautions: [...cautions],
      tools: [],
      parts: [],
      // oxlint-disable-next-line unicorn/no-thenable -- the tree format's word, never awaited
      then: [],
    },
  };
  return { ...tree, causes: { ...tree.causes, [id]: cause } };
}

export type OwnCause = {
  readonly cause: string;
  readonly name: string;
  readonly where?: string | undefined;
  readonly cautions: readonly string[];
};
