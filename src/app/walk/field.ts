import type { Action } from '../../core/session/action.ts';
import { takeAction } from '../take-action.ts';
import type { AskedCheck } from './question.ts';
import { isEmpty, textOf, typing } from '../typing/typing.ts';
import { edited, edits } from '../typing/edit.ts';
import { object, show, type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { ready, type At, type TextPurpose } from '../screen.ts';
import type { State } from '../state.ts';
import { answerAction, afterAction } from './answer.ts';
import { cautionsRead } from './claims.ts';

type Walk = At<'walk'>;

/** A reading being typed, or an unlikely one waiting for a second word. */
export function updateReading(
  state: State,
  screen: Walk,
  press: KeyPress,
  asked: AskedCheck | undefined,
): Transition {
  const { input } = screen;
  if (asked === undefined || (input.kind !== 'reading' && input.kind !== 'insist'))
    return show(state, { ...screen, input: ready });
  if (press.command === 'leave-field') return show(state, { ...screen, input: ready });
  if (press.command === 'choose') return keepReading(state, screen, asked, input);
  if (!edits(press.command)) return transition(state);
  const typed = edited(input.typed, press);
  return show(state, {
    ...screen,
    input: textOf(typed) === '' ? ready : { kind: 'reading', typed },
  });
}

/** Doubts about a reading that a second word settles. */
const insistable: ReadonlySet<string> = new Set(['implausible', 'reading-minus']);

function keepReading(
  state: State,
  screen: Walk,
  asked: AskedCheck,
  input: Extract<Walk['input'], { kind: 'reading' | 'insist' }>,
): Transition {
  const given = { reading: textOf(input.typed), ...(input.kind === 'insist' && { insist: true }) };
  const acted = takeAction(state, answerAction(asked, given));
  const { outcome } = acted;
  if (outcome.kind === 'done' || !insistable.has(outcome.problem.code)) return afterAction(acted);
  return transition(
    {
      ...acted.state,
      notice: undefined,
      screen: {
        ...screen,
        input: { kind: 'insist', typed: input.typed, why: outcome.problem.message },
      },
    },
    ...acted.effects,
  );
}

/** Words being typed: a note, a reason, a part. */
export function updateText(state: State, screen: Walk, press: KeyPress): Transition {
  const { input } = screen;
  if (input.kind !== 'text') return transition(state);
  const back: Walk = { ...screen, input: ready };
  if (press.command === 'leave-field') return show(state, back);
  if (edits(press.command))
    return show(state, { ...screen, input: { ...input, typed: edited(input.typed, press) } });
  if (press.command !== 'choose') return transition(state);
  if (isEmpty(input.typed)) return emptyField(state, screen, input);
  const acted = takeAction(state, worded(state, input.purpose, textOf(input.typed).trim()));
  if (acted.outcome.kind === 'refused') return acted;
  if (input.purpose === 'despite') return afterAction(acted);
  return transition({ ...acted.state, screen: nextField(screen, input) }, ...acted.effects);
}

type TextInput = Extract<Walk['input'], { kind: 'text' }>;

/** On to what is asked next, or back to the step. */
const nextField = (screen: Walk, { purpose, after: next }: TextInput): Walk => ({
  ...screen,
  input:
    next === undefined
      ? ready
      : { kind: 'text', purpose: next, typed: typing(), ...(next === purpose && { after: next }) },
});

function emptyField(state: State, screen: Walk, input: TextInput): Transition {
  if (['skip', 'despite', 'left-apart'].includes(input.purpose))
    return object(state, { message: 'Say why in a few words,', mend: 'or Esc to go back.' });
  return show(
    state,
    input.purpose === 'road' ? { ...screen, input: ready } : nextField(screen, input),
  );
}

function worded(state: State, purpose: TextPurpose, typed: string): Action {
  const { question } = state;
  const check = question.due?.asked?.id;
  switch (purpose) {
    case 'despite': {
      const given = { acknowledged: cautionsRead(state), despite: typed };
      return check === undefined
        ? { do: 'condemn', cause: question.due?.cause?.id ?? '', ...given }
        : { do: 'begin', check, ...given };
    }
    case 'left-apart':
      return { do: 'leave-apart', why: typed };
    case 'skip':
      return { do: 'skip', check: check ?? '', reason: typed };
    case 'note':
      return { do: 'note', text: typed, ...(check !== undefined && { about: check }) };
    case 'road':
      return { do: 'note', text: typed, on: 'road' };
    case 'worker':
      return { do: 'worker', who: typed };
    case 'follow-up':
      return { do: 'follow-up', text: typed };
    case 'found':
      return { do: 'describe', text: typed };
    case 'shown':
      return { do: 'describe', text: typed, n: question.due?.story.findings.at(-1)?.n };
    case 'altitude':
    case 'temperature':
      return { do: 'conditions', [purpose]: typed };
  }
}
