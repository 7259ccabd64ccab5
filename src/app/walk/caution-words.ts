import type { Leg } from '../../core/session/story.ts';

/** The key that says a page of cautions was read, by the pages of its step read before it: `2` for the second. */
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

/** All that is to be said of a hazard. */
export function fullCaution({ shop }: Leg, id: string): string {
  const caution = shop.cautions[id];
  if (caution === undefined) return id;
  const { hazard, text } = caution;
  return `${/[.?!]$/.test(hazard) ? hazard : `${hazard}.`} ${text}`;
}

/** Who knows more about a hazard, behind its words; empty where nobody is named. */
export function deferWords({ shop }: Leg, id: string): string {
  const defer = shop.cautions[id]?.defer;
  return defer === undefined ? '' : ` Defer to: ${defer}.`;
}
