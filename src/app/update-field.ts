import type { Action } from '../core/session/action.ts';
import { act } from './act.ts';
import type { Asking } from './asking.ts';
import { typedOn } from './cursor.ts';
import { doing, still, type Step } from './effect.ts';
import type { Press } from './press.ts';
import { ready, type Screen, type TextPurpose } from './screen.ts';
import type { State } from './state.ts';
import { answering, done } from './answering.ts';

type Walk = Extract<Screen, { kind: 'walk' }>;

const show = (state: State, screen: Walk): Step<State> => still({ ...state, screen });

/** A reading being typed, or an unlikely one waiting for a second word. */
export function updateReading(
  state: State,
  screen: Walk,
  { press, asking }: { readonly press: Press; readonly asking: Asking | undefined },
): Step<State> {
  const { input } = screen;
  if (asking === undefined || (input.kind !== 'reading' && input.kind !== 'insist'))
    return show(state, { ...screen, input: ready });
  if (press.command === 'leave-field') return show(state, { ...screen, input: ready });
  if (press.command === 'choose') return keepReading(state, screen, asking, input);
  if (press.command !== 'type' && press.command !== 'erase') return still(state);
  const typed = typedOn(input.typed, press);
  return show(state, {
    ...screen,
    input: typed === '' ? ready : { kind: 'reading', typed },
  });
}

function keepReading(
  state: State,
  screen: Walk,
  asking: Asking,
  input: Extract<Walk['input'], { kind: 'reading' | 'insist' }>,
): Step<State> {
  const given = { reading: input.typed, ...(input.kind === 'insist' && { insist: true }) };
  const acted = act(state, answering(asking, given));
  const { outcome } = acted;
  if (outcome.kind === 'done' || outcome.problem.code !== 'implausible') return done(acted);
  return doing(
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
export function updateText(state: State, screen: Walk, press: Press): Step<State> {
  const { input } = screen;
  if (input.kind !== 'text') return still(state);
  const back: Walk = { ...screen, input: ready };
  if (press.command === 'leave-field') return show(state, back);
  if (press.command === 'type' || press.command === 'erase')
    return show(state, { ...screen, input: { ...input, typed: typedOn(input.typed, press) } });
  if (press.command !== 'choose') return still(state);
  if (input.typed.trim() === '') return emptyField(state, screen, input.purpose);
  const acted = act(state, worded(state, input.purpose, input.typed.trim()));
  if (acted.outcome.kind === 'refused') return acted;
  const screenAfter = input.purpose === 'altitude' ? temperature : back;
  return doing({ ...acted.state, screen: screenAfter }, ...acted.effects);
}

/** Altitude is followed by temperature: they are asked together. */
const temperature: Walk = {
  kind: 'walk',
  input: { kind: 'text', purpose: 'temperature', typed: '' },
};

function emptyField(state: State, screen: Walk, purpose: TextPurpose): Step<State> {
  if (purpose === 'altitude') return show(state, temperature);
  if (purpose === 'skip')
    return still({
      ...state,
      notice: { kind: 'problem', text: 'Say why in a few words, or Esc to go back.' },
    });
  return show(state, { ...screen, input: ready });
}

function worded(state: State, purpose: TextPurpose, typed: string): Action {
  const step = state.live?.story.step;
  switch (purpose) {
    case 'skip':
      return { do: 'skip', check: step?.kind === 'check' ? step.check : '', reason: typed };
    case 'note':
      return {
        do: 'note',
        text: typed,
        ...(step?.kind === 'check' && { about: step.check }),
      };
    case 'part-off':
      return { do: 'part-off', part: typed };
    case 'follow-up':
      return { do: 'follow-up', text: typed };
    case 'altitude':
      return { do: 'conditions', altitude: typed };
    case 'temperature':
      return { do: 'conditions', temperature: typed };
  }
}
