import type { ActionOf } from '../action.ts';
import { readAnswer } from '../answer.ts';
import { askedNow } from '../answered.ts';
import { accept, refuse, type Ruling } from './ruling.ts';
import type { Payload } from '../event.ts';
import { traits } from '../traits.ts';
import { lookAt } from '../../tree/looked.ts';
import { noSuchCheck } from './lookup.ts';
import { workDone } from './repair.ts';
import { asProof } from './prove.ts';
import { checkIn, currentLeg, type Story } from '../story.ts';
import { lastWritten } from './take-back.ts';

type Correct = ActionOf<'correct'>;

/** A mistake is mended by a new event that names the old one; what was written stays written. */
export function correct(action: Correct, story: Story): Ruling {
  const entry = story.entries.find(({ event }) => event.n === action.n);
  if (entry === undefined)
    return refuse(
      'no-such-event',
      `This session has no event ${action.n}.`,
      `Its events are 1 to ${story.entries.at(-1)?.event.n ?? 0}.`,
      String(action.n),
    );
  const { said } = entry;
  if (said === undefined || traits[said.kind].corrects === 'never')
    return refuse(
      'not-correctable',
      `Event ${action.n} (${entry.event.kind}) cannot be corrected.`,
      'What somebody did or said can be, as long as it stands.',
      String(action.n),
    );
  if (action.withdraw === true) return withdraw(story, action, said);
  return sayAnew(story, action, said);
}

function withdraw(story: Story, action: Correct, said: Payload): Ruling {
  if (said.kind === 'leg') return withdrawLeg(story, action);
  return isUsed(story, said)
    ? refuse(
        'still-used',
        'Something was found or said of it since: the name alone cannot be taken back.',
        'Take back first what was found or said of it.',
        String(action.n),
      )
    : accept([{ kind: 'corrected', of: action.n, ...reasonOf(action) }]);
}

/** Whether something stands that was found by a check, or said of a cause, which this names. */
function isUsed(story: Story, said: Payload): boolean {
  if (said.kind === 'check-named' || said.kind === 'check-taken')
    return [...story.findings, ...story.unsure, ...story.skipped].some(
      ({ check }) => check === said.check,
    );
  return (
    said.kind === 'cause-named' &&
    ([...story.condemned, ...story.repairs].some(({ cause }) => cause === said.cause) ||
      story.findings.some(({ check }) => check === lookAt(said.cause)))
  );
}

/** Another complaint's tree is only left again while nothing was done on it. */
function withdrawLeg(story: Story, action: Correct): Ruling {
  return lastWritten(story)?.entry.event.n === action.n
    ? accept([{ kind: 'corrected', of: action.n, ...reasonOf(action) }])
    : refuse(
        'leg-walked',
        'Something was done on this tree: going on to it cannot be taken back by itself.',
        'Take back what was done on it first.',
        String(action.n),
      );
}

/** Takes back the newest thing that stands, of whatever kind; again, the one before. */
export function takeBack(_: unknown, story: Story): Ruling {
  const last = lastWritten(story);
  if (last === undefined)
    return refuse(
      'nothing-written',
      'Nothing is written that could be taken back.',
      'Go on with the step.',
    );
  const { n, kind } = last.entry.event;
  return accept(last.corrections, [`Taken back: event ${n} (${kind}).`]);
}

const reasonOf = ({ reason }: Correct) => (reason === undefined ? {} : { reason });

function sayAnew(story: Story, action: Correct, said: Payload): Ruling {
  if (said.kind === 'found' || said.kind === 'proved') return answerAnew(story, action, said);
  const to = wordAnew(action, said);
  if (to === undefined)
    return refuse(
      'nothing-to-correct',
      'The correction does not say what it should have been.',
      'Give result, reading, cause, text or reason, or withdraw it.',
    );
  if (action.cause !== undefined && !Object.hasOwn(currentLeg(story).tree.causes, action.cause))
    return refuse(
      'unknown-cause',
      `There is no cause "${action.cause}" here.`,
      `Its causes: ${Object.keys(currentLeg(story).tree.causes).join(', ')}.`,
      action.cause,
    );
  return accept([{ kind: 'corrected', of: action.n, to, ...reasonOf(action) }]);
}

function answerAnew(
  story: Story,
  action: Correct,
  said: Extract<Payload, { kind: 'found' | 'proved' }>,
): Ruling {
  const finding = story.findings.find(({ n }) => n === action.n);
  if (finding === undefined) throw new Error('an answer that counts is among the findings');
  const check = checkIn(story, said.check, finding.leg);
  if (check === undefined) return noSuchCheck(story, said.check);
  const answered = readAnswer(askedNow(story, said.check, check), action);
  if (answered.kind === 'refused') return answered;
  const to = {
    kind: said.kind,
    ...(said.kind === 'proved' ? asProof(check, answered) : answered.shown),
    ...(said.told !== undefined && { told: said.told }),
  };
  return accept([{ kind: 'corrected', of: action.n, to, ...reasonOf(action) }]);
}

function wordAnew(action: Correct, said: Payload): Record<string, unknown> | undefined {
  const field = traits[said.kind].corrects;
  const names = said.kind === 'condemned' || said.kind === 'repaired';
  const anew = {
    ...(field !== 'no words' &&
      field !== 'only withdrawn' &&
      action.text !== undefined && { [field]: action.text }),
    ...(said.kind === 'repaired' && { ...workDone({ ...action, text: undefined }) }),
    ...(names && action.cause !== undefined && { cause: action.cause }),
  };
  return Object.keys(anew).length === 0 ? undefined : { ...said, ...anew };
}
