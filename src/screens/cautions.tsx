import type { Leg } from '../core/session/story.ts';
import { cautionKey, cautionNames, fullCaution, shortCaution } from '../app/walk/caution-words.ts';
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
  if (as === 'names' && known.length > 0)
    return (
      <Indented mark="!" as="caution">
        {cautionNames(leg, known)}
      </Indented>
    );
  return known.map((id) => (
    <Indented key={id} mark="!" as="caution" wrap={as === 'cut' ? 'cut' : 'fold'}>
      {shortCaution(leg, id)}
    </Indented>
  ));
}

type PageProps = {
  readonly cautions: readonly string[];
  readonly leg: Leg;
  readonly seen: number;
};

/** One caution in full, however small the window: nobody says to have read what was not shown. */
export function CautionPage({ cautions: [now = '', ...later], leg, seen }: PageProps) {
  const of = seen + 1 + later.length;
  return (
    <>
      <Indented mark="!" as="caution">
        {fullCaution(leg, now)}
      </Indented>
      <Indented mark=">" as="marked">
        {`Caution ${seen + 1} of ${of}: press ${cautionKey(seen)} when you have read it.`}
      </Indented>
    </>
  );
}
