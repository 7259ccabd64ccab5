import { withoutDust } from './dust.ts';
import { showNumber } from './units/units.ts';

/** The range in which a figure holds for one of its inputs. */
export type Span = {
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
};

export function span(name: string, low: number, high: number, unit: string): Span {
  return { name, low, high, unit };
}

/**
 * The value back again, or the end of the range that it passes by no more than floating-point
 * dust. RangeError naming the value and the range when it is outside or no number.
 */
export function inSpan(value: number, range: Span): number {
  if (value >= range.low && value <= range.high) return value;
  const clean = withoutDust(value);
  if (clean === range.low || clean === range.high) return clean;
  const shown = Number.isNaN(value) ? 'not a number' : `${showNumber(value, 4)} ${range.unit}`;
  throw new RangeError(`${range.name} ${shown.trim()} is outside ${showSpan(range)}.`);
}

/** `0 to 250 F`. */
export function showSpan({ low, high, unit }: Span): string {
  return `${showNumber(low, 4)} to ${showNumber(high, 4)} ${unit}`.trim();
}
