import type { ActionOf } from '../action.ts';
import { accept, refuse, type Ruling } from './ruling.ts';
import { impliedPayloads } from '../preparation.ts';
import { stepOfCause, toBeRead, unreadOf } from './cautions.ts';
import { causeOf, noSuchCause, toldAt } from './lookup.ts';
import { noParts } from '../parts.ts';
import { currentLeg, type Story } from '../story.ts';

/** Names a cause as found. */
export function condemn(action: ActionOf<'condemn'>, story: Story): Ruling {
  const cause = causeOf(story, action.cause);
  if (cause === undefined) return noSuchCause(story, action.cause);
  const { acknowledged: said = false } = action;
  const { cautions } = cause.repair;
  const read =
    said === true ? cautions : cautions.filter((id) => said !== false && said.includes(id));
  return accept([
    {
      kind: 'condemned',
      cause: action.cause,
      ...(action.text !== undefined && { found: action.text }),
      ...(said !== false && { acknowledged: read }),
      ...toldAt(action),
    },
  ]);
}

export function repair(action: ActionOf<'repair'>, story: Story): Ruling {
  const cause = causeOf(story, action.cause);
  if (cause === undefined) return noSuchCause(story, action.cause);
  const { shop, tree } = currentLeg(story);
  if (tree.triage !== undefined)
    return refuse(
      'only-sorts',
      `This tree only sorts: nothing is mended by it. Why: ${tree.triage}`,
      'Name the cause, and close the session as handed-on: to inspection.',
      action.cause,
    );
  const step = stepOfCause(action.cause, cause.repair);
  const missed = action.acknowledged === true ? [] : toBeRead(story, unreadOf(story, step));
  return accept(
    [
      ...impliedPayloads(story, cause.repair),
      {
        kind: 'repaired',
        cause: action.cause,
        parts: [],
        acknowledged: action.acknowledged === true ? cause.repair.cautions : [],
        ...workDone(action),
        ...toldAt(action),
      },
    ],
    missed.map((id) => `Caution not acknowledged: ${shop.cautions[id]?.hazard ?? id}.`),
  );
}

/** What was done, as an event says it; what was not said is left out. */
export const workDone = ({
  text,
  parts,
  minutes,
  cost,
}: Pick<ActionOf<'repair'>, 'text' | 'parts' | 'minutes' | 'cost'>) => ({
  ...(text !== undefined && { did: text }),
  ...(parts !== undefined && { parts: parts.length === 0 ? [noParts] : parts }),
  ...(minutes !== undefined && { minutes }),
  ...(cost !== undefined && { cost }),
});

/** Says more of a condemnation or a repair that is recorded: what was found, what was done. */
export function describe(action: ActionOf<'describe'>, story: Story): Ruling {
  const entry = story.entries.findLast(
    ({ event, said }) =>
      (said?.kind === 'condemned' || said?.kind === 'repaired') &&
      (action.n === undefined || event.n === action.n),
  );
  if (entry?.said === undefined)
    return refuse(
      'nothing-to-describe',
      'There is no condemnation or repair to say more of.',
      'Give the number of one in n, or leave n out for the last.',
      action.n === undefined ? undefined : String(action.n),
    );
  const more =
    entry.said.kind === 'repaired'
      ? workDone(action)
      : action.text === undefined
        ? {}
        : { found: action.text };
  return Object.keys(more).length === 0
    ? refuse(
        'empty-description',
        'Nothing is said of it.',
        'Give text; of a repair also parts, minutes or cost.',
      )
    : accept([{ kind: 'described', of: entry.event.n, ...more }]);
}
