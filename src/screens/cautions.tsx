import type { Leg } from '../core/session/story.ts';
import { cautionNames, shortCaution } from '../app/walk/caution-words.ts';
import { Indented } from './parts.tsx';
import type { Room } from './room.ts';

type CautionsProps = {
  readonly ids: readonly string[];
  readonly leg: Leg;
  /** By their first sentence, or by name when it is tight. */
  readonly as: Room['cautions'];
};

/** Cautions before the step. */
export function Cautions({ ids, leg, as }: CautionsProps) {
  const known = ids.filter((id) => leg.shop.cautions[id] !== undefined);
  if ((as === 'names' || as === 'line') && known.length > 0)
    return (
      <Indented mark="!" as="caution" wrap={as === 'line' ? 'cut' : 'fold'}>
        {cautionNames(leg, known)}
      </Indented>
    );
  return known.map((id) => (
    <Indented key={id} mark="!" as="caution" wrap={as === 'cut' ? 'cut' : 'fold'}>
      {shortCaution(leg, id)}
    </Indented>
  ));
}
