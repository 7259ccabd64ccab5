import type { Leg } from '../core/session/story.ts';
import { Indented } from './parts.tsx';

/** Cautions before the step: in full while they are to be read, afterwards by their first sentence. */
export function Cautions({ ids, leg, full }: { ids: readonly string[]; leg: Leg; full: boolean }) {
  return ids.map((id) => {
    const caution = leg.shop.cautions[id];
    if (caution === undefined) return null;
    const [sentence] = caution.text.split(/(?<=[.!:]) /);
    const defer = caution.defer === undefined ? '' : ` Defer to: ${caution.defer}.`;
    return (
      <Indented key={id} mark="!" as="caution">
        {full
          ? `${caution.hazard}. ${caution.text}${defer}`
          : `${caution.hazard}: ${sentence ?? ''}`}
      </Indented>
    );
  });
}
