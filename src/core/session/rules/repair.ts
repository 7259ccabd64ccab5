import type { ActionOf } from '../action.ts';
import { accept, refuse, type Ruling } from './ruling.ts';
import { impliedPayloads } from '../preparation.ts';
import { stepOfCause, toBeRead, unreadOf } from './cautions.ts';
import { causeOf, noSuchCause, toldAt } from './lookup.ts';
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
        parts: action.parts ?? [],
        acknowledged: action.acknowledged === true ? cause.repair.cautions : [],
        ...(action.text !== undefined && { did: action.text }),
        ...(action.minutes !== undefined && { minutes: action.minutes }),
        ...(action.cost !== undefined && { cost: action.cost }),
        ...toldAt(action),
      },
    ],
    missed.map((id) => `Caution not acknowledged: ${shop.cautions[id]?.hazard ?? id}.`),
  );
}
