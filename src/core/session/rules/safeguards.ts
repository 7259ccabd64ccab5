import type { Action, ActionOf } from '../action.ts';
import type { Payload, PayloadOf } from '../event.ts';
import { fold } from '../fold.ts';
import { holdsBefore, seenWords } from '../safeguard.ts';
import { currentLeg, type Guarded, type Hold, type Story } from '../story.ts';
import { refuse, type Refused } from './ruling.ts';

type Despite = NonNullable<PayloadOf<'repaired'>['despite']>;

/** What becomes of the safeguards before an action. */
type Passage =
  | { readonly kind: 'free' }
  | { readonly kind: 'passed'; readonly step: Guarded; readonly despite: Despite }
  | Refused;

/**
 * The safeguards of the tree bind what is recorded: a step behind one that is shut is refused, unless
 * the person says in an own word why they go on. Naming a cause is no act on the vehicle: it needs no
 * word, and takes one for the repair to come.
 */
export function passSafeguards(story: Story, action: Action): Passage {
  const step = stepOf(story, action);
  const holds = step === undefined ? [] : holdsBefore(standpointOf(story, action), step);
  const why = 'despite' in action ? action.despite?.trim() : undefined;
  if (step === undefined || holds.length === 0) return { kind: 'free' };
  if (why !== undefined && why !== '')
    return { kind: 'passed', step, despite: { checks: holds.map(({ check }) => check), why } };
  return action.do === 'condemn' ? { kind: 'free' } : shutRefusal(story, holds);
}

/** What an action does to the vehicle, as far as a safeguard may stand before it. */
function stepOf(story: Story, action: Action): Guarded | undefined {
  switch (action.do) {
    case 'begin':
    case 'find':
    case 'unsure':
      return { kind: 'check', check: action.check };
    case 'prove':
      return { kind: 'check', check: currentLeg(story).tree.complaint.confirm };
    case 'condemn':
    case 'repair':
      return { kind: 'repair', cause: action.cause };
    case 'correct':
      return namesRepairAnew(story, action) ? { kind: 'repair', cause: action.cause } : undefined;
    case 'standing': {
      const { do: _, despite: __, ...set } = action;
      return { kind: 'standing', set };
    }
    default:
      return undefined;
  }
}

type Naming = ActionOf<'correct'> & { readonly cause: string };

/** A repair that is said to have been another is held by what came before it. */
const namesRepairAnew = (story: Story, action: ActionOf<'correct'>): action is Naming =>
  action.cause !== undefined &&
  story.entries.some(({ event, said }) => event.n === action.n && said?.kind === 'repaired');

/** Where the story stood when the action was done: a correction tells of what was done before. */
function standpointOf(story: Story, action: Action): Story {
  if (action.do !== 'correct') return story;
  const before = story.entries.map(({ event }) => event).filter(({ n }) => n < action.n);
  return fold(story.header, before);
}

function shutRefusal(story: Story, holds: readonly Hold[]): Refused {
  const { checks } = currentLeg(story).tree;
  const words = holds.map(
    (hold) =>
      `"${checks[hold.check]?.ask ?? hold.check}" comes first and ${seenWords(hold, 'now')}. ${hold.otherwise}`,
  );
  const first = holds.map(({ check }) => `"${check}"`).join(' and ');
  return refuse(
    'safeguard-shut',
    `A safeguard holds this back: ${words.join(' ')}`,
    `Make ${first} first, or say in "despite" why you go on all the same.`,
    holds[0]?.check,
  );
}

/** The events of an action that goes past a safeguard, with the word in the event that says so. */
export function withDespite(
  payloads: readonly Payload[],
  { step, despite }: Extract<Passage, { kind: 'passed' }>,
): readonly Payload[] {
  if (step.kind !== 'check')
    return payloads.map((one) =>
      one.kind === 'condemned' ||
      one.kind === 'repaired' ||
      (one.kind === 'standing' && one.implied !== true)
        ? { ...one, despite }
        : one,
    );
  const [first, ...rest] = payloads;
  return first?.kind === 'check-begun'
    ? [{ ...first, despite }, ...rest]
    : [{ kind: 'check-begun', check: step.check, acknowledged: [], despite }, ...payloads];
}

/** A word that was given where no safeguard had to be passed is not kept. */
export const needlessWord = (action: Action): readonly string[] =>
  'despite' in action && action.despite !== undefined && action.despite.trim() !== ''
    ? ['No safeguard held this back: the words in "despite" were not kept.']
    : [];
