import type { Quantity } from './units/quantities.ts';
import type { Span } from './span.ts';

/** What a figure asks for. `unit` counts when none is typed; figures work in it. */
export type FigureInput = {
  /** A quantity; `choice` is one of `values`; `text` is taken as it stands; `number` has no unit. */
  readonly quantity: Quantity | 'choice' | 'text' | 'number';
  readonly unit: string;
  readonly about: string;
  readonly optional?: true;
  readonly default?: number | string;
  /** The words of a choice. */
  readonly values?: readonly string[];
  /** Several readings, parted by blanks or commas. */
  readonly list?: true;
  readonly range?: Span;
  /** A unit typed behind this number is taken for that input. */
  readonly unitFor?: string;
};
