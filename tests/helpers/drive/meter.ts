import { makeRandom } from '../../../src/core/reason/plan/random.ts';
import { parseSeveral, type Taken } from '../../../src/core/trade/units/taken.ts';
import { usualUncertainty } from '../../../src/core/trade/units/uncertainty.ts';
import type { Check, NamedReading, Reading } from '../../../src/core/tree/model.ts';
import { severalOf } from '../../../src/core/tree/several.ts';

type Asked = NamedReading | Reading;

/**
 * What a meter shows of a true reading, typed as a mechanic would: off by up to half the usual
 * error, so that two readings of one thing lie no further apart than one may be off. The share of
 * that error is the meter's own and the same for all readings of one step; the fixed part is not.
 * @param seed the same seed gives the same readings
 * @returns undefined for a text that is no reading of the check
 */
export function metered(check: Check, text: string, seed: string): string | undefined {
  const asked: Asked | undefined = severalOf(check)?.readings[0] ?? check.reading;
  if (asked === undefined) return undefined;
  const read = parseSeveral(text, asked);
  if (read.kind === 'bad') return undefined;
  const random = makeRandom(seedOf(seed));
  const draw = (): number => random() - 0.5;
  const share = draw();
  return read.value.map((taken) => shown(asked, taken, { share, fixed: draw() })).join('; ');
}

type Off = { readonly share: number; readonly fixed: number };

function shown(asked: Asked, taken: Taken, { share, fixed }: Off): string {
  if ('beyond' in taken) return taken.beyond;
  const { value, unit } = taken;
  const atNothing = asked.uncertainty ?? usualUncertainty(asked.quantity, 0, unit);
  const more =
    asked.uncertainty === undefined ? usualUncertainty(asked.quantity, value, unit) - atNothing : 0;
  const error = atNothing + more;
  if (error <= 0) return `${value} ${unit}`;
  const digits = Math.min(6, Math.max(0, Math.ceil(-Math.log10(error / 5))));
  const wobbled = value + share * more + fixed * atNothing;
  // A meter that stands at nothing does not show less than nothing.
  const least = value < 0 ? wobbled : Math.max(0, wobbled);
  return `${least.toFixed(digits)} ${unit}`;
}

/** A number made of text, the same for the same text (FNV-1a, constants from memory). */
function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193);
  return hash >>> 0;
}
