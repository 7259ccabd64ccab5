import type { Action, ActionOf } from '../action.ts';
import type { Payload } from '../event.ts';
import { isPractice } from '../header/is-practice.ts';
import { isProvenBy } from '../proof.ts';
import type { Story } from '../story.ts';
import { accept, refuse, type Refused, type Ruling, type World } from './ruling.ts';

/** What a person says of the vehicle elsewhere, and the hidden vehicle says in practice. */
const answers: ReadonlySet<Action['do']> = new Set(['find', 'prove', 'unsure', 'not-this']);

/** What would leave the tree whose fault is hidden. */
const leaves: ReadonlySet<Action['do']> = new Set(['leg', 'complaint', 'own-leg', 'take-check']);

/**
 * The action that counts: in practice the hidden vehicle answers a check that is made, and nobody else
 * says what it shows.
 */
export function inPractice(
  story: Story,
  action: Action,
  world: World,
): Refused | { readonly kind: 'taken'; readonly action: Action } {
  if (!isPractice(story.header))
    return action.do === 'make' || action.do === 'hint'
      ? notPractice(action.do)
      : { kind: 'taken', action };
  if (action.do === 'make') return answered(story, action, world);
  if (answers.has(action.do) || saysAnew(action)) return vehicleAnswers;
  if (leaves.has(action.do))
    return refuse(
      'practice-tree',
      'The hidden fault is in this tree: practice does not go on in another.',
      'Make another check, or choose a cause to repair.',
    );
  if (action.do === 'hint' && story.revealed !== undefined) return over;
  return { kind: 'taken', action };
}

const notPractice = (what: string): Refused =>
  refuse(
    'not-practice',
    `"${what}" is for practice on a hidden fault, and this is a job.`,
    'Begin one with "droplight practice TREE".',
  );

const vehicleAnswers = refuse(
  'practice-answers',
  'In practice the hidden vehicle answers.',
  'Make the check: {"do":"make","check":"..."}.',
);

const over = refuse(
  'practice-over',
  'This practice is over: its fault was revealed.',
  'Begin another with "droplight practice TREE".',
);

const lost = refuse(
  'practice-lost',
  'What this practice hides is not on this machine any more, or is not what it was committed to: the vehicle cannot answer.',
  'Close it; the record says that the fault was lost.',
);

/** A finding put right by hand would be an answer that nobody gave. */
const saysAnew = (action: Action): boolean =>
  action.do === 'correct' && (action.result !== undefined || action.reading !== undefined);

function answered(story: Story, { do: _, ...made }: ActionOf<'make'>, { practice }: World) {
  if (story.revealed !== undefined) return over;
  if (practice?.answer === undefined) return lost;
  const answer = practice.answer(story, made.check);
  // A check that the tree has not is refused by the rule of findings, in its own words.
  const action = { ...made, ...(answer ?? { result: '' }), do: 'find' as const, insist: true };
  return { kind: 'taken' as const, action };
}

/** A hint is what the advice says now, for so many minutes. */
export function hint(_: ActionOf<'hint'>, story: Story, { practice }: World): Ruling {
  if (isHinted(story))
    return refuse(
      'hint-given',
      'The hint is on screen already: it stands until the next answer.',
      'Make a check or a repair.',
    );
  const said = practice?.hint?.(story);
  if (said === undefined)
    return refuse('no-hint', 'The advice has nothing to say here.', 'Go on without it.');
  return accept([{ kind: 'hinted', minutes: hintMinutes, ...said }]);
}

/** What a hint costs: a number of our own, about one short check. */
export const hintMinutes = 5;

/** Whether a hint was taken since the last answer or repair that stands. */
export function isHinted({
  hints,
  findings,
  repairs,
}: Pick<Story, 'hints' | 'findings' | 'repairs'>) {
  const since = Math.max(0, findings.at(-1)?.n ?? 0, repairs.at(-1)?.n ?? 0);
  return (hints.at(-1)?.n ?? 0) > since;
}

/** The fault is told with the proof, or when the job is closed without one. */
export function revealAtEnd(story: Story, ruling: Ruling, { practice }: World): Ruling {
  if (ruling.kind === 'refused' || !isPractice(story.header) || story.revealed !== undefined)
    return ruling;
  const proven = ruling.payloads.some((said) => said.kind === 'proved' && isProvenBy(story, said));
  const closed = ruling.payloads.some(({ kind }) => kind === 'closed');
  if (!proven && !closed) return ruling;
  const secret = practice?.secret;
  const told: Payload =
    secret === undefined
      ? { kind: 'revealed', as: 'lost' }
      : {
          kind: 'revealed',
          as: proven ? 'proven' : 'given-up',
          causes: [...secret.causes],
          salt: secret.salt,
        };
  return { ...ruling, payloads: proven ? [...ruling.payloads, told] : [told, ...ruling.payloads] };
}
