import type { Leg } from '../core/session/story.ts';
import { Indented } from './parts.tsx';

type CautionsProps = {
  readonly ids: readonly string[];
  readonly leg: Leg;
  /** `full` while they are to be read; then by their first sentence, or by name when it is tight. */
  readonly as: 'full' | 'fold' | 'cut' | 'names';
};

/** Cautions before the step. */
export function Cautions({ ids, leg, as }: CautionsProps) {
  const known = ids.filter((id) => leg.shop.cautions[id] !== undefined);
  if (as === 'names' && known.length > 0)
    return (
      <Indented mark="!" as="caution" wrap="cut">
        {known.map((id) => leg.shop.cautions[id]?.hazard ?? id).join('; ')}
      </Indented>
    );
  return known.map((id) => (
    <Indented key={id} mark="!" as="caution" wrap={as === 'cut' ? 'cut' : 'fold'}>
      {as === 'full' ? fullCaution(leg, id) : shortCaution(leg, id)}
    </Indented>
  ));
}

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
