import { sum } from '../../sum.ts';
import type { Quantity } from '../../trade/units/quantities.ts';
import type { Check, Standing } from '../model.ts';
import type { Certain, Shares } from '../written/written.ts';

/** What the work of a check or a repair takes. */
export type Work = {
  readonly kind?: Check['kind'];
  readonly minutes: number;
  readonly standing: Standing;
  readonly tools: readonly string[];
  readonly parts: readonly string[];
};

export type DraftResult = { readonly id: string; readonly label: string };

/** The results of a check, healthiest first, and of a reading where one ends and the next begins. */
export type DraftResults = {
  readonly results: readonly DraftResult[];
  readonly reading?: {
    readonly quantity: Quantity;
    readonly unit: string;
    readonly limits: readonly number[];
    /** From the lowest reading up, where the limits alone would not say it. */
    readonly bands?: readonly string[];
  };
};

export type Rows = Readonly<Record<string, Certain | Shares>>;

export type DraftCheck = DraftResults & {
  readonly id: string;
  readonly ask: string;
  readonly how: readonly string[];
  readonly work: Work;
  readonly cautions: readonly string[];
  readonly rows: Rows;
  /** Of a hundred sound vehicles, how many look bad; the complaint's own test has none. */
  readonly sound?: number;
};

export type DraftCause = {
  readonly id: string;
  readonly name: string;
  readonly odds: number;
  readonly where?: string;
  readonly shows?: string;
  readonly steps?: readonly string[];
  readonly work?: Work;
  readonly cautions?: readonly string[];
};

/** Where a result leads. */
export type Lead =
  | { readonly to: 'check' | 'cause'; readonly id: string }
  | { readonly to: 'stop'; readonly reason: string };

/** Leads by check and result. */
export type Way = Readonly<Record<string, Readonly<Record<string, Lead>>>>;

/** A tree as far as it is told: the conversation adds to it as it goes. */
export type Draft = {
  title?: string;
  say?: string;
  test?: DraftCheck;
  causes: readonly DraftCause[];
  unlisted: number;
  checks: readonly DraftCheck[];
  way: Way;
};

export const emptyDraft = (): Draft => ({ causes: [], unlisted: 5, checks: [], way: {} });

/** The causes numbered, each with its share of a hundred. */
export function causeLines({ causes, unlisted }: Draft): readonly string[] {
  const total = sum(causes.map(({ odds }) => odds)) + unlisted;
  return causes.map(
    ({ name, odds }, index) => `${index + 1} ${name}, ${Math.round((100 * odds) / total)} of 100`,
  );
}
