import { dispatch, type Handlers } from '../../dispatch.ts';
import type { Action } from '../action.ts';
import { accept, refuse, type Ruling, type World } from './ruling.ts';
import { begin, find, skip, unsure } from './check.ts';
import { correct, takeBack } from './correct.ts';
import { complaint, leg, ownLeg, worker } from './complaint.ts';
import { close, reopen } from './close.ts';
import { aidOff, leaveApart, partOff, partOn } from './apart.ts';
import { baseline } from './baseline.ts';
import { access, conditions, standing } from './vehicle.ts';
import { buy, limit } from './money.ts';
import { nameCause, nameCheck, takeCheck } from './own.ts';
import { timerOff } from './timer.ts';
import { prove } from './prove.ts';
import { expect } from './expect.ts';
import { settle } from './settle.ts';
import { hint, inPractice, revealAtEnd } from './practice.ts';
import { photo } from './photo.ts';
import { condemn, denyCause, describe, repair } from './repair.ts';
import { needlessWord, passSafeguards, withDespite } from './safeguards.ts';
import type { Story } from '../story.ts';

/** What becomes of each action; a rule looks at the story, and asks the world for no more than a tree. */
const rules: Handlers<Action, 'do', [story: Story, world: World], Ruling> = {
  conditions,
  standing,
  access,
  begin,
  expect,
  find,
  unsure,
  skip,
  condemn,
  repair,
  describe,
  'not-this': denyCause,
  prove,
  correct,
  'take-back': takeBack,
  settle,
  'name-check': nameCheck,
  'take-check': takeCheck,
  'name-cause': nameCause,
  'own-leg': ownLeg,
  leg,
  complaint,
  worker,
  close,
  reopen,
  'part-off': partOff,
  'part-on': partOn,
  'aid-off': aidOff,
  'leave-apart': leaveApart,
  baseline,
  note: ({ do: _, ...said }) =>
    said.text.trim() === ''
      ? refuse('empty-note', 'The note is empty.', 'Type what is to be kept.')
      : accept([{ ...said, kind: 'noted' }]),
  photo,
  'aid-on': ({ aid }) => accept([{ kind: 'aid-on', aid }]),
  timer: ({ do: _, ...said }) => accept([{ ...said, kind: 'timer' }]),
  'timer-off': timerOff,
  'part-bought': buy,
  limit,
  'follow-up': ({ text, urgency = 'noticed' }) => accept([{ kind: 'follow-up', text, urgency }]),
  hint,
  // Turned into a finding before it comes here.
  make: () => refuse('not-practice', 'Nothing is hidden here.', 'Record it with find.'),
  pause: () => accept([{ kind: 'paused' }]),
};

/** Actions that are taken even after the session is closed: they add, or take back what was last. */
const afterClosing: ReadonlySet<Action['do']> = new Set([
  'note',
  'photo',
  'follow-up',
  'part-bought',
  'describe',
  'take-back',
  'complaint',
  'own-leg',
  'reopen',
]);

/**
 * Says what may happen when: the events an action makes of this story, or why it may not be.
 * Screens and the `enter` command both go through here.
 */
export function decide(story: Story, given: Action, world: World): Ruling {
  if (story.closed !== undefined && !afterClosing.has(given.do))
    return refuse(
      'closed',
      'This session is closed.',
      'Reopen it, or start a new one; notes and follow-ups can still be added here.',
    );
  const taken = inPractice(story, given, world);
  if (taken.kind === 'refused') return taken;
  return revealAtEnd(story, ruleOn(story, taken.action, world), world);
}

function ruleOn(story: Story, action: Action, world: World): Ruling {
  const passage = passSafeguards(story, action);
  if (passage.kind === 'refused') return passage;
  const ruling = dispatch(rules, 'do', action, story, world);
  if (ruling.kind === 'refused') return ruling;
  return passage.kind === 'passed'
    ? { ...ruling, payloads: withDespite(ruling.payloads, passage) }
    : { ...ruling, warnings: [...ruling.warnings, ...needlessWord(action)] };
}
