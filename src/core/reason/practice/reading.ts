import { readAnswer } from '../../session/answer.ts';
import type { AskedCheck } from '../../session/answered.ts';
import { at } from '../../at.ts';
import { edgesOf } from '../../tree/limits.ts';
import { severalOf } from '../../tree/several.ts';
import type { Random } from '../plan/random.ts';

/** Share of the plausible range that a result without an end on one side is taken to reach. */
const open = 0.06;
/** Draws before a result is told without a reading. */
const mostDraws = 40;

/**
 * A reading as a meter would show it that stands in one result of a check, as it would be typed. Nothing
 * for a check without one reading, and where none is found: then the result itself is told.
 */
export function readingIn(asked: AskedCheck, index: number, random: Random): string | undefined {
  const { check } = asked;
  if (check.reading === undefined || severalOf(check) !== undefined) return undefined;
  const { plausible, unit } = check.reading;
  for (let draw = 0; draw < mostDraws; draw += 1) {
    // What is judged at reference conditions stands elsewhere as it is read: then the whole range is tried.
    const [low, high] = draw < mostDraws / 2 ? rangeOf(asked, index) : plausible;
    if (high <= low) continue;
    const value = low + (0.12 + 0.76 * random()) * (high - low);
    const text = `${rounded(value, high - low)} ${unit}`;
    if (standsIn(asked, text) === index) return text;
  }
  return undefined;
}

/** The result that a typed reading stands in; nothing for what is no reading of the check. */
export function standsIn(asked: AskedCheck, reading: string): number | undefined {
  const answered = readAnswer(asked, { reading, insist: true });
  return answered.kind === 'shown' ? answered.index : undefined;
}

function rangeOf({ check }: AskedCheck, index: number): readonly [number, number] {
  const [least, most] = check.reading?.plausible ?? [0, 0];
  const { from, below } = edgesOf(at(check.results, index));
  const reach = open * (most - least);
  // Both ends open: a result of the whole range.
  if (from === -Infinity && below === Infinity) return [least, most];
  return [
    from === -Infinity ? Math.max(least, below - reach) : Math.max(least, from),
    below === Infinity ? Math.min(most, from + reach) : Math.min(most, below),
  ];
}

/** A value with as many decimals as a meter of that range shows. */
function rounded(value: number, width: number): string {
  const decimals = width >= 40 ? 0 : width >= 4 ? 1 : width >= 0.1 ? 2 : 3;
  return value.toFixed(decimals);
}
