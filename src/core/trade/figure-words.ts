import type { FigureInput } from './figure-input.ts';
import type { Quantity } from './units/quantities.ts';
import { inSpan } from './span.ts';
import type { Span } from './span.ts';

/** Added to every verdict that rests on custom and not on a publication. */
export const ruleOfThumb = "Rule of thumb; the vehicle's own specification comes first.";

/** Added to a verdict from a published table that is not about this very vehicle. */
export const generalTable = "General table; the vehicle's own specification comes first.";

type Measured = Pick<FigureInput, 'about'> & {
  readonly quantity: Quantity;
  readonly unit: string;
  readonly range: Span;
};
type Extra = Omit<FigureInput, keyof Measured>;

/** An input measured in the unit of the range in which the figure holds. */
export function measured(quantity: Quantity, range: Span, about: string): Measured;
export function measured<const More extends Extra>(
  quantity: Quantity,
  range: Span,
  about: string,
  more: More,
): Measured & More;
export function measured(
  quantity: Quantity,
  range: Span,
  about: string,
  more: Extra = {},
): FigureInput {
  return { quantity, unit: range.unit === '' ? '1' : range.unit, about, range, ...more };
}

/** The same for an input that may be left out. */
export const optional = (quantity: Quantity, range: Span, about: string) =>
  measured(quantity, range, about, { optional: true });

type Chosen<Word extends string> = Pick<FigureInput, 'about' | 'default'> & {
  readonly quantity: 'choice';
  readonly unit: '';
  readonly values: readonly Word[];
};

/** An input that is one of a few words; the preset counts when none is typed. */
export function chosen<const Word extends string>(
  values: readonly Word[],
  about: string,
  preset: NoInfer<Word>,
): Chosen<Word> {
  return { quantity: 'choice', unit: '', about, values, default: preset };
}

/** The names of the rows of a table, for an input that chooses one of them. */
export function namesOf<Name extends string>(
  rows: Readonly<Record<Name, unknown>>,
): readonly Name[] {
  // A table written out in the source has no other keys than its type.
  return Object.keys(rows) as Name[];
}

/** 12 or 6 volt system. */
export const systemVolts = chosen(['12', '6'], 'battery: 12 or 6 V', '12');

export type SystemVolts = (typeof systemVolts.values)[number];

/** What a 6 V or 12 V system takes of a figure for 12 V. */
export function forSystem(volts: number, system: SystemVolts): number {
  return system === '6' ? volts / 2 : volts;
}

/**
 * Volts read on a system, held to what one of 12 V can show, of 6 V to half of that. RangeError as
 * `inSpan`.
 */
export const voltsOf = (volts: number, system: SystemVolts, range: Span): number =>
  inSpan(
    volts,
    system === '6' ? { ...range, name: 'volts of a 6 V battery', high: range.high / 2 } : range,
  );

/** What is asked where a 12 V battery would hardly show so little. */
export const perhapsSix = 'Is it a 6 V battery? Then give battery=6.';
