import type { Leg } from '../../core/session/story.ts';

/** The key that says a caution was read, by the cautions of its step read before it: `2` for the second. */
export const cautionKey = (before: number): string => String((before + 1) % 10);

/** The hazards alone. */
export const cautionNames = ({ shop }: Leg, ids: readonly string[]): string =>
  ids.map((id) => shop.cautions[id]?.hazard ?? id).join('; ');

/** The hazard with the first sentence about it. */
export function shortCaution({ shop }: Leg, id: string): string {
  const caution = shop.cautions[id];
  const [sentence = ''] = (caution?.text ?? '').split(/(?<=[.!]) /);
  return `${caution?.hazard ?? id}: ${sentence}`;
}

/** All that is to be said of a hazard, and who knows more. */
export function fullCaution({ shop }: Leg, id: string): string {
  const caution = shop.cautions[id];
  if (caution === undefined) return id;
  const defer = caution.defer === undefined ? '' : ` Defer to: ${caution.defer}.`;
  return `${caution.hazard}. ${caution.text}${defer}`;
}
