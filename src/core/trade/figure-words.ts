import type { FigureInput } from './figure-input.ts';
import type { Quantity } from './units/quantities.ts';
import type { Span } from './span.ts';

/** Added to every verdict that rests on custom and not on a publication. */
export const ruleOfThumb = "Rule of thumb; the vehicle's own specification comes first.";

/** Added to a verdict from a published table that is not about this very vehicle. */
export const generalTable = "General table; the vehicle's own specification comes first.";

type Extra = Omit<FigureInput, 'quantity' | 'unit' | 'about' | 'range'>;

/** An input measured in the unit of the range in which the figure holds. */
export function measured(
  quantity: Quantity,
  range: Span,
  about: string,
  extra: Extra = {},
): FigureInput {
  return { quantity, unit: range.unit === '' ? '1' : range.unit, about, range, ...extra };
}

/** An input that is one of a few words. */
export function chosen(values: readonly string[], about: string, preset?: string): FigureInput {
  const base = { quantity: 'choice', unit: '', about, values } as const;
  return preset === undefined ? base : { ...base, default: preset };
}

/** 12 or 6 volt system. */
export const systemVolts = {
  quantity: 'choice',
  unit: '',
  about: 'battery: 12 or 6 V',
  values: ['12', '6'],
  default: '12',
} as const satisfies FigureInput;
