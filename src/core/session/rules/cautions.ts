import type { Check, Repair } from '../../tree/model.ts';
import type { Caution, Shop } from '../../tree/shop.ts';
import { currentLeg, type Story } from '../story.ts';

/** A step as the record names it where cautions were read for it: `check:fuse`, `cause:stud`. */
export type CautionedStep = {
  readonly name: string;
  readonly cautions: readonly string[];
  readonly standing: Check['standing'];
};

export const stepOfCheck = (id: string, { cautions, standing }: Check): CautionedStep => ({
  name: `check:${id}`,
  cautions,
  standing,
});

export const stepOfCause = (id: string, { cautions, standing }: Repair): CautionedStep => ({
  name: `cause:${id}`,
  cautions,
  standing,
});

const ranks: Readonly<Record<NonNullable<Caution['worst']>, number>> = {
  kills: 0,
  maims: 1,
  harms: 2,
};

/** Cautions of a step, what kills first; of two that do the same, the one that must be read, then the tree's order. */
export function byDanger({ cautions }: Pick<Shop, 'cautions'>, ids: readonly string[]) {
  const rank = (id: string): number => {
    const caution = cautions[id];
    return ranks[caution?.worst ?? 'harms'] * 2 + (caution?.acknowledge === true ? 0 : 1);
  };
  return [...new Set(ids)].toSorted((one, other) => rank(one) - rank(other));
}

/** What makes the words of one caution another danger: current on, the engine turning, heat. */
type Power = 'live' | 'turning' | 'hot';

function powersIn({ battery, engine, heat }: CautionedStep['standing']): readonly Power[] {
  return [
    ...(battery === 'disconnected' ? [] : (['live'] as const)),
    ...(engine === undefined || engine === 'off' ? [] : (['turning'] as const)),
    ...(heat === 'hot' || heat === 'hot-soaked' ? (['hot'] as const) : []),
  ];
}

/**
 * Cautions of a step that nobody has said to have read in this job, what kills first. Read for
 * another step they count, unless the danger is new: the current is on now, the engine turns or is
 * hot, and it was not so for any step that they were read for.
 * @param before the number of the event up to which readings count
 */
export function unreadOf(story: Story, step: CautionedStep, before = Infinity): readonly string[] {
  const readings = story.acknowledged.filter(({ n }) => n < before);
  const powers = powersIn(step.standing);
  const isRead = (id: string): boolean => {
    const steps = readings.filter(({ cautions }) => cautions.includes(id)).map((one) => one.step);
    const known = new Set(steps.flatMap((one) => powersIn(standingOf(story, one))));
    return steps.includes(step.name) || (steps.length > 0 && powers.every((one) => known.has(one)));
  };
  const { shop } = currentLeg(story);
  return byDanger(
    shop,
    step.cautions.filter((id) => shop.cautions[id] !== undefined && !isRead(id)),
  );
}

/** Cautions whose reading must be said: what can maim. */
export function toBeRead(story: Story, cautions: readonly string[]): readonly string[] {
  const { shop } = currentLeg(story);
  return cautions.filter((id) => shop.cautions[id]?.acknowledge === true);
}

/** What a step wants of the vehicle, by its name in the record and the newest tree that has it. */
function standingOf({ legs }: Story, name: string): CautionedStep['standing'] {
  const [kind, id = ''] = name.split(':');
  for (const { tree } of legs.toReversed()) {
    const step = kind === 'check' ? tree.checks[id] : tree.causes[id]?.repair;
    if (step !== undefined) return step.standing;
  }
  return {};
}
