import type { Cause } from '../../tree/model.ts';
import type { ActionOf } from '../action.ts';
import type { Kind, PayloadOf } from '../event.ts';
import { accept, refuse, type Ruling } from './ruling.ts';
import { impliedPayloads } from '../preparation.ts';
import { stepOfCause, toBeRead, unreadOf } from './cautions.ts';
import { causeOf, noSuchCause, toldAt } from './lookup.ts';
import { noParts } from '../costs/parts.ts';
import { currentLeg, type Story } from '../story.ts';
import { triageOfCause } from '../triage.ts';

/** Names a cause as found. */
export function condemn(action: ActionOf<'condemn'>, story: Story): Ruling {
  const cause = causeOf(story, action.cause);
  if (cause === undefined) return noSuchCause(story, action.cause);
  const { acknowledged: said = false } = action;
  const read = cautionsSaid(said, cause);
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

/** The cautions of a repair that somebody said to have read: all, or those named. */
const cautionsSaid = (
  said: boolean | readonly string[],
  { repair: { cautions } }: Cause,
): string[] =>
  said === true ? cautions : cautions.filter((id) => said !== false && said.includes(id));

/** Records that a named cause was looked at, its part in the open, and that it was not that. */
export function denyCause(action: ActionOf<'not-this'>, story: Story): Ruling {
  const cause = causeOf(story, action.cause);
  if (cause === undefined) return noSuchCause(story, action.cause);
  return accept(
    [
      {
        kind: 'not-this',
        cause: action.cause,
        acknowledged: cautionsSaid(action.acknowledged ?? false, cause),
        ...toldAt(action),
      },
    ],
    cautionsMissed(action, story, cause),
  );
}

/** A warning for each caution of a repair that can maim and that nobody said to have read. */
function cautionsMissed(
  action: {
    readonly cause: string;
    readonly acknowledged?: boolean | readonly string[] | undefined;
  },
  story: Story,
  { repair }: Cause,
): readonly string[] {
  const { acknowledged: said = false } = action;
  if (said === true) return [];
  const { shop } = currentLeg(story);
  const open = toBeRead(story, unreadOf(story, stepOfCause(action.cause, repair)));
  return open
    .filter((id) => said === false || !said.includes(id))
    .map((id) => `Caution not acknowledged: ${shop.cautions[id]?.hazard ?? id}.`);
}

export function repair(action: ActionOf<'repair'>, story: Story): Ruling {
  const cause = causeOf(story, action.cause);
  if (cause === undefined) return noSuchCause(story, action.cause);
  const { tree } = currentLeg(story);
  const triage = triageOfCause(tree, action.cause);
  if (triage !== undefined)
    return refuse(
      'only-sorts',
      tree.triage === undefined
        ? `This cause is handed to inspection, not mended here. Why: ${triage}`
        : `This tree only sorts: nothing is mended by it. Why: ${triage}`,
      'Name the cause, and close the session as handed-on: to inspection.',
      action.cause,
    );
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
    cautionsMissed(action, story, cause),
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

/** Says more of what is recorded: what was found, what was done, what a photo shows. */
export function describe(action: ActionOf<'describe'>, story: Story): Ruling {
  const entry = story.entries.findLast(
    ({ event, said }) =>
      said !== undefined &&
      (action.n === undefined ? unasked : describable).has(said.kind) &&
      (action.n === undefined || event.n === action.n),
  );
  if (entry?.said === undefined)
    return refuse(
      'nothing-to-describe',
      'There is no finding, condemnation, repair or photo to say more of.',
      'Give the number of one in n, or leave n out for the last condemnation or repair.',
      action.n === undefined ? undefined : String(action.n),
    );
  const more = moreOf(entry.said.kind, action);
  return Object.keys(more).length === 0
    ? refuse(
        'empty-description',
        'Nothing is said of it.',
        'Give text; of a repair also parts, minutes or cost.',
      )
    : accept([{ kind: 'described', of: entry.event.n, ...more }]);
}

const unasked: ReadonlySet<Kind> = new Set<Kind>(['condemned', 'repaired']);
const describable: ReadonlySet<Kind> = new Set<Kind>([
  ...unasked,
  'found',
  'proved',
  'photographed',
]);

function moreOf(
  kind: Kind,
  action: ActionOf<'describe'>,
): Omit<PayloadOf<'described'>, 'kind' | 'of'> {
  if (kind === 'repaired') return workDone(action);
  if (action.text === undefined) return {};
  return kind === 'photographed' ? { caption: action.text } : { found: action.text };
}
